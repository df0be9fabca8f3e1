import { cross, dot, minus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { REACH_DISTANCES } from '@oddwheel/tables/reach-distances';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Stage } from '../../model/model.ts';
import type { Guard } from '../../model/strength.ts';
import { seatOf, turning } from '../geometry/place.ts';
import type { Missing } from '../types.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

/** Reach of an arm past the edge that stops its shoulder, m. */
const ARM = rowInSi(REACH_DISTANCES, 'arm').arm ?? Number.NaN;
const SOURCE = `${sourceOf(REACH_DISTANCES, 'arm')}; behind openings ${sourceOf(REACH_DISTANCES, '120')}`;
/** Longest slot at which the thumb stops the hand, m: the note of the row. */
const SHORT_SLOT = 0.065;

const plain = (holds: boolean, says: () => string): Outcome => ({
  kind: 'plain',
  holds,
  says,
  uses: [],
  used: () => [],
});

const WORDS: readonly (readonly [string, string])[] = [
  ['front', 'rear'],
  ['left side', 'right side'],
  ['top', 'bottom'],
];

/** Side of a part that a direction points at, in words. */
function sideOf(direction: Vec3): string {
  const sizes = direction.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes));
  const [ahead = '', back = ''] = WORDS[axis] ?? [];
  return (direction[axis] ?? 0) > 0 ? ahead : back;
}

/**
 * Where a stage draws a hand in while the vehicle rolls as its sense says: a chain or belt where it runs onto a wheel, a pair of gears where its
 * teeth come together. Null while the sense is not known.
 */
function nipsOf(scene: Scene, index: number): string | null {
  const geometry = scene.stages[index];
  const sense = scene.senses[index] ?? null;
  const after = scene.senses[index + 1] ?? null;
  if (!geometry || sense === null || after === null) return null;
  const { stage, from, to } = geometry;
  const [a, b] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  if (stage.kind === 'bevel' || stage.kind === 'spur')
    return `where the teeth of ${a.name} and ${b.name} come together, at the ${sideOf(times(-1, cross(turning(from, sense), minus(b.at, a.at))))} of the mesh`;
  const axis = turning(from, sense);
  const off = minus(b.at, a.at);
  const span = minus(off, times(dot(off, from.direction), from.direction));
  // The rim of the driver moves with ω × n; on its tight side that is back from the driven wheel.
  const tight = cross(span, axis);
  return `onto ${a.name} at its ${sideOf(times(-1, tight))} and onto ${b.name} at its ${sideOf(tight)}`;
}

const ZONES = ['rider', 'passenger', 'bystander'] as const;
const ZONE_WORDS = { rider: 'the rider', passenger: 'a passenger', bystander: 'a bystander' } as const;

interface Near {
  readonly who: string;
  readonly distance: number;
}

/** Zones asked for, and the nearest of those that are known. */
function zones(stage: Stage, guard: Guard | null): { readonly nearest: Near | null; readonly missing: Missing[] } {
  const missing = ZONES.filter((zone) => (guard?.[zone] ?? null) === null).map((zone) => ({
    address: `${stage.address}/guard/${zone}`,
    says: `how near ${ZONE_WORDS[zone]} comes to ${stage.name}`,
  }));
  const known = ZONES.flatMap((zone): Near[] => {
    const distance = guard?.[zone] ?? null;
    return distance === null ? [] : [{ who: ZONE_WORDS[zone], distance }];
  });
  const nearest = known.reduce<Near | null>((best, one) => (best && best.distance <= one.distance ? best : one), null);
  return { nearest, missing };
}

const asks = (stage: Stage, key: keyof Guard, says: string): Missing => ({
  address: `${stage.address}/guard/${key}`,
  says,
});

const ROWS = ['4', '6', '8', '10', '12', '20', '30', '40', '120'] as const;
const COLUMN = { slots: 'slot', squares: 'square', 'round holes': 'round' } as const;

/** Least distance behind an opening, m, with its row; null where the opening is beyond the table. */
export function leastBehind(
  opening: number,
  shape: NonNullable<Guard['shape']>,
  slotLength: number | null,
): { readonly distance: number; readonly row: string } | null {
  // A hundredth of a micron: rounding of an inch is no wider opening.
  const key = ROWS.find((row) => opening <= (rowInSi(REACH_DISTANCES, row).opening ?? 0) + 1e-8);
  if (key === undefined) return null;
  const short = key === '30' && shape === 'slots' && slotLength !== null && slotLength <= SHORT_SLOT;
  const row = short ? 'short-slot' : key;
  return { distance: rowInSi(REACH_DISTANCES, row)[COLUMN[shape]] ?? Number.NaN, row: `reach-distances/${row}` };
}

