import { gearDutyReserve } from '@oddwheel/mechanics/gear/duty-reserve';
import { gearLifeFactor } from '@oddwheel/mechanics/gear/life-factor';
import type { Used } from '../../geometry/types.ts';
import type { CaseLoads } from '../../loads.ts';
import type { DutyRun } from '../../strength/duty.ts';
import type { Scene } from '../check.ts';
import { type GearPair, type GearStress, overloadOf, overloadRow, stressOf, usedFactors } from './gear-pairs.ts';
import { type Bears, pairBears } from './gear-steels.ts';

/** Reserve of a pair on its loads with the worst and the best steel it may be of. */
export interface GearReserve {
  readonly low: number;
  readonly high: number;
  /** Gear that gives way first with the worst steel, and its stress in the hardest step. */
  readonly gear: 'driver' | 'driven gear';
  readonly stress: number;
  readonly hardest: GearStress;
  readonly name: string;
  readonly used: () => readonly Used[];
}

const MEMBERS = [
  ['driver', 'driver'],
  ['driven', 'driven gear'],
] as const;

const lesserOf = (a: GearReserve, b: GearReserve): GearReserve => {
  const worse = b.low < a.low ? b : a;
  return { ...worse, high: Math.min(a.high, b.high) };
};

/** What one pair, which belongs to one scene, bears of one duty. */
interface Borne {
  readonly duty: DutyRun;
  readonly steps: readonly { readonly bin: DutyRun['bins'][number]; readonly stress: GearStress }[];
  readonly found: Map<'bending' | 'contact', GearReserve | null>;
}
const BORNE = new WeakMap<GearPair, Borne>();

/** Bending or contact over the duty; null where nothing is carried. Several checks ask for it: it is worked out once. */
export function overDuty(pair: GearPair, scene: Scene, duty: DutyRun, of: 'bending' | 'contact'): GearReserve | null {
  const known = BORNE.get(pair);
  const borne = known?.duty === duty ? known : { duty, steps: stepsOf(pair, scene, duty), found: new Map() };
  BORNE.set(pair, borne);
  const found = borne.found.get(of);
  if (found !== undefined) return found;
  const made = reserveOf(pair, scene, borne, of);
  borne.found.set(of, made);
  return made;
}

function stepsOf(pair: GearPair, scene: Scene, duty: DutyRun): Borne['steps'] {
  const overload = overloadOf(scene);
  const from = `gear-service/${overloadRow(scene)}`;
  return duty.bins.map((bin) => ({ bin, stress: stressOf(pair, bin.load, overload, from) }));
}

function reserveOf(
  pair: GearPair,
  scene: Scene,
  { duty, steps }: Borne,
  of: 'bending' | 'contact',
): GearReserve | null {
  const [first, ...rest] = steps;
  if (!first || steps.every(({ stress }) => stress.torque === 0)) return null;
  const hardest = rest.reduce((worst, one) => (one.stress.contact > worst.stress.contact ? one : worst), first);
  const known = pairBears(pair.stage, scene);
  const curve = `${pair.stage.kind} ${of}` as const;
  const found = MEMBERS.map(([member, gear]): GearReserve => {
    const bears = known[member];
    const stresses = steps.map(({ stress }) => (of === 'contact' ? stress.contact : stress[member]));
    const turns = duty.bins.map((bin) => bin.ofDistance * (duty.turns[pair.k + (member === 'driver' ? 0 : 1)] ?? 0));
    const less = of === 'contact' ? Math.sqrt(known.reliability) : known.reliability;
    const tried = (number: number) => {
      const input = { stresses, turns, allowed: number / less, curve };
      return { input, output: gearDutyReserve.run(input) };
    };
    const low = tried(bears[of][0]);
    const high = bears.known ? low : tried(bears[of][1]);
    return {
      low: low.output.reserve,
      high: high.output.reserve,
      gear,
      stress: of === 'contact' ? hardest.stress.contact : hardest.stress[member],
      hardest: hardest.stress,
      name: hardest.bin.point.name,
      used: () => [
        ...usedFactors(pair),
        hardest.stress.used(),
        ...bears.used,
        {
          method: gearDutyReserve,
          input: low.input,
          output: low.output,
          origins: {
            stresses: `as above in each part of the duty, ${gear}`,
            turns: duty.origin,
            allowed: `${bears.from}, over ${known.reliabilityFrom}`,
            curve: 'kind of the pair',
          },
        },
      ],
    };
  });
  const [one, two] = found;
  return one && two ? lesserOf(one, two) : null;
}

/** Turns that a peak may come. */
const PEAKS = 1000;
const peakLife = (curve: 'bevel bending' | 'spur bending') => {
  const input = { turns: PEAKS, curve };
  return { input, output: gearLifeFactor.run(input) };
};
const PEAK_LIFE = { bevel: peakLife('bevel bending'), spur: peakLife('spur bending') } as const;

/** Bending under one case, as a peak that comes a thousand times. */
export function underPeak(pair: GearPair, scene: Scene, load: CaseLoads): GearReserve | null {
  // A rare peak has its shock in it already.
  const rare = load.point.kind === 'rare';
  const stress = stressOf(
    pair,
    load,
    rare ? 1 : overloadOf(scene),
    rare ? 'the shock is in the case' : `gear-service/${overloadRow(scene)}`,
  );
  if (stress.torque === 0) return null;
  const known = pairBears(pair.stage, scene);
  const { input, output: factor } = PEAK_LIFE[pair.stage.kind];
  const found = MEMBERS.map(([member, gear]): GearReserve => {
    const bears: Bears = known[member];
    const at = (number: number): number => (number * factor.factor) / known.reliability / stress[member];
    return {
      low: at(bears.bending[0]),
      high: at(bears.bending[1]),
      gear,
      stress: stress[member],
      hardest: stress,
      name: load.point.name,
      used: () => [
        ...usedFactors(pair),
        stress.used(),
        ...bears.used,
        {
          method: gearLifeFactor,
          input,
          output: factor,
          origins: { turns: 'a peak that comes a thousand times', curve: 'kind of the pair' },
        },
      ],
    };
  });
  const [one, two] = found;
  return one && two ? lesserOf(one, two) : null;
}
