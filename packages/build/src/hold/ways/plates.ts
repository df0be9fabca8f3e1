/** Stiffer plates under the bearings. */
import type { Patch } from '../../document/patch.ts';
import type { Shaft } from '../../model/model.ts';
import type { Plate } from '../../model/strength.ts';
import {
  change,
  type Ground,
  inInches,
  type Ladder,
  ladder,
  lengthText,
  put,
  range,
  type Step,
  typedAt,
} from '../ladder.ts';
import { thicknessesAbove } from '../sizes.ts';
import { and, bearingsOf, seatAt, shaftOf, shaftsOfStage } from './parts.ts';

const platesOf = (shafts: readonly Shaft[]): readonly Plate[] => [
  ...new Set(shafts.flatMap((shaft) => bearingsOf(shaft).flatMap(({ bearing }) => bearing?.plate ?? []))),
];

/** All plates of a group thicker by steps of their own kind, each at least to its next size. */
function thicker(ground: Ground, plates: readonly Plate[]): readonly Ladder[] {
  const sizes = plates.map((plate) => {
    const address = `${plate.address}/thickness`;
    return { plate, address, sizes: thicknessesAbove(plate.thickness, inInches(ground, address)) };
  });
  const steps = Math.min(...sizes.map((one) => one.sizes.length));
  if (!Number.isFinite(steps)) return [];
  return ladder(
    're-cut',
    range(1, steps, 1).map((n): Step => {
      const all = sizes.flatMap(({ plate, address, sizes: up }) => {
        const si = up[n - 1];
        return si === undefined ? [] : [{ plate, address, si, text: lengthText(ground, address, si) }];
      });
      return {
        what: `Make the ${and(all.map(({ plate, text }) => `${plate.name} ${text}`))} thick instead of ${and([...new Set(all.map(({ address }) => typedAt(ground, address) ?? ''))])}`,
        patches: all.map(({ address, text }) => put(ground, address, text)),
        size: Math.max(...all.map(({ plate, si }) => change(plate.thickness, si))),
        needs: {
          weld: Math.max(...all.map(({ si }) => si)),
          sheet: {
            width: Math.max(...all.map(({ plate }) => plate.width)),
            length: Math.max(...all.map(({ plate }) => plate.span)),
            thickness: Math.max(...all.map(({ si }) => si)),
          },
        },
      };
    }),
  );
}

const SHARE = 0.05;
/** Tubes are moved closer by so much of the span at the most. */
const CLOSEST = 0.5;

function closerTubes(ground: Ground, plate: Plate): readonly Ladder[] {
  const address = `${plate.address}/span`;
  return ladder(
    're-cut',
    range(SHARE, CLOSEST, SHARE).map((part): Step => {
      const si = Math.round(plate.span * (1 - part) * 1000) / 1000;
      const text = lengthText(ground, address, si);
      return {
        what: `Bring the tubes of the ${plate.name} to ${text} apart instead of ${typedAt(ground, address)}`,
        patches: [put(ground, address, text)],
        size: part,
        ...(si <= widest(ground, plate) ? { never: 'the bearing takes that room' } : {}),
      };
    }),
  );
}

const widest = ({ model }: Ground, plate: Plate): number =>
  Math.max(
    0,
    ...model.shafts.flatMap((shaft) =>
      bearingsOf(shaft).flatMap((seat) =>
        seat.bearing?.plate?.id === plate.id ? (seat.outside ?? seat.bearing.facts?.outside ?? 0) : 0,
      ),
    ),
  );

function builtIn(ground: Ground, plates: readonly Plate[]): readonly Ladder[] {
  const loose = plates.filter(({ ends }) => ends.text !== 'as if built in');
  const patches = loose.map(({ address }): Patch => put(ground, `${address}/ends`, 'as if built in'));
  return patches.length === 0
    ? []
    : ladder('re-cut', [
        {
          what: `Build the ends of the ${and(loose.map(({ name }) => name))} in: two rows of bolts, or a weld all round`,
          patches,
          size: 0.05,
          needs: { weld: Math.max(...loose.map(({ thickness }) => thickness)) },
        },
      ]);
}

function ofSteel(ground: Ground, plates: readonly Plate[]): readonly Ladder[] {
  const soft = plates.filter(({ material }) => material === 'aluminium');
  return soft.length === 0
    ? []
    : ladder('re-cut', [
        {
          what: `Cut the ${and(soft.map(({ name }) => name))} from steel instead of aluminium`,
          patches: soft.map(({ address }) => put(ground, `${address}/material`, 'steel')),
          size: 0.5,
          needs: { weld: Math.max(...soft.map(({ thickness }) => thickness)) },
        },
      ]);
}

/** Plates that give less: each alone, and all of a shaft together. */
export function stifferPlates(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  const plates = platesOf(
    ground.finding.address.startsWith('/path/stages/') ? shaftsOfStage(ground) : shaft ? [shaft] : [],
  );
  if (plates.length === 0) return [];
  return [
    ...builtIn(ground, plates),
    ...plates.flatMap((plate) => [...thicker(ground, [plate]), ...closerTubes(ground, plate)]),
    ...(plates.length > 1 ? thicker(ground, plates) : []),
    ...ofSteel(ground, plates),
  ];
}

/** The plate of a bearing: thicker, built in, or of steel. */
export function strongerPlate(ground: Ground): readonly Ladder[] {
  const plate = seatAt(ground, ground.finding.address)?.bearing?.plate;
  return plate ? [...builtIn(ground, [plate]), ...thicker(ground, [plate]), ...ofSteel(ground, [plate])] : [];
}
