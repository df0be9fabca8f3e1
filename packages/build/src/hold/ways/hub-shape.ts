/** Torque joints by shape or grip: keys, splines, press fits and tapers, and what they sit on. */
import { HUB_METALS } from '@oddwheel/tables/hub-metals';
import { rowInSi } from '@oddwheel/tables/table';
import { standardKey } from '../../assess/checks/hub/key-size.ts';
import { type TorqueSeat, torqueSeatOf } from '../../assess/checks/hub/seats.ts';
import type { Json } from '../../document/json.ts';
import type { Patch } from '../../document/patch.ts';
import { removePatches } from '../../edit/place.ts';
import type { Hub } from '../../model/hub.ts';
import {
  change,
  type Ground,
  inInches,
  type Ladder,
  ladder,
  lengthText,
  put,
  putIn,
  range,
  type Step,
  single,
  typedAt,
} from '../ladder.ts';
import { longer, movedField } from './fields.ts';
import { isDonors } from './parts.ts';
import { thickerSeat } from './shafts.ts';

type Jointed = TorqueSeat & { readonly hub: Hub };

/** The torque joint that a finding stands on. */
export const hubOf = ({ model, finding }: Ground): Jointed | null =>
  torqueSeatOf(model, { address: finding.address, element: '', stage: null });

const named = ({ seat, shaft }: Jointed): string => `${seat.name} of ${shaft.name}`;

/** Usual lengths of keys, mm: DIN 6885-1, from memory. */
const KEY_LENGTHS = [
  6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90, 100, 110, 125,
].map((mm) => mm * 1e-3);
const EIGHTH = 0.0254 / 8;
const ROUNDING = 1e-9;
/** Over the diameter of its shaft a longer key carries no more: common practice. */
const LONGEST = 1.5;

/** What carries along its length in a hub, with the lengths that it may have. */
interface Lengthwise {
  readonly address: string;
  readonly length: number;
  readonly word: string;
  readonly lengths: readonly number[];
}

function lengthwise(ground: Ground, { hub, seat }: Jointed): Lengthwise | null {
  const group = { key: 'key', spline: 'spline', 'press fit': 'press', taper: 'taper' } as const;
  if (!Object.hasOwn(group, hub.torqueBy)) return null;
  const key = group[hub.torqueBy as keyof typeof group];
  const length = hub[key]?.length;
  if (length === undefined) return null;
  const address = `${hub.address}/${key}/length`;
  const most = key === 'key' && seat.diameter !== null ? LONGEST * seat.diameter : 3 * length;
  const steps = inInches(ground, address)
    ? range(EIGHTH, 0.15, EIGHTH)
    : key === 'key'
      ? KEY_LENGTHS
      : range(1e-3, 0.15, 1e-3);
  return { address, length, word: hub.torqueBy, lengths: steps.filter((one) => one <= most + ROUNDING) };
}

/** A longer key, spline, press fit or taper, as far as its hub goes. */
export function longerInHub(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const now = found && lengthwise(ground, found);
  if (!found || !now) return [];
  const room = found.seat.width ?? Number.POSITIVE_INFINITY;
  return ladder(
    're-cut',
    now.lengths
      .filter((si) => si > now.length + ROUNDING && si <= room + ROUNDING)
      .map((si): Step => {
        const text = lengthText(ground, now.address, si);
        return {
          what: `Make the ${now.word} of ${named(found)} ${text} long instead of ${typedAt(ground, now.address)}`,
          patches: [put(ground, now.address, text)],
          size: change(now.length, si),
        };
      }),
  );
}

/** A wider hub, with a key, spline, press fit or taper of its length. */
export function widerHub(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const now = found && lengthwise(ground, found);
  const room = found?.seat.width ?? null;
  if (!found || !now || room === null) return [];
  const width = `${found.seat.address}/width`;
  return ladder(
    're-make',
    now.lengths
      .filter((si) => si > now.length + ROUNDING && si > room + ROUNDING)
      .map((si): Step => {
        const wide = lengthText(ground, width, si);
        return {
          what: `Make the hub of ${named(found)} ${wide} wide instead of ${typedAt(ground, width)}, with a ${now.word} of that length`,
          patches: [put(ground, width, wide), put(ground, now.address, lengthText(ground, now.address, si))],
          size: change(now.length, si),
        };
      }),
  );
}

