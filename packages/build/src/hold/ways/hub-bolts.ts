/** Torque joints with fasteners: flanges, setscrews, welds, tapers drawn on by a nut, and what locks them. */
import { BOLT_CLASSES } from '@oddwheel/tables/bolt-classes';
import { HUB_METALS } from '@oddwheel/tables/hub-metals';
import { SETSCREWS } from '@oddwheel/tables/setscrews';
import { rowInSi } from '@oddwheel/tables/table';
import { THREAD_SIZES } from '@oddwheel/tables/thread-sizes';
import type { Hub, HubBolts } from '../../model/hub.ts';
import type { Seat, Shaft } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, lengthText, put, range, type Step, single } from '../ladder.ts';
import { longer, movedField, scaledText } from './fields.ts';
import { hubOf } from './hub-shape.ts';

const named = ({ seat, shaft }: { readonly seat: Seat; readonly shaft: Shaft }): string =>
  `${seat.name} of ${shaft.name}`;

/** Sorts of thread; a bolt is changed for one of the same sort. */
const SORTS = [/^M[\d.]+$/, /^M[\d.]+x[\d.]+$/, /UNC$/, /UNF$/];
const diameterOf = (thread: string): number => rowInSi(THREAD_SIZES, thread).diameter ?? Number.NaN;

/** Threads of the same sort, the next larger first, up to twice as thick. */
function largerThreads(from: string): readonly string[] {
  const sort = SORTS.find((one) => one.test(from));
  const size = diameterOf(from);
  return Object.keys(THREAD_SIZES.rows)
    .filter((key) => sort?.test(key) && diameterOf(key) > size * 1.001 && diameterOf(key) <= 2 * size)
    .sort((a, b) => diameterOf(a) - diameterOf(b));
}

interface Flange {
  readonly seat: Seat;
  readonly shaft: Shaft;
  readonly hub: Hub;
  readonly bolts: HubBolts;
  readonly at: string;
}

function flangeOf(ground: Ground): Flange | null {
  const found = hubOf(ground);
  const { bolts } = found?.hub ?? {};
  return found?.hub.torqueBy === 'bolted flange' && bolts
    ? { ...found, bolts, at: `${found.hub.address}/bolts` }
    : null;
}

const MOST_BOLTS = 12;
const PARTS = range(0.05, 1, 0.05);

/** More bolts, thicker ones, and a larger circle. Thicker bolts are tightened as hard for their size. */
export function moreBolts(ground: Ground): readonly Ladder[] {
  const found = flangeOf(ground);
  if (!found) return [];
  const { bolts, at } = found;
  return [
    ...ladder(
      're-cut',
      range(bolts.count + 1, MOST_BOLTS, 1).map(
        (count): Step => ({
          what: `Bolt ${named(found)} with ${count} bolts instead of ${bolts.count}`,
          patches: [put(ground, `${at}/count`, count)],
          size: change(bolts.count, count),
        }),
      ),
    ),
    ...ladder(
      're-cut',
      largerThreads(bolts.thread).map((thread): Step => {
        const times = (diameterOf(thread) / diameterOf(bolts.thread)) ** 3;
        const tightening = scaledText(ground, `${at}/tightening`, 'torque', times);
        return {
          what: `Bolt ${named(found)} with ${thread} instead of ${bolts.thread}${tightening === null ? '' : `, tightened with ${tightening}`}`,
          patches: [
            put(ground, `${at}/thread`, thread),
            ...(tightening === null ? [] : [put(ground, `${at}/tightening`, tightening)]),
          ],
          size: change(diameterOf(bolts.thread), diameterOf(thread)),
        };
      }),
    ),
    ...longer(ground, `${at}/circle`, bolts.circle, {
      parts: PARTS,
      says: (to, from) => `Set the bolts of ${named(found)} on a circle of ${to} instead of ${from}`,
      effort: 're-make',
    }),
  ];
}