/** A guard with openings stands far enough off for them. */
function throughOpenings({ show }: Scene, stage: Stage, guard: Guard, nips: string): Outcome {
  const { opening, shape, slotLength, stands } = guard;
  if (opening === null || shape === null || stands === null)
    return {
      kind: 'unknown',
      missing: [
        ...(opening === null ? [asks(stage, 'opening', 'the size of the guard’s openings')] : []),
        ...(shape === null ? [asks(stage, 'shape', 'whether they are slots, squares or round holes')] : []),
        ...(stands === null ? [asks(stage, 'stands', 'how far the guard stands off the nearest tooth or run')] : []),
      ],
    };
  const least = leastBehind(opening, shape, slotLength);
  if (!least)
    return plain(
      false,
      () => `Openings of ${show('length', opening)} let the whole arm and more through: they are no guard.`,
    );
  return measured(
    { name: 'distance wanted', value: least.distance, kind: 'length', use: 'length' },
    { name: 'guard stands off', value: stands, kind: 'length', use: 'length' },
    () =>
      `Through ${shape} of ${show('length', opening)} a hand reaches ${show('length', least.distance)}; the guard stands ${show('length', stands)} off. ${nips}`,
    [],
    () => [],
    { capacity: `${stage.address}/guard/stands`, demand: least.row },
  );
}

const stageAt = (scene: Scene, { stage }: Subject): Stage | undefined =>
  stage === null ? undefined : scene.model.stages[stage];

/** Nobody reaches where it draws in. */
export const guardReach: Check = {
  id: 'guard.reach',
  title: 'hands kept from where it draws in',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: SOURCE },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('chain', 'belt', 'bevel', 'spur'),
  run: (scene, subject) => {
    const stage = stageAt(scene, subject);
    if (!stage || subject.stage === null) return null;
    const { guard } = stage;
    const { show } = scene;
    const { nearest, missing } = zones(stage, guard);
    const found = nipsOf(scene, subject.stage);
    const nips = `It draws in ${found ?? 'on both sides of each wheel: which way it turns is not known'}.`;
    const open = guard?.kind === 'none' || guard?.kind === 'one side only';
    if (nearest && nearest.distance < ARM && open)
      return plain(
        false,
        () =>
          `${nearest.who[0]?.toUpperCase()}${nearest.who.slice(1)} comes within ${show('length', nearest.distance)}, an arm reaches ${show('length', ARM)}, and ${guard.kind === 'none' ? 'there is no guard' : 'the guard leaves a side open'}. ${nips} Close it on all sides, or use mesh.`,
      );
    if (missing.length > 0 || !nearest || !guard) return { kind: 'unknown', missing };
    if (nearest.distance >= ARM)
      return plain(
        true,
        () =>
          `Nobody comes nearer than ${show('length', nearest.distance)}, beyond an arm’s ${show('length', ARM)}. ${nips}`,
      );
    if (guard.kind === null) return { kind: 'unknown', missing: [asks(stage, 'kind', `the guard over ${stage.name}`)] };
    if (guard.kind === 'closed') return plain(true, () => `A closed guard covers it. ${nips}`);
    return throughOpenings(scene, stage, guard, nips);
  },
};

/** A toe is kept from where the lower run meets the wheel's sprocket. */
export const guardToe: Check = {
  id: 'guard.toe',
  title: 'toe guard at the wheel’s sprocket',
  consequence: 'throws parts',
  wanted: {
    reserve: 1,
    from: 'common practice, as races ask for it: a fin where the lower run meets the rear sprocket',
  },
  atWorst: 'fails',
  perCase: false,
  subjects: (model) =>
    stagesOfKind(
      'chain',
      'belt',
    )(model).filter(({ stage }) => model.shafts[(stage ?? -2) + 1]?.seats.some(({ kind }) => kind === 'wheel')),
  run: (scene, subject) => {
    const stage = stageAt(scene, subject);
    if (!stage) return null;
    const { guard } = stage;
    if (guard?.kind === 'closed') return plain(true, () => 'The closed guard keeps toes out too.');
    if (guard?.toe) return plain(true, () => 'A toe guard is fitted.');
    const { nearest, missing } = zones(stage, guard);
    if (guard?.toe === false && nearest && nearest.distance < ARM)
      return plain(
        false,
        () =>
          `${stage.name} runs at the wheel within reach of ${nearest.who}, and there is no toe guard. Fit a fin ahead of where the run meets the sprocket.`,
      );
    const toe = guard?.toe === false ? [] : [asks(stage, 'toe', 'whether a toe guard is fitted')];
    if (missing.length + toe.length > 0) return { kind: 'unknown', missing: [...missing, ...toe] };
    return plain(true, () => 'There is no toe guard, and nobody comes within reach.');
  },
};

/** A broken chain or belt stays in. */
export const guardHold: Check = {
  id: 'guard.hold',
  title: 'broken chain or belt held in',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'common practice: a guard over a chain beside people also holds it when it breaks' },
  atWorst: 'thin',
  perCase: false,
  subjects: stagesOfKind('chain', 'belt'),
  run: (scene, subject) => {
    const stage = stageAt(scene, subject);
    if (!stage) return null;
    const holds = stage.guard?.holds ?? null;
    if (holds === null)
      return {
        kind: 'unknown',
        missing: [asks(stage, 'holds', `whether something holds ${stage.name} in when it breaks`)],
      };
    return plain(holds, () =>
      holds
        ? 'By the builder’s word a broken one stays in.'
        : `When ${stage.name} breaks nothing holds it in: its free end whips round the driver toward whoever is beside it. Put a plate of steel, or a hoop at the driver, between.`,
    );
  },
};