/** What is longer than its hub, shorter; or the hub as wide as that. */
export function withinHub(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const now = found && lengthwise(ground, found);
  const { width = null } = found?.seat ?? {};
  if (!found || !now || width === null) return [];
  const address = `${found.seat.address}/width`;
  const fits = now.lengths.filter((one) => one <= width + ROUNDING && one < now.length - ROUNDING).reverse();
  const wide = lengthText(ground, address, now.length);
  return [
    ...ladder(
      're-cut',
      fits.map((si): Step => {
        const text = lengthText(ground, now.address, si);
        return {
          what: `Make the ${now.word} of ${named(found)} ${text} long instead of ${typedAt(ground, now.address)}`,
          patches: [put(ground, now.address, text)],
          size: change(now.length, si),
        };
      }),
    ),
    ...(now.length > width + ROUNDING
      ? single('re-make', {
          what: `Make the hub of ${named(found)} ${wide} wide instead of ${typedAt(ground, address)}`,
          patches: [put(ground, address, wide)],
          size: change(width, now.length),
        })
      : []),
  ];
}

/** The key of the standard instead of one of its own sizes. */
export function standardSize(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const { hub, seat } = found ?? {};
  const at = `${hub?.address}/key`;
  const own = (['width', 'height', 'depth'] as const)
    .map((key) => `${at}/${key}`)
    .filter((one) => typedAt(ground, one) !== undefined);
  if (!found || !hub?.key || own.length === 0 || seat?.diameter == null) return [];
  const row = standardKey(seat.diameter, hub.key.inch);
  return row === null
    ? []
    : single('re-cut', {
        what: `Give ${named(found)} the key of the standard for its shaft, and cut both slots to suit`,
        patches: removePatches(ground.session, own),
        size: 0.2,
      });
}

/** A second key, one with square ends, and one that sits tight. */
export function betterKey(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const key = found?.hub.torqueBy === 'key' ? found.hub.key : null;
  if (!found || !key) return [];
  const set = (values: Readonly<Record<string, Json>>): readonly Patch[] =>
    putIn(ground, `${found.hub.address}/key`, values);
  return [
    ...(key.fit === 'tight'
      ? []
      : single('re-cut', {
          what: `Fit the key of ${named(found)} tight in both slots`,
          patches: set({ fit: 'tight' }),
          size: 0.05,
        })),
    ...(key.roundEnds === 0
      ? []
      : single('re-cut', {
          what: `Give ${named(found)} a key with square ends, in a slot that runs out of the hub`,
          patches: set({ ends: 'square' }),
          size: 0.1,
        })),
    ...(key.keys > 1
      ? []
      : single('re-cut', {
          what: `Cut a second slot for ${named(found)}, with a second key in it`,
          patches: set({ keys: 2 }),
          size: 0.4,
        })),
  ];
}

/** A spline that cannot move in its hub frets less. */
export function heldSpline(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const spline = found?.hub.torqueBy === 'spline' ? found.hub.spline : null;
  if (!found || !spline || spline.sits === 'clamped along the shaft') return [];
  return single('re-cut', {
    what: `Clamp ${named(found)} along its shaft, so that its spline does not move`,
    patches: putIn(ground, `${found.hub.address}/spline`, { sits: 'clamped along the shaft' }),
    size: 0.1,
  });
}

const STEELS = (['mild steel', 'medium carbon steel', 'hardened steel'] as const).map((key) => ({
  key,
  yields: rowInSi(HUB_METALS, key).yield ?? Number.NaN,
}));

/** A hub of a better metal. */
export function betterHub(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  if (!found || found.hub.torqueBy === 'one piece with the shaft') return [];
  const address = `${found.hub.address}/metal`;
  const now = found.hub.metal.yield.lo;
  return ladder(
    'buy',
    STEELS.filter(({ yields }) => yields > now * 1.001).map(
      ({ key, yields }): Step => ({
        what: `Take ${named(found)} with a hub of ${key} instead of ${typedAt(ground, address) ?? 'a metal that is not told'}`,
        patches: [put(ground, address, key)],
        size: change(now, yields),
      }),
    ),
  );
}

/** The shaft thicker under the part. */
export function thickerUnder(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  return found && !isDonors(ground, found.shaft) ? thickerSeat(ground, found.shaft, found.seat) : [];
}

