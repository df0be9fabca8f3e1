import { shaftTwist } from '@oddwheel/mechanics/shaft/twist';
import { SHAFT_LIMITS } from '@oddwheel/tables/shaft-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Model, Seat } from '../../../model/model.ts';
import { CHAIN_LIMITS } from '../../../model/rows.ts';
import { type Within, within } from '../../../model/within.ts';
import type { ShaftStructure } from '../../strength/shaft-structure.ts';
import type { Check } from '../check.ts';
import { measured } from '../measured.ts';
import { onSolved, shaftIndex, shaftSubjects, shaftUses } from './shafts.ts';

interface SlopeLimit {
  readonly angle: number;
  readonly row: string;
}

/** rad. */
const NOTHING = 1e-9;
const SPUR: SlopeLimit = {
  angle: rowInSi(SHAFT_LIMITS, 'spur-gear').slopeHigh ?? Number.NaN,
  row: 'shaft-limits/spur-gear',
};
const SPROCKET: SlopeLimit = { angle: CHAIN_LIMITS.parallel.value, row: CHAIN_LIMITS.parallel.row };

/** Published limit of the slope at a seat; null where there is none, as for bevel gears, whose movement is a check of its own. */
function limitAt({ stages }: Pick<Model, 'stages'>, shaft: string, seat: Seat): SlopeLimit | null {
  const stage = stages.find(({ from, to }) => [from, to].some((end) => end.shaft === shaft && end.seat === seat.id));
  if (stage?.kind === 'spur') return SPUR;
  return stage?.kind === 'chain' ? SPROCKET : null;
}

const nodeOf = ({ stations }: ShaftStructure, station: number): number =>
  stations.findIndex((one) => Math.abs(one - station) < 1e-6);

/** Slope of the shaft at spur gears and sprockets; at bearings it is a check of theirs. */
export const shaftSlopes: Check = {
  id: 'shaft.slope',
  title: 'gear or sprocket leaning with its shaft',
  consequence: 'wears out',
  wanted: { reserve: 1, from: `${sourceOf(SHAFT_LIMITS, 'spur-gear')}; ${CHAIN_LIMITS.parallel.source}` },
  atWorst: 'thin',
  perCase: true,
  subjects: ({ shafts, stages }) =>
    shafts
      .filter((shaft) => shaft.seats.some((seat) => limitAt({ stages }, shaft.id, seat)))
      .map(({ address, name }) => ({ address, element: name, stage: null })),
  run: onSolved(({ structure, solution, uses }, scene) => {
    const { shaft } = structure;
    let worst: { readonly seat: Seat; readonly slope: number; readonly limit: SlopeLimit } | null = null;
    for (const seat of shaft.seats) {
      const limit = limitAt(scene.model, shaft.id, seat);
      const slope = solution.slopeAt(nodeOf(structure, seat.station));
      if (!limit || slope === undefined) continue;
      if (!worst || slope / limit.angle > worst.slope / worst.limit.angle) worst = { seat, slope, limit };
    }
    // A case that leaves the shaft idle says nothing of its slopes.
    if (!worst || worst.slope < NOTHING) return null;
    const { seat, slope, limit } = worst;
    const { show } = scene;
    return measured(
      { name: 'slope', value: slope, kind: 'angle', use: 'angle' },
      { name: 'limit', value: limit.angle, kind: 'angle', use: 'angle' },
      () =>
        `At ${seat.name} the shaft leans ${show('angle', slope)} under load; ${show('angle', limit.angle)} is the most for a ${seat.kind}.`,
      uses,
      () => [],
      { capacity: limit.row, demand: 'shaft on its bearings under this case' },
    );
  }),
};

const LONG = 20;
const TWIST = rowInSi(SHAFT_LIMITS, 'long-shaft').twist ?? Number.NaN;

/** The part of a shaft that torque passes through, and what it is made of there. */
interface Passed {
  readonly length: number;
  readonly thinnest: number;
  readonly lengths: readonly number[];
  readonly diameters: readonly number[];
}

const PASSED: Within<Passed> = new WeakMap();

/** It hangs on no case. */
const passedOf = (model: Model, structure: ShaftStructure, k: number): Passed =>
  within(PASSED, [model, structure], () => {
    const { shaft, stretches } = structure;
    const ends = [model.stages[k - 1]?.to, model.stages[k]?.from].flatMap((end) => {
      const seat = end && shaft.seats.find(({ id }) => id === end.seat);
      return seat ? [seat.station] : [];
    });
    const wheels = k === model.shafts.length - 1 ? shaft.seats.filter(({ kind }) => kind === 'wheel') : [];
    const all = [...ends, ...wheels.map(({ station }) => station)];
    const [from, to] = [Math.min(...all), Math.max(...all)];
    const between = stretches.flatMap((stretch) => {
      const length = Math.min(to, stretch.to) - Math.max(from, stretch.from);
      // A bored piece twists as a solid one of a little less diameter.
      return length > 0 ? [{ length, diameter: (stretch.diameter ** 4 - stretch.bore ** 4) ** 0.25 }] : [];
    });
    const diameters = between.map(({ diameter }) => diameter);
    return {
      length: to - from,
      thinnest: Math.min(...diameters),
      lengths: between.map(({ length }) => length),
      diameters,
    };
  });

/** Twist of a long shaft; the published limit speaks of twenty diameters, and shorter shafts are left out. */
export const shaftTwists: Check = {
  id: 'shaft.twist',
  title: 'twist of a long shaft',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(SHAFT_LIMITS, 'long-shaft') },
  atWorst: 'thin',
  perCase: true,
  subjects: shaftSubjects,
  run: (scene, subject, load) => {
    const k = shaftIndex(scene.model, subject);
    const structure = scene.strength.shafts[k];
    if (!structure || !load) return null;
    const { shaft } = structure;
    const { length, thinnest, lengths, diameters } = passedOf(scene.model, structure, k);
    const torque = Math.abs(load.shafts[k]?.torque ?? 0);
    if (!(length >= LONG * thinnest) || torque === 0) return null;
    const input = { torque, lengths, diameters, shear: shaft.steel.shear };
    const output = shaftTwist.run(input);
    const limit = (TWIST * length) / (LONG * thinnest);
    const { show } = scene;
    return measured(
      { name: 'twist', value: output.twist, kind: 'angle', use: 'angle' },
      { name: 'limit', value: limit, kind: 'angle', use: 'angle' },
      () =>
        `Over ${show('length', length)} it twists ${show('angle', output.twist)}; one degree in twenty diameters makes ${show('angle', limit)}.`,
      shaftUses(structure),
      () => [
        {
          method: shaftTwist,
          input,
          output,
          origins: {
            torque: 'torque carried through the path',
            lengths: `${shaft.address}/pieces`,
            diameters: `${shaft.address}/pieces`,
            shear: shaft.steel.tensile.address,
          },
        },
      ],
      { capacity: 'shaft-limits/long-shaft, by its length and thinnest diameter', demand: 'above' },
    );
  },
};
