import type { Body, Model, Seat } from '../../model/model.ts';
import { selfSetting } from '../adjusters/settings.ts';
import { type Line, lineOf, linesOf, nameOf, supportsOf } from '../layout/lines.ts';
import { playBetween, swingMissing } from '../layout/movement.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';

const plainly = (holds: boolean, says: () => string): Outcome => ({
  kind: 'plain',
  holds,
  says,
  uses: [],
  used: () => [],
});

const and = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const carriesWheel = ({ shafts }: Line): boolean =>
  shafts.some(({ seats }) => seats.some(({ kind }) => kind === 'wheel'));

const lineSubjects =
  (wanted: (line: Line) => boolean): Check['subjects'] =>
  (model: Model): readonly Subject[] =>
    linesOf(model)
      .filter(wanted)
      .map((line) => ({ address: line.shafts[0]?.address ?? '', element: nameOf(line), stage: null }));

/** One line of shafts is carried by one body, on two bearings. */
function supported(line: Line, show: Scene['show']): Outcome {
  const [first, second] = line.bodies;
  if (first !== undefined && second !== undefined)
    return plainly(false, () => {
      const on = line.bearings.map(({ name, body }) => `${name} on the ${body}`);
      const carried = line.first === 0 ? [`${line.shafts[0]?.name} in the engine`, ...on] : on;
      const way = playBetween(first, second);
      return `${and(carried)}: ${and(line.bodies.map((body) => `the ${body}`))} move against each other, and the shaft binds or breaks. Carry the whole line by one body, or part it with a coupling that takes ${show('length', way.offset)} offset, ${show('angle', way.angle)} and ${show('length', way.axial)} along the shaft${line.bodies.includes('swinging arm') ? ', and the arm’s swing' : ''}.`;
    });
  const count = supportsOf(line);
  if (count > 2)
    return plainly(
      false,
      () =>
        `${count} bearings hold one shaft line${line.first === 0 ? ', the gearbox’s own counted as one' : ''}: welded up they never stand in one line and bend the shaft in every turn. Leave two, or part the line with an elastic coupling.`,
    );
  if (line.first > 0 && count < 2) {
    const shaft = line.shafts[0];
    const says =
      count === 0
        ? `the bearings of ${shaft?.name}, each with its body`
        : `the second bearing of ${shaft?.name}, with its body`;
    return { kind: 'unknown', missing: [{ address: `${shaft?.address}/seats`, says }] };
  }
  return plainly(true, () =>
    line.first === 0 ? 'The engine alone carries its output.' : `Two bearings hold it, both on the ${line.bodies[0]}.`,
  );
}

function runOnLine({ model, show }: Scene, { address }: Subject): Outcome | null {
  const line = linesOf(model).find(({ shafts }) => shafts[0]?.address === address);
  return line ? supported(line, show) : null;
}

const supportsCheck = (rest: Pick<Check, 'id' | 'consequence' | 'subjects'>): Check => ({
  ...rest,
  title: 'bearings of one shaft line',
  wanted: {
    reserve: 1,
    from: 'common practice: one body, two bearings; movement between bodies as stated in body-movements',
  },
  atWorst: 'fails',
  perCase: false,
  run: runOnLine,
});

/** Bearings of each shaft line but the wheel's. */
export const supports = supportsCheck({
  id: 'bodies.supports',
  consequence: 'loses drive',
  subjects: lineSubjects((line) => !carriesWheel(line)),
});

/** Bearings of the line that carries the driven wheel. */
export const wheelSupports = supportsCheck({
  id: 'bodies.wheel',
  consequence: 'locks the wheel',
  subjects: lineSubjects(carriesWheel),
});

/** The two bodies that a stage leads from and to, where each end stands on one body alone. */
function between(model: Model, stage: number | null): readonly [Body, Body] | null {
  if (stage === null) return null;
  const lines = linesOf(model);
  const [from, to] = [stage, stage + 1].map((shaft) => lineOf(lines, shaft)?.bodies);
  const [a, b] = [from?.[0], to?.[0]];
  return a !== undefined && b !== undefined && from?.length === 1 && to?.length === 1 ? [a, b] : null;
}

const crossing =
  (...kinds: readonly string[]): Check['subjects'] =>
  (model) =>
    stagesOfKind(...kinds)(model).filter(({ stage }) => {
      const bodies = between(model, stage);
      return bodies !== null && bodies[0] !== bodies[1];
    });

/** Gears in mesh stand on one body. */
export const meshOnBodies: Check = {
  id: 'bodies.mesh',
  title: 'gears in mesh on one body',
  consequence: 'locks the wheel',
  wanted: { reserve: 1, from: 'common practice: a mesh is set to hundredths of a millimetre' },
  atWorst: 'fails',
  perCase: false,
  subjects: crossing('bevel', 'spur'),
  run: ({ model, show }, subject) => {
    const bodies = between(model, subject.stage);
    if (!bodies) return null;
    const { offset } = playBetween(...bodies);
    return plainly(
      false,
      () =>
        `One gear stands on the ${bodies[0]}, the other on the ${bodies[1]}, which move by up to ${show('length', offset)} against each other: the teeth come out of mesh or jam. Carry both by one body.`,
    );
  },
};