const MICRON = 1e-6;
const PARTS = range(0.05, 1, 0.05);
/** Joined with more friction, the least first. */
const JOINED = [
  'pressed, oiled, steel on steel',
  'pressed, dry, steel on steel',
  'shrunk, oil film',
  'shrunk, degreased',
] as const;

/** A press fit with another interference, a thicker hub, or joined with more friction. */
export function betterPress(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const press = found?.hub.torqueBy === 'press fit' ? found.hub.press : null;
  if (!found || !press) return [];
  const { hub } = found;
  const at = `${hub.address}/press`;
  const steel = hub.metal.elastic === 'steel';
  return [
    ...[1, -1].flatMap((sign) =>
      movedField(ground, `${at}/interference`, {
        kind: 'length',
        by: range(2.5 * MICRON, 100 * MICRON, 2.5 * MICRON).map((by) => sign * by),
        says: (to, from) => `Turn ${named(found)} for ${to} of interference instead of ${from}`,
        effort: 're-cut',
      }),
    ),
    ...longer(ground, `${at}/outside`, press.outside, {
      parts: PARTS,
      says: (to, from) => `Make the hub of ${named(found)} ${to} outside instead of ${from}`,
      effort: 're-make',
    }),
    ...ladder(
      're-cut',
      (steel ? JOINED.slice(JOINED.indexOf(press.joined) + 1) : []).map(
        (joined, k): Step => ({
          what: `Join ${named(found)} ${joined.replace(', steel on steel', '')} instead of ${press.joined.replace(', steel on steel', '')}`,
          patches: [put(ground, `${at}/joined`, joined)],
          size: 0.1 * (k + 1),
        }),
      ),
    ),
  ];
}

/** The keyway entered as a notch, so that the shaft is judged with it. */
export function keywayEntered(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  return found
    ? single('adjust', {
        what: `Enter the keyway of ${found.seat.name} among the notches of ${found.shaft.name}`,
        patches: keywayPatches(ground, found),
        size: 0.01,
      })
    : [];
}

/** A notch for the keyway of a seat, at its station. */
function keywayPatches(ground: Ground, { seat, shaft }: Jointed): readonly Patch[] {
  const taken = new Set(shaft.notches.map(({ address }) => address));
  const notches = `${shaft.address}/notches`;
  const names = ['', '-2', '-3', '-4'].map((end) => `keyway-${seat.id}${end}`);
  const id = names.find((one) => !taken.has(`${notches}/${one}`)) ?? `keyway-${seat.id}-${taken.size + 1}`;
  return putIn(ground, notches, {
    [id]: {
      name: `keyway of ${seat.name}`,
      kind: 'keyway, end milled',
      station:
        typedAt(ground, `${seat.address}/station`) ?? lengthText(ground, `${seat.address}/station`, seat.station),
    },
  });
}

/** A key or a weld in the place of setscrews. */
export function notScrewsAlone(ground: Ground): readonly Ladder[] {
  const found = hubOf(ground);
  const diameter = found?.seat.diameter ?? null;
  if (found?.hub.torqueBy !== 'setscrews' || diameter === null || isDonors(ground, found.shaft)) return [];
  const { hub, seat } = found;
  const most = Math.min(LONGEST * diameter, seat.width ?? Number.POSITIVE_INFINITY);
  const length = KEY_LENGTHS.findLast((one) => one <= most + ROUNDING);
  const inch = inInches(ground, `${seat.address}/diameter`);
  return [
    ...(length === undefined || standardKey(diameter, inch) === null
      ? []
      : single('re-cut', {
          what: `Cut a keyway for ${named(found)}, with a key of ${ground.show('length', length)} that sits tight`,
          patches: [
            put(ground, `${hub.address}/torqueBy`, 'key'),
            put(ground, `${hub.address}/key`, {
              length: lengthText(ground, `${seat.address}/width`, length),
              fit: 'tight',
              ...(inch ? { sizes: 'inch standard' } : {}),
            }),
            ...keywayPatches(ground, found),
          ],
          size: 0.3,
        })),
    ...(hub.metal.elastic === 'steel'
      ? single('re-cut', {
          what: `Weld ${named(found)} to its shaft with a fillet of 5 mm all round`,
          patches: [
            put(ground, `${hub.address}/torqueBy`, 'weld'),
            put(ground, `${hub.address}/weld`, { leg: '5 mm' }),
          ],
          size: 0.4,
          needs: { weld: 5e-3 },
        })
      : []),
  ];
}
