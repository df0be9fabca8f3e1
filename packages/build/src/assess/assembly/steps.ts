import type { Model, Shaft, Stage } from '../../model/model.ts';
import type { Missing } from '../types.ts';
import { type End, endName, otherEnd, type Part, partsOf } from './parts.ts';
import {
  comesFrom,
  type Judged,
  type Plan,
  type Sequence,
  type Show,
  sequenceOf,
  slides,
  throughPlate,
} from './plan.ts';
import type { Service } from './types.ts';
import { allOf, type Verdict } from './verdict.ts';

export const list = (words: readonly string[]): string =>
  words.length <= 1 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** A stage that closes with a loop: what has to be opened or slipped off. */
export type LoopStage = Extract<Stage, { readonly kind: 'chain' | 'belt' }>;

function closing(stage: Stage): string {
  if (stage.kind === 'belt' || (stage.kind === 'chain' && stage.joint === 'endless'))
    return `Lay ${stage.name} over both its wheels and tighten it.`;
  if (stage.kind === 'chain')
    return stage.joint === 'riveted link'
      ? `Lay ${stage.name} on and rivet its closing link.`
      : `Lay ${stage.name} on and close it.`;
  if (stage.kind === 'coupling' || stage.kind === 'unit') return `Join ${stage.name}.`;
  return `Bring ${stage.name} into mesh and set it.`;
}

/** What is done to a stage before one of its parts comes off; null where nothing is. */
function opening(stage: Stage): string | null {
  if (stage.kind === 'belt') return `Slacken ${stage.name} and lift it off.`;
  if (stage.kind === 'coupling' || stage.kind === 'unit') return `Part ${stage.name}.`;
  if (stage.kind !== 'chain') return null;
  if (stage.joint === 'endless') return `Slip ${stage.name} off; it has no link to open.`;
  if (stage.joint === 'riveted link')
    return `Press the riveted link of ${stage.name} out with a chain tool and take the chain off; it closes with a new one.`;
  return stage.joint === null
    ? `Open ${stage.name} and take it off.`
    : `Open the joining link of ${stage.name} and take the chain off.`;
}

const stagesOn = (model: Model, shaftId: string, seatIds: readonly string[] | null): Stage[] =>
  model.stages.filter((stage) =>
    [stage.from, stage.to].some(({ shaft, seat }) => shaft === shaftId && (seatIds === null || seatIds.includes(seat))),
  );

const openings = (stages: readonly Stage[]): string[] => stages.flatMap((stage) => opening(stage) ?? []);

const names = (parts: readonly Part[], indices: readonly number[]): string[] =>
  indices.flatMap((k) => parts[k]?.seat.name ?? []);

function sliding(shaft: Shaft, parts: readonly Part[], plan: Plan, indices: readonly number[], verb: string): string[] {
  return indices.flatMap((k) => {
    const part = parts[k];
    return part
      ? [
          `${verb} ${part.seat.name} ${verb === 'Slide' ? 'on from' : 'off to'} the ${endName(shaft, comesFrom(plan, k))}.`,
        ]
      : [];
  });
}

/** Steps that put a shaft together by a plan that serves, with the stage that drives it last. */
export function assemblySteps(model: Model, index: number, parts: readonly Part[], plan: Plan): string[] {
  const shaft = model.shafts[index];
  if (!shaft) return [];
  const { bench, waiting, after } = sequenceOf(parts, plan);
  const driver = model.stages[index - 1];
  const last = driver ? [closing(driver)] : [];
  if (plan.entry === null) return [...sliding(shaft, parts, plan, bench, 'Slide'), ...last];
  const held = waiting.map((k) => {
    const part = parts[k];
    if (!part) return '';
    return part.opening ? `Set ${part.seat.name} in its plate.` : `Hold ${part.seat.name} in its place at the plates.`;
  });
  const through = names(parts, waiting);
  const over = through.length > 0 ? `, through ${list(through)}` : '';
  return [
    ...sliding(shaft, parts, plan, bench, 'Slide'),
    ...held,
    `Bring ${shaft.name} in from the ${endName(shaft, plan.entry)}, its ${endName(shaft, otherEnd(plan.entry))} end first${over}.`,
    ...sliding(shaft, parts, plan, after, 'Slide'),
    ...last,
  ];
}

/** Parts between one of them and an end, outermost first. */
const beyond = (parts: readonly Part[], index: number, end: End): number[] => {
  const indices = parts.map((_, k) => k);
  return end === 'low' ? indices.slice(0, index) : indices.slice(index + 1).reverse();
};

/** Whether a part comes off at one end with the shaft staying where it is. */
function comesOff(parts: readonly Part[], index: number, end: End, show: Show): Verdict {
  const off = [...beyond(parts, index, end), index];
  return allOf(
    off.flatMap((k): Verdict[] => {
      const part = parts[k];
      if (!part) return [];
      const plates = beyond(parts, k, end).flatMap((p) => parts[p] ?? []);
      return [slides(parts, k, end, show), ...plates.map((plate) => throughPlate(part, plate, show))];
    }),
  );
}

