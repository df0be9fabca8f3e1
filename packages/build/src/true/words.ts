import type { Advice, BeadAction, Expected, StopReason, Warning } from '@oddwheel/mechanics/runout/adviser-types';
import type { Diagnosis, Fault, RunoutAt } from '@oddwheel/mechanics/runout/axis';
import type { Budget } from '@oddwheel/mechanics/runout/budget';
import { formatQuantity } from '@oddwheel/quantity/format';
import type { BeadEffect } from './bead-effect.ts';
import { clockText } from './clock.ts';
import type { Swing } from './swing.ts';
import type { TruePart } from './types.ts';

/** The next step in words of the shop. */
export interface NextWords {
  /** One sentence: what to do. */
  readonly say: string;
  readonly why: string;
  readonly expect: string;
  readonly otherwise?: string;
  /** What to be careful of with this step. */
  readonly cautions: readonly string[];
  readonly stopWhen: string;
}

const STOPS: Readonly<Record<StopReason, readonly [say: string, why: string]>> = {
  good: ['Stop here. The part is good.', 'The run-out is within the goal, as surely as the dial can tell.'],
  hopeless: [
    'Stop welding this part. Choose another way: press it, turn it true, or make it anew.',
    'What it has answered so far does not reach the goal in the rounds that are left.',
  ],
  spent: ['Stop welding this part. Choose another way.', 'All rounds are spent, and more beads only add notches.'],
  'no-gain': ['Stop. No bead that can be laid makes it better.', 'The shortest bead would move it past the goal.'],
};

const WARNED: Readonly<Record<Warning, string>> = {
  uncertain: 'How far this part pulls is not known yet.',
  'piled-up': 'Beads pile up here and pull less. Each one more is a notch more.',
  surprise: 'The last bead did not do what was expected. Check the marks, the set-up and the temperature first.',
  warm: 'The part is warm: the dial shows run-out that is not there.',
  sense: 'The part moves the other way than its place says. Check the marks and which way round they count.',
};

const BEFORE_ARC: readonly string[] = [
  'Work lead on the part itself, next to the bead: never through bearings or the lathe.',
  'No bead on a bearing, seal or spline seat.',
  'Eyes, skin and lungs: mask, gloves, fresh air; coated or plated steel is cleaned to bare metal first.',
  'The numbers are design aids: local codes and licensed practice decide.',
];

/**
 * Why a part is not to be corrected here; undefined for parts of the drive.
 */
export function refusedUse({ use }: TruePart): string | undefined {
  if (use === undefined || use === 'drive') return undefined;
  return `No advice for ${use} parts: a licensed shop decides.`;
}

/**
 * The adviser's step in words.
 * @param unit length unit that TIR is told in: "thou" or "mm"
 * @param effect what one more bead does to the strength of the shaft
 * @param swing what the dial shows where the section is out of round; the advice is then about its axis alone
 */
export function nextWords(
  advice: Advice,
  goal: number,
  unit: string,
  effect: () => BeadEffect,
  swing?: Swing,
): NextWords {
  const tir = (value: number) => lengthWords(value, unit);
  const stopWhen = `Stop when the dial swings by ${tir(goal)} or less, when two rounds in a row make it worse, or when this says so.`;
  const expect = expectWords(advice.expected, tir, swing);
  const warned = advice.warnings.map((warning) => WARNED[warning]);
  if (advice.do === 'stop') {
    const [say, why] = STOPS[advice.because];
    return { say, why, expect, cautions: warned, stopWhen };
  }
  if (advice.do === 'wait')
    return {
      say: 'Let it cool to the shop’s temperature, then measure again.',
      why: WARNED.warm,
      expect,
      cautions: warned,
      stopWhen,
    };
  return {
    say: sayBead(advice),
    why: whyBead(advice),
    expect,
    ...(advice.otherwise
      ? { otherwise: `Or ${beadText(advice.otherwise.bead)}: ${expectWords(advice.otherwise.expected, tir, swing)}` }
      : {}),
    cautions: [...warned, effectWords(effect()), ...BEFORE_ARC],
    stopWhen,
  };
}

/** What one more bead does to the strength of the shaft, in words. */
function effectWords(effect: BeadEffect): string {
  if (!effect.judged)
    return `A bead leaves a notch at its toe, which lowers the strength of the part. How far is not judged: ${effect.why}.`;
  const [before, after, wanted] = [effect.before, effect.after, effect.wanted].map((one) => one.toFixed(2));
  const wants = `at least ${wanted} is wanted. Every bead that is booked counts in the findings`;
  return before === after
    ? `A bead leaves a notch at its toe. The reserve of the shaft against fatigue stays at ${before}, since another place is weaker or a weld is here already; ${wants}.`
    : `A bead leaves a notch at its toe: the reserve of the shaft against fatigue goes from ${before} to ${after}${effect.after < 1 ? ', so it may break in time' : ''}; ${wants}.`;
}

/** What to do where no bead can help, since the section itself is out of round. */
export function outOfRound(form: number, goal: number, unit: string): { readonly say: string; readonly why: string } {
  return {
    say: 'Turn this section true, or fit another part: beads cannot reach the goal here.',
    why: `The section is out of round: that alone swings the dial by ${lengthWords(form, unit)}, and ${lengthWords(goal, unit)} is wanted. Beads, shims and clocking move the axis only.`,
  };
}