/** A chain or belt between bodies changes its slack as they move. */
export const slackOnBodies: Check = {
  id: 'bodies.slack',
  title: 'slack between moving bodies',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: the slack as drawn outlasts the movement stated in body-movements' },
  atWorst: 'thin',
  perCase: false,
  subjects: crossing('chain', 'belt'),
  run: (scene, subject) => {
    const { model, show } = scene;
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    const bodies = between(model, subject.stage);
    if (!bodies || !geometry) return null;
    const { stage } = geometry;
    const play = playBetween(...bodies);
    const moving = `The ${bodies[0]} and the ${bodies[1]} move by up to ${show('length', play.offset)} against each other`;
    if (stage.kind === 'belt')
      return plainly(
        false,
        () => `${moving}, and the tension of the belt with them: carry both pulleys by one body, or put a chain there.`,
      );
    if (stage.kind !== 'chain') return null;
    const missing = swingMissing(model, ...bodies);
    if (missing.length > 0) return { kind: 'unknown', missing };
    if (selfSetting(stage) === true)
      return plainly(
        true,
        () =>
          `${moving}; the tensioner has to follow, and the planes move by as much as ${show('length', play.axial)}.`,
      );
    if (!geometry.chain) return { kind: 'unknown', missing: geometry.trouble };
    if (stage.links === null)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] };
    const { linksNeeded, span, centreDistance } = geometry.chain;
    const room = ((stage.links - linksNeeded) * stage.size.pitch * centreDistance) / (2 * span);
    return plainly(room >= play.offset, () =>
      room < play.offset
        ? `${moving}, and the slack as drawn lets the centres go apart by ${show('length', room)}: leave more slack, give it a tensioner, or carry both by one body.`
        : `${moving}; the slack as drawn lets the centres go apart by ${show('length', room)}.${bodies.includes('swinging arm') ? ' The arm’s swing comes on top and is worked out by itself.' : ''}`,
    );
  },
};

const isBearing = (seat: Seat, body: Body): boolean => seat.kind === 'bearing' && seat.body === body;

/** Whether the engine itself carries the output on both sides of a part. */
function straddled(model: Model, seatId: string): boolean {
  const output = model.shafts[0];
  const part = output?.seats.find(({ id }) => id === seatId);
  if (!output || !part) return false;
  const stations = output.seats.filter((seat) => isBearing(seat, 'engine')).map(({ station }) => station);
  return stations.some((s) => s < part.station) && stations.some((s) => s > part.station);
}

/** An output that drove a joint was not made for a chain's side pull. */
export const sidePull: Check = {
  id: 'output.side-pull',
  title: 'side pull on the engine’s output',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: what carried a joint in its first life was made for torque alone' },
  atWorst: 'fails',
  perCase: false,
  subjects: (model) => [{ address: '/brief/engine/output', element: model.shafts[0]?.name ?? 'Output', stage: null }],
  run: ({ model }) => {
    const first = model.stages[0];
    const { madeFor } = model.engine;
    if (!first) return null;
    if (first.kind === 'coupling' || first.kind === 'unit')
      return madeFor === 'torque only' ? behindCoupling(model) : null;
    if (madeFor === null)
      return {
        kind: 'unknown',
        missing: [
          {
            address: '/brief/engine/output/madeFor',
            says: 'whether the output was made for side pull or for torque only',
          },
        ],
      };
    if (madeFor === 'side pull')
      return plainly(true, () => `The output was made for side pull, and ${first.name} pulls on it.`);
    if (straddled(model, first.from.seat))
      return plainly(
        true,
        () => `The output was made for torque only, but the engine carries it on both sides of ${first.name}.`,
      );
    return plainly(
      false,
      () =>
        `The output was made for torque only, and ${first.name} pulls it sideways. Either give the output an outboard bearing beyond it, held by the engine itself and not by the subframe, and name both bearings; or drive through a coupling, with the first wheel of ${first.name} on a shaft in two bearings of its own.`,
    );
  },
};

/** What pulls sideways first, behind couplings, sits in two bearings of its own. */
function behindCoupling(model: Model): Outcome | null {
  const k = model.stages.findIndex(({ kind }) => kind !== 'coupling' && kind !== 'unit');
  const [stage, shaft] = [model.stages[k], model.shafts[k]];
  if (!stage || !shaft) return null;
  const own = shaft.seats.filter(({ kind }) => kind === 'bearing').length;
  return plainly(own >= 2, () =>
    own >= 2
      ? `The output carries torque only: ${stage.name} pulls on ${shaft.name}, which has bearings of its own.`
      : `The output was made for torque only, and ${stage.name} pulls on ${shaft.name}, which has ${own === 0 ? 'no bearings' : 'one bearing'} of its own: the rest of the pull goes through the coupling into the output. Give it two.`,
  );
}