function undone(sequence: Sequence): Sequence {
  return {
    bench: sequence.bench.toReversed(),
    waiting: sequence.waiting.toReversed(),
    after: sequence.after.toReversed(),
  };
}

/** How one part of a shaft is changed, with the least that has to come off first. */
export function partService(
  model: Model,
  index: number,
  at: number,
  whole: Judged,
  show: Show,
): Pick<Service, 'steps' | 'missing'> {
  const shaft = model.shafts[index];
  const parts = partsOf(model, index);
  const part = parts[at];
  if (!shaft || !part) return { steps: [], missing: [] };
  const ways = (['low', 'high'] as const)
    .map((end) => ({ end, first: beyond(parts, at, end), verdict: comesOff(parts, at, end, show) }))
    .sort((a, b) => a.first.length - b.first.length);
  const way = ways.find(({ verdict }) => verdict.is === 'yes');
  if (way) {
    const off = [...way.first, at].flatMap((k) => parts[k]?.seat ?? []);
    const stages = stagesOn(
      model,
      shaft.id,
      off.map(({ id }) => id),
    );
    return {
      steps: [
        ...openings(stages),
        ...off.map(({ name, body }) => `Take ${name} off to the ${endName(shaft, way.end)}${inBody(body)}.`),
      ],
      missing: [],
    };
  }
  if (whole.verdict.is === 'yes' && whole.plan.entry !== null) {
    const { bench, after } = undone(sequenceOf(parts, whole.plan));
    const order = [...openings(stagesOn(model, shaft.id, null)), ...sliding(shaft, parts, whole.plan, after, 'Take')];
    const out = `Draw ${shaft.name} out to the ${endName(shaft, whole.plan.entry)}.`;
    const ridden = bench.indexOf(at);
    const rest = ridden < 0 ? [] : sliding(shaft, parts, whole.plan, bench.slice(0, ridden + 1), 'Take');
    return { steps: [...order, out, ...(ridden < 0 ? [`Lift ${part.seat.name} out.`] : rest)], missing: [] };
  }
  const open = [...ways.map(({ verdict }) => verdict), whole.verdict].filter((v) => v.is === 'open');
  const missing = new Map<string, Missing>(open.flatMap((v) => v.missing).map((m) => [m.address, m]));
  return { steps: [], missing: [...missing.values()] };
}

const inBody = (body: string | null): string =>
  body === null || body === 'subframe' ? '' : `, with its seat on the ${body}`;

/** Whether an endless loop slips off a seat: nothing carries the shaft on one side of it. */
export function freeEnd(parts: readonly Part[], seatId: string): boolean {
  const at = parts.findIndex(({ seat }) => seat.id === seatId);
  const carried = parts.flatMap(({ seat }, k) => (seat.kind === 'bearing' ? [k] : []));
  return carried.every((k) => k < at) || carried.every((k) => k > at);
}

/** Seats of a loop that are shut in between bearings, with their shaft's index. */
export function shutIn(model: Model, stageIndex: number): { readonly shaft: number; readonly part: number }[] {
  const stage = model.stages[stageIndex];
  if (!stage) return [];
  return (
    [
      [stageIndex, stage.from],
      [stageIndex + 1, stage.to],
    ] as const
  ).flatMap(([shaft, ref]) => {
    const parts = partsOf(model, shaft);
    if (freeEnd(parts, ref.seat)) return [];
    return [{ shaft, part: parts.findIndex(({ seat }) => seat.id === ref.seat) }];
  });
}

/** How a chain or belt is changed. */
export function loopService(
  model: Model,
  stageIndex: number,
  stage: LoopStage,
  wholes: readonly Judged[],
  show: Show,
): Pick<Service, 'steps' | 'missing'> {
  if (stage.kind === 'chain' && stage.joint === null) return { steps: [], missing: [missingJoint(stage)] };
  if (stage.kind === 'chain' && stage.joint !== 'endless')
    return {
      steps: [...openings([stage]), `Draw the new chain round with the old one, and close it.`],
      missing: [],
    };
  const shut = shutIn(model, stageIndex);
  const inner = shut.flatMap(({ shaft, part }) => {
    const whole = wholes[shaft];
    return whole ? [partService(model, shaft, part, whole, show)] : [];
  });
  const missing = inner.flatMap((service) => service.missing);
  if (inner.some(({ steps }) => steps.length === 0)) return { steps: [], missing };
  const before = inner.flatMap(({ steps }) => steps);
  const own = openings([stage])[0] ?? '';
  return { steps: [...new Set(before.length > 0 ? before : [own]), `Put the new one on.`], missing: [] };
}

export const missingJoint = (stage: LoopStage): Missing => ({
  address: `${stage.address}/joint`,
  says: `how ${stage.name} is closed`,
});