/** More metal around the holes. */
export function moreAround(ground: Ground): readonly Ladder[] {
  const found = flangeOf(ground);
  if (!found) return [];
  const { bolts, at } = found;
  return [
    ...longer(ground, `${at}/thickness`, bolts.thickness, {
      parts: PARTS,
      says: (to, from) => `Make the thinner part under the bolts of ${named(found)} ${to} thick instead of ${from}`,
      effort: 're-make',
    }),
    ...longer(ground, `${at}/edge`, bolts.edge, {
      parts: PARTS,
      says: (to, from) => `Leave ${to} from the holes of ${named(found)} to the edge instead of ${from}`,
      effort: 're-make',
    }),
  ];
}

const proofOf = (grade: string): number => rowInSi(BOLT_CLASSES, grade).proof ?? Number.NaN;

/** Stronger bolts of the same family. */
export function strongerBolts(ground: Ground): readonly Ladder[] {
  const found = flangeOf(ground);
  const grade = found?.bolts.grade ?? null;
  if (!found || grade === null) return [];
  const family = grade.startsWith('class-') ? 'class-' : 'grade-';
  return ladder(
    'buy',
    Object.keys(BOLT_CLASSES.rows)
      .filter((key) => key.startsWith(family) && proofOf(key) > proofOf(grade) * 1.001)
      .sort((a, b) => proofOf(a) - proofOf(b))
      .map(
        (key): Step => ({
          what: `Bolt ${named(found)} with ${key.replace('-', ' ')} instead of ${grade.replace('-', ' ')}`,
          patches: [put(ground, `${found.at}/grade`, key)],
          size: change(proofOf(grade), proofOf(key)),
        }),
      ),
  );
}

/** Bolts tightened harder (+1) or less (−1). */
export const tightened =
  (sign: 1 | -1) =>
  (ground: Ground): readonly Ladder[] => {
    const found = flangeOf(ground);
    const now = found?.bolts.tightening ?? null;
    if (!found || now === null) return [];
    return movedField(ground, `${found.at}/tightening`, {
      kind: 'torque',
      by: (sign > 0 ? range(0.05, 1.5, 0.05) : range(0.05, 0.6, 0.05)).map((part) => sign * part * now),
      says: (to, from) => `Tighten the bolts of ${named(found)} with ${to} instead of ${from}`,
      effort: 'adjust',
    });
  };

/** Clamped faces that slip less easily. */
export function rougherFaces(ground: Ground): readonly Ladder[] {
  const found = flangeOf(ground);
  const at = found?.at ?? `${hubOf(ground)?.hub.address}/taper`;
  const held = found ?? (hubOf(ground)?.hub.torqueBy === 'taper' ? hubOf(ground) : null);
  const faces = found?.bolts.faces ?? hubOf(ground)?.hub.taper?.faces;
  if (!held || faces === undefined) return [];
  const order = ['oiled', 'clean or painted', 'blasted'] as const;
  const words = { oiled: '', 'clean or painted': 'Clean the faces', blasted: 'Blast the faces' } as const;
  const to = found ? order.slice(order.indexOf(faces) + 1) : faces === 'oiled' ? (['clean or painted'] as const) : [];
  return ladder(
    'adjust',
    to.map(
      (one, k): Step => ({
        what: `${words[one]} of ${named(held)} and join them without oil`,
        patches: [put(ground, `${at}/faces`, one)],
        size: 0.05 * (k + 1),
      }),
    ),
  );
}

const MM = 1e-3;

