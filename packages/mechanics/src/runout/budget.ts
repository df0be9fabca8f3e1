/** What run-out is allowed, what it does, and which contributor is worth fixing. */
import { balance } from './balance.ts';
import { gearLimits } from './gear-limits.ts';
import { sprocketLimits } from './sprocket-limits.ts';
import { stackUp } from './stack-up.ts';

export interface Contributor {
  readonly name: string;
  /** TIR from its offset, m. */
  readonly tir: number;
  /** Angle of its high spot, rad, when it is known. */
  readonly high?: number;
}

/** What sits at the station, and what is known of it. SI. */
export interface Served {
  readonly sprocket?: { readonly rootDiameter: number; readonly made: 'turned' | 'welded' };
  readonly gear?: { readonly bevel: 0 | 1; readonly diameter: number; readonly module: number; readonly grade: number };
  /** Mass that follows the measured surface, top speed, and balance grade. */
  readonly balance?: { readonly mass: number; readonly speed: number; readonly grade: number };
  /** Swing of its face as measured, once a turn, m. */
  readonly face?: number;
  /** Places where something must not wobble: how far the axis leans there, where it is known, and the most that is allowed; rad. */
  readonly leans?: readonly {
    readonly what: Lean;
    readonly angle: number | undefined;
    readonly most: number;
    readonly source: string;
  }[];
  /** Stiffness that resists the offset, N/m: of mounts, or of a chain run in line. */
  readonly stiffness?: number;
}

export type Lean = 'lean of the bearings' | 'lean of the gear';

/** Limit of an angle. */
export interface LeanLimit {
  readonly what: Lean;
  /** As measured, rad; left out where it is not. */
  readonly angle?: number;
  readonly most: number;
  readonly source: string;
  readonly verdict: 'holds' | 'fails either way' | 'not measured';
}

export interface Limit {
  readonly what: 'sprocket' | 'sprocket face' | 'gear seat' | 'balance';
  /** Greatest radial TIR, of a face its axial one, m. */
  readonly tir: number;
  readonly source: string;
  readonly verdict: 'holds' | 'fails either way' | 'depends on the angles' | 'not measured';
}

export interface Budget {
  /** TIR with all high spots in line, and at chance angles, m. */
  readonly worst: number;
  readonly rootSumSquare: number;
  /** TIR by the angles; left out unless all are known. */
  readonly byAngle?: number;
  readonly limits: readonly Limit[];
  readonly leans: readonly LeanLimit[];
  /** What the root-sum-square run-out does; undefined where the input is missing. */
  readonly effects: {
    /** Change of a chain's slack in a turn, m. */
    readonly slackSwing?: number;
    /** Force that turns with the shaft at top speed, N. */
    readonly imbalanceForce?: number;
    /** Force of mounts or chain held off their place, N. */
    readonly drag?: number;
  };
  /** Contributors, the one that takes most away first: root-sum-square TIR left without it. */
  readonly worthFixing: readonly { readonly name: string; readonly left: number }[];
}

/**
 * Budget of run-out at one station.
 * @throws RangeError when there is no contributor.
 */
export function runoutBudget(contributors: readonly Contributor[], served: Served): Budget {
  if (contributors.length === 0) throw new RangeError('contributors: none read; at least one is accepted.');
  const sum = stackUp.run({
    tirs: contributors.map(({ tir }) => tir),
    highs: contributors.map(({ high }) => high ?? 0),
  });
  const known = contributors.every(({ high }) => high !== undefined);
  const counts = known ? sum.tir : sum.rootSumSquare;
  const least = known ? sum.tir : leastPossible(contributors);
  const most = known ? sum.tir : sum.worst;
  const force = served.balance && imbalance(served.balance, counts / 2);
  return {
    worst: sum.worst,
    rootSumSquare: sum.rootSumSquare,
    ...(known ? { byAngle: sum.tir } : {}),
    limits: limitsOf(served).map((limit) => ({
      ...limit,
      verdict:
        limit.what === 'sprocket face'
          ? measuredVerdict(served.face, limit.tir)
          : most <= limit.tir
            ? 'holds'
            : least > limit.tir
              ? 'fails either way'
              : 'depends on the angles',
    })),
    leans: (served.leans ?? []).map(({ what, angle, most, source }) => ({
      what,
      ...(angle === undefined ? {} : { angle }),
      most,
      source,
      verdict: measuredVerdict(angle, most),
    })),
    effects: {
      ...(served.sprocket ? { slackSwing: counts } : {}),
      ...(force === undefined ? {} : { imbalanceForce: force }),
      ...(served.stiffness === undefined ? {} : { drag: (served.stiffness * counts) / 2 }),
    },
    worthFixing: contributors
      .map(({ name, tir }) => ({ name, left: Math.sqrt(Math.max(0, sum.rootSumSquare ** 2 - tir ** 2)) }))
      .sort((a, b) => a.left - b.left),
  };
}

const measuredVerdict = (measured: number | undefined, limit: number): LeanLimit['verdict'] =>
  measured === undefined ? 'not measured' : measured <= limit ? 'holds' : 'fails either way';

/** TIR when the others all stand against the greatest. */
function leastPossible(contributors: readonly Contributor[]): number {
  const greatest = Math.max(...contributors.map(({ tir }) => tir));
  return Math.max(0, 2 * greatest - contributors.reduce((sum, { tir }) => sum + tir, 0));
}

const rotor = ({ mass, speed, grade }: NonNullable<Served['balance']>, offset: number) =>
  balance.run({ grade, speed, mass, radius: 1, toA: 1, toB: 1, offset });

const imbalance = (of: NonNullable<Served['balance']>, offset: number): number => rotor(of, offset).force;

function limitsOf({ sprocket, gear, balance: turning }: Served): Omit<Limit, 'verdict'>[] {
  return [
    ...(sprocket
      ? [
          {
            what: 'sprocket' as const,
            tir: sprocketLimits.run(sprocket).radial,
            source: 'ISO 606, clause 5.7 (from memory)',
          },
          {
            what: 'sprocket face' as const,
            tir: sprocketLimits.run(sprocket).axial,
            source: 'ISO 606, clause 5.8 (from memory)',
          },
        ]
      : []),
    ...(gear
      ? [
          {
            what: 'gear seat' as const,
            tir: gearLimits.run(gear).mounting,
            source: `half the run-out of its class, ${gear.bevel === 1 ? 'ISO 17485' : 'ISO 1328-1'} (from memory)`,
          },
        ]
      : []),
    ...(turning
      ? [{ what: 'balance' as const, tir: 2 * rotor(turning, 0).offsetAllowed, source: 'ISO 21940-11 (from memory)' }]
      : []),
  ];
}