type BeadAdvice = Extract<Advice, { do: 'bead' }>;

function sayBead({ bead, trial }: BeadAdvice): string {
  const text = `Weld a bead ${beadText(bead)}.`;
  return trial ? `${text} It is a trial: measure when it has cooled.` : text;
}

const beadText = ({ clock, length: long }: BeadAction): string =>
  `${lengthWords(long, 'mm')} long at ${clockText(clock)}`;

function whyBead({ trial, pair, bead, owedAfter }: BeadAdvice): string {
  if (bead.segment !== undefined)
    return owedAfter > 1e-6
      ? `It is the next piece of the weld that keeps the part straight. Still owed after it: ${lengthWords(owedAfter, 'mm')}.`
      : 'It is the last piece of the weld that the joint owes.';
  if (pair)
    return 'The shortest bead alone would go too far. This is the first of two that nearly cancel: it looks worse in between.';
  if (trial) return 'Nobody knows yet how far this part pulls; this bead tells.';
  return 'Of all beads that can be laid, this one leaves the fewest rounds to go.';
}

function expectWords({ tir, low, high, within }: Expected, text: (value: number) => string, swing?: Swing): string {
  const what = swing ? 'TIR from the axis alone' : 'TIR';
  return `${what} ${text(tir)}, eight times in ten between ${text(low)} and ${text(high)}; within the goal ${Math.round(within * 100)} times in a hundred.`;
}

/** A tenth of a micrometre is less than any dial tells: below it stands rounding, not run-out. */
const DIAL_TELLS = 1e-7;

/** A length as a shop reads it, in this unit. */
export function lengthWords(value: number, unit: string): string {
  return formatQuantity(Math.abs(value) < DIAL_TELLS ? 0 : value, 'length', unit, { digits: 3 });
}

/** TIR at a station, with its high spot; the offset is half of it. */
export function runoutWords({ tir, high, spread, station }: RunoutAt, unit: string): string {
  const text = (value: number) => lengthWords(value, unit);
  return `At ${lengthWords(station, 'mm')}: TIR ${text(tir)} ± ${text(4 * spread)}, high spot at ${clockText(high)} (offset ${text(tir / 2)}).`;
}

/** What shape of fault it is, in words. */
export function diagnosisWords({ best, also, missing }: Diagnosis): string {
  const first = faultWords(best);
  if (!also) return first;
  const ask = missing === undefined ? '' : ` To tell them apart, measure ${missing}.`;
  return `${first} It may as well be this: ${faultWords(also)}${ask}`;
}

function faultWords({ kind, at, from, to }: Fault): string {
  if (kind === 'straight') return 'The axis is straight; what is left is within the readings.';
  const place = at === undefined ? '' : ` at ${lengthWords(at, 'mm')}`;
  const ends =
    from === undefined || to === undefined || from === to
      ? ''
      : ` (between ${lengthWords(from, 'mm')} and ${lengthWords(to, 'mm')})`;
  const names = {
    bend: 'The part is bent',
    tilt: 'What stands beyond is tilted, from a kink',
    offset: 'What stands beyond is offset, from a step',
    'offset and tilt': 'What stands beyond is offset and tilted',
  } as const;
  return `${names[kind]}${place}${ends}.`;
}

const LIMIT_NAMES = {
  sprocket: 'sprocket',
  'sprocket face': 'face of the sprocket',
  'gear seat': 'seat of the gear',
  balance: 'balance at top speed',
} as const;

/** The budget in words: what all contributors make together, each limit, what it does, and what to fix first. */
export function budgetWords(
  { worst, rootSumSquare, byAngle, limits, leans, effects, worthFixing }: Budget,
  unit: string,
): string[] {
  const text = (value: number) => lengthWords(value, unit);
  const force = (value: number) => formatQuantity(value, 'force', 'N', { digits: 2 });
  const lean = (angle: number) => formatQuantity(angle, 'angle', 'deg', { digits: 2 });
  const [first] = worthFixing;
  return [
    byAngle === undefined
      ? `All together: TIR ${text(rootSumSquare)} as it usually falls, ${text(worst)} with all high spots in line.`
      : `All together, by their angles: TIR ${text(byAngle)}.`,
    ...limits.map(
      ({ what, tir, verdict, source }) =>
        `Limit of the ${LIMIT_NAMES[what]}: TIR ${text(tir)}; ${verdict}. Source: ${source}.`,
    ),
    ...leans.map(
      ({ what, angle, most, verdict, source }) =>
        `Limit of the ${what}: ${lean(most)} against the line through the seats; ${angle === undefined ? 'a third section is wanted for it' : `${lean(angle)}, ${verdict}`}. Source: ${source}.`,
    ),
    ...(effects.slackSwing === undefined
      ? []
      : [`Chain slack changes by ${text(effects.slackSwing)} in a turn: set it at the tightest place.`]),
    ...(effects.imbalanceForce === undefined
      ? []
      : [`Force that turns with it at top speed: ${force(effects.imbalanceForce)}.`]),
    effects.drag === undefined
      ? 'Drag on the mounts: unknown; their stiffness is missing.'
      : `Drag on the mounts: ${force(effects.drag)} either way.`,
    ...(first && worthFixing.length > 1
      ? [`Worth fixing first: ${first.name}; TIR ${text(first.left)} is left without it.`]
      : []),
  ];
}