/** A longer thread in the part, a harder part, or nuts behind it. */
export function moreThread(ground: Ground): readonly Ladder[] {
  const found = flangeOf(ground);
  if (!found) return [];
  const { bolts, at } = found;
  const tensile = (key: string): number =>
    (Object.hasOwn(HUB_METALS.rows, key) ? rowInSi(HUB_METALS, key).tensile : undefined) ?? Number.NaN;
  const address = `${at}/engagement`;
  const { engagement, part } = bolts;
  return [
    ...(engagement === null
      ? []
      : ladder(
          're-cut',
          range(MM, 40 * MM, MM).map((by): Step => {
            const text = lengthText(ground, address, engagement + by);
            return {
              what: `Screw the bolts of ${named(found)} ${text} into the part`,
              patches: [put(ground, address, text)],
              size: by / engagement,
            };
          }),
        )),
    ...(part === null
      ? []
      : ladder(
          're-make',
          Object.keys(HUB_METALS.rows)
            .filter((key) => tensile(key) > tensile(part))
            .sort((a, b) => tensile(a) - tensile(b))
            .map(
              (key): Step => ({
                what: `Make the part that the bolts of ${named(found)} screw into of ${key} instead of ${part}`,
                patches: [put(ground, `${at}/part`, key)],
                size: change(tensile(part), tensile(key)),
              }),
            ),
        )),
    ...single('re-cut', {
      what: `Drill the part of ${named(found)} through, and put nuts behind its bolts`,
      patches: [put(ground, `${at}/into`, 'nuts')],
      size: 0.3,
    }),
  ];
}

/** Something that locks a fastener which nothing locks. */
export function locked(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  if (!found) return [];
  const { hub, seat } = found;
  const own = ['taper', 'bolted flange', 'setscrews'].includes(hub.torqueBy);
  const address = own ? `${hub.address}/locking` : `${seat.address}/held/locking`;
  return (['thread locker', 'tab washer', 'lock wire'] as const).flatMap((by, k) =>
    by === 'tab washer' && hub.torqueBy === 'setscrews'
      ? []
      : single('adjust', {
          what: `Lock the fastener of ${named(found)} by ${by === 'tab washer' ? 'a tab washer' : by}`,
          patches: [put(ground, address, by)],
          size: 0.01 * (k + 1),
        }),
  );
}

/** A larger weld round the hub, on both faces too. */
export function largerWeld(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const weld = found?.hub.torqueBy === 'weld' ? found.hub.weld : null;
  if (!found || !weld) return [];
  const address = `${found.hub.address}/weld/leg`;
  return [
    ...ladder(
      're-cut',
      range(weld.leg + MM, 12 * MM, MM).map((leg): Step => {
        const text = lengthText(ground, address, leg);
        return {
          what: `Weld ${named(found)} with a leg of ${text} instead of ${ground.show('length', weld.leg)}`,
          patches: [put(ground, address, text)],
          size: change(weld.leg, leg),
          needs: { weld: leg },
        };
      }),
    ),
    ...(weld.count === 1
      ? single('re-cut', {
          what: `Weld ${named(found)} on both faces`,
          patches: [put(ground, `${found.hub.address}/weld/count`, 2)],
          size: 0.2,
        })
      : []),
  ];
}

const hold = (size: string): number => rowInSi(SETSCREWS, size).hold ?? Number.NaN;

/** Two setscrews, and thicker ones. */
export function largerScrews(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const screws = found?.hub.torqueBy === 'setscrews' ? found.hub.screws : null;
  if (!found || !screws) return [];
  const metric = screws.size.startsWith('M');
  const at = `${found.hub.address}/screws`;
  return [
    ...(screws.count === 1
      ? single('re-cut', {
          what: `Give ${named(found)} two setscrews`,
          patches: [put(ground, `${at}/count`, 2)],
          size: 0.2,
        })
      : []),
    ...ladder(
      're-cut',
      Object.keys(SETSCREWS.rows)
        .filter((key) => key.startsWith('M') === metric && hold(key) > hold(screws.size))
        .sort((a, b) => hold(a) - hold(b))
        .map(
          (key): Step => ({
            what: `Give ${named(found)} setscrews ${key} instead of ${screws.size}`,
            patches: [put(ground, `${at}/size`, key)],
            size: change(hold(screws.size), hold(key)),
          }),
        ),
    ),
  ];
}
