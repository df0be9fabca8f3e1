import { chainAlignment } from '@oddwheel/mechanics/chain/alignment';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { chainSlack } from '@oddwheel/mechanics/chain/slack';
import { type BodyMove, bodyMoves, moveOfPoint, pullAt } from '@oddwheel/mechanics/mount/body-moves';
import { cross, norm, plus, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { BODY_MOVEMENTS } from '@oddwheel/tables/body-movements';
import { sourceOf } from '@oddwheel/tables/table';
import type { Body, Model, Seat, Shaft, Stage, Value } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import { type Within, within } from '../../model/within.ts';
import { least } from '../adjusters/measures.ts';
import { seatOf } from '../geometry/place.ts';
import { parallelPlace } from '../geometry/tangent.ts';
import type { Used } from '../geometry/types.ts';
import { linesOf } from '../layout/lines.ts';
import { playBetween } from '../layout/movement.ts';
import type { CaseLoads } from '../loads.ts';
import { type BodyMoves, movesOf } from '../strength/mount-moves.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

type StageEnds = readonly [Body, Body] | null;

const ENDS = new WeakMap<Model, Map<number, StageEnds>>();

/** The bodies at the two ends of a stage, where each end stands on one: it is asked for in every case. */
function endsOf(model: Model, k: number): StageEnds {
  const known = ENDS.get(model) ?? new Map<number, StageEnds>();
  ENDS.set(model, known);
  const found = known.get(k);
  if (found !== undefined) return found;
  const ends = workEnds(model, k);
  known.set(k, ends);
  return ends;
}

function workEnds(model: Model, k: number): StageEnds {
  const lines = linesOf(model);
  const on = [k, k + 1].map((shaft) =>
    lines.find((one) => shaft >= one.first && shaft < one.first + one.shafts.length),
  );
  const [a, b] = on.map((line) => (line?.bodies.length === 1 ? line.bodies[0] : undefined));
  return a !== undefined && b !== undefined && a !== b ? [a, b] : null;
}

const hasMounts = (model: Model, body: Body): boolean => model.mounts.some((one) => one.body === body);

/** Chains that lead from one body to another, as those bodies say. */
const between =
  (asks: (model: Model, ends: readonly [Body, Body]) => boolean): Check['subjects'] =>
  (model) =>
    stagesOfKind('chain')(model).filter(({ stage }) => {
      const ends = stage === null ? null : endsOf(model, stage);
      return ends !== null && asks(model, ends);
    });

/** Whether the build must still say how the engine is held. */
const engineOpen = (model: Model, ends: readonly [Body, Body]): boolean =>
  ends.includes('engine') && !hasMounts(model, 'engine');

const onMounts = (model: Model, ends: readonly [Body, Body]): boolean => ends.some((body) => hasMounts(model, body));

/** That the engine's own mounts are not named is told once, by the check of its movement. */
const onNamedMounts = between((model, ends) => onMounts(model, ends) && !engineOpen(model, ends));

/** A chain whose ends have moved on their mounts. */
interface Moved {
  readonly stage: ChainStage;
  /** Whether its line of centres is steep. */
  readonly steep: boolean;
  readonly bodies: readonly [Body, Body];
  readonly seats: readonly [Seat, Seat];
  readonly shafts: readonly [Shaft, Shaft];
  readonly at: readonly [Vec3, Vec3];
  readonly directions: readonly [Vec3, Vec3];
  readonly moves: readonly [BodyMove | null, BodyMove | null];
  /** The working of how far a point at an end moves; none where that end stands still. */
  readonly worked: (end: 0 | 1, point: Vec3, name: string) => readonly Used[];
  readonly uses: readonly Value[];
}

function workedMove(
  { at }: Scene,
  on: BodyMoves | null,
  load: CaseLoads,
  seat: Seat,
  point: Vec3,
  name: string,
): readonly Used[] {
  const pulls = on?.ok ? on.pulls(load) : null;
  if (!on?.ok || !pulls) return [];
  const { mounts } = on;
  const input = {
    x: mounts.map((one) => one.at[0]),
    y: mounts.map((one) => one.at[1]),
    z: mounts.map((one) => one.at[2]),
    stiffness: mounts.map(({ stiffness }) => (stiffness ? at(stiffness) : Number.NaN)),
    ...pullAt(pulls, seat.at),
    point,
  };
  const places = '/brief/mounts';
  const all = 'stages on this body together, in this case, taken to that seat';
  return [
    {
      method: bodyMoves,
      input,
      output: bodyMoves.run(input),
      origins: {
        x: places,
        y: places,
        z: places,
        stiffness: places,
        at: seat.address,
        force: `pulls of the ${all}`,
        moment: `torques of the ${all}`,
        point: name,
      },
    },
  ];
}

type Found = { readonly moved: Moved } | Extract<Outcome, { kind: 'unknown' }> | null;

/** Both ends of a chain under a case: as drawn where nothing says that the body is on rubber. */
function movedEnds(scene: Scene, subject: Subject, load: CaseLoads | null): Found {
  const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
  if (subject.stage === null || geometry?.stage.kind !== 'chain' || !load) return null;
  const bodies = endsOf(scene.model, subject.stage);
  if (!bodies) return null;
  const on = bodies.map((body): BodyMoves | null => movesOf(scene, body));
  const missing = on.flatMap((one) => (one && !one.ok ? one.missing : []));
  if (missing.length > 0) return { kind: 'unknown', missing };
  const moves: (BodyMove | null)[] = [];
  for (const one of on) {
    const move = one?.ok ? one.move(load) : null;
    if (one && !move)
      return {
        kind: 'unknown',
        missing: [{ address: subject.address, says: 'the forces of every stage on its body' }],
      };
    moves.push(move);
  }
  const { stage, from, to } = geometry;
  const [a = null, b = null] = moves;
  const seats = [seatOf(from, stage.from), seatOf(to, stage.to)] as const;
  const place = (seat: Seat, move: BodyMove | null): Vec3 =>
    move ? plus(seat.at, moveOfPoint(move, seat.at)) : seat.at;
  const leaning = (shaft: Shaft, move: BodyMove | null): Vec3 =>
    move ? unit(plus(shaft.direction, cross(move.turn, shaft.direction))) : shaft.direction;
  return {
    moved: {
      stage,
      steep: (geometry.chain?.slope ?? 0) > CHAIN_LIMITS.mostSlope.value,
      bodies,
      seats,
      shafts: [from, to],
      at: [place(seats[0], a), place(seats[1], b)],
      directions: [leaning(from, a), leaning(to, b)],
      moves: [a, b],
      worked: (end, point, name) => workedMove(scene, on[end] ?? null, load, seats[end], point, name),
      uses: on.flatMap((one) => (one?.ok ? one.mounts.flatMap(({ stiffness }) => stiffness ?? []) : [])),
    },
  };
}

const onMoved =
  (run: (moved: Moved, scene: Scene) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    const found = movedEnds(scene, subject, load);
    return found && 'moved' in found ? run(found.moved, scene) : found;
  };

interface Named {
  readonly name: string;
  readonly at: Vec3;
}

const POINTS: Within<Map<Body, readonly Named[]>> = new WeakMap();

/** Points of a body that the build knows: the part on its shaft, and what is drawn of the body itself. */
function pointsOf({ space }: Model, body: Body, seat: Seat): readonly Named[] {
  // Which body carries a seat is said elsewhere, and may change while the seat stays.
  const byBody = within(POINTS, [space, seat], () => new Map());
  const found = byBody.get(body) ?? drawnOf(space, body, seat);
  byBody.set(body, found);
  return found;
}

/** The part on its shaft, corners of the solid boxes of the body, ends of its tubes. */
function drawnOf(space: Model['space'], body: Body, seat: Seat): readonly Named[] {
  const boxes = space.keepOuts.filter((one) => one.kind === 'solid' && one.body === body);
  return [
    { name: seat.name, at: seat.at },
    ...boxes.flatMap(({ name, least, most }) =>
      [0, 1, 2, 3, 4, 5, 6, 7].map((n) => ({
        name: `a corner of ${name}`,
        at: [n & 1 ? most[0] : least[0], n & 2 ? most[1] : least[1], n & 4 ? most[2] : least[2]] as Vec3,
      })),
    ),
    ...space.tubes
      .filter((one) => one.body === body)
      .flatMap(({ name, from, to }) => [from, to].map((at) => ({ name: `an end of ${name}`, at }))),
  ];
}

interface Furthest extends Named {
  readonly end: 0 | 1;
  readonly body: Body;
  readonly by: number;
}

/** Of some points of a body the first that moves the most. */
function furthest(points: readonly Named[], move: BodyMove, end: 0 | 1, body: Body): Furthest {
  let [most, by]: [Named, number] = [{ name: '', at: move.about }, -1];
  for (const point of points) {
    const one = norm(moveOfPoint(move, point.at));
    if (one > by) [most, by] = [point, one];
  }
  return { name: most.name, at: most.at, end, body, by };
}

const endMove = (move: BodyMove | null, seat: Seat): number => (move ? norm(moveOfPoint(move, seat.at)) : 0);

/** Under pull a body on rubber stays within the movement that clearances leave for it. */
export const mountMoves: Check = {
  id: 'mount.moves',
  title: 'movement on its mounts under pull',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: `${sourceOf(BODY_MOVEMENTS, 'engine to subframe')}: clearances and slack leave no more` },
  atWorst: 'thin',
  perCase: true,
  rare: true,
  subjects: between((model, ends) => onMounts(model, ends) || engineOpen(model, ends)),
  run: (scene, subject, load) => {
    const { model, show } = scene;
    const ends = subject.stage === null ? null : endsOf(model, subject.stage);
    if (ends && engineOpen(model, ends)) {
      const says = 'how the engine is held: its mounts, or that it is held solid';
      return { kind: 'unknown', missing: [{ address: '/brief/mounts', says }] };
    }
    return onMoved(({ bodies, seats, moves, worked, uses }) => {
      const moving = ([0, 1] as const).flatMap((n) => {
        const move = moves[n];
        if (!move) return [];
        return [furthest(pointsOf(model, bodies[n], seats[n]), move, n, bodies[n])];
      });
      const most = moving.reduce<Furthest | null>((a, b) => (a && a.by >= b.by ? a : b), null);
      // A case that does not pull on the body says nothing of its mounts.
      if (!most || most.by === 0) return null;
      const { offset, axial, row } = playBetween(...bodies);
      const room = Math.hypot(offset, axial);
      const chainEnd = Math.max(...([0, 1] as const).map((n) => endMove(moves[n], seats[n])));
      return measured(
        { name: 'moves', value: most.by, kind: 'length', use: 'length' },
        { name: 'left for it', value: room, kind: 'length', use: 'length' },
        () =>
          `On its mounts the ${most.body} moves ${show('length', most.by)} at ${most.name}, and ${show('length', chainEnd)} at the chain; the clearances leave ${show('length', room)} for it${most.by > room ? `, and up to ${show('length', most.by - room)} more than that is lost of each` : ''}. A body without mounts in the build counts as bolted solid.`,
        uses,
        () => worked(most.end, most.at, most.name),
        { capacity: row, demand: 'above' },
      );
    })(scene, subject, load);
  },
};

/** With the chain pulling and the bodies moved, both sprockets still run in one plane. */
export const mountLine: Check = {
  id: 'mount.line',
  title: 'chain line on the mounts under pull',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.faceOffset.source },
  atWorst: 'thin',
  perCase: true,
  subjects: onNamedMounts,
  run: onMoved(({ at, directions, seats, shafts, worked, uses }, { show }) => {
    const input = {
      seatDriver: at[0],
      directionDriver: directions[0],
      seatDriven: at[1],
      directionDriven: directions[1],
    };
    const output = chainAlignment.run(input);
    const leans = output.angleUsed > output.offsetUsed;
    const [kind, demand, capacity] = leans
      ? (['angle', output.angle, output.angleLimit] as const)
      : (['length', Math.abs(output.offset), output.offsetLimit] as const);
    const origin = (n: 0 | 1) => `place of ${seats[n].name}, moved on the mounts`;
    const direction = (n: 0 | 1) => `direction of ${shafts[n].name}, turned on the mounts`;
    return measured(
      { name: leans ? 'shafts lean' : 'planes apart', value: demand, kind, use: kind },
      { name: 'limit', value: capacity, kind, use: kind },
      () =>
        `Under pull the planes of the sprockets stand ${show('length', Math.abs(output.offset))} apart and the shafts ${show('angle', output.angle)} to each other; ${show('length', output.offsetLimit)} and ${show('angle', output.angleLimit)} are the limits.`,
      uses,
      () => [
        ...([0, 1] as const).flatMap((n) => worked(n, seats[n].at, seats[n].address)),
        {
          method: chainAlignment,
          input,
          output,
          origins: {
            seatDriver: origin(0),
            directionDriver: direction(0),
            seatDriven: origin(1),
            directionDriven: direction(1),
          },
        },
      ],
      { capacity: 'above', demand: 'above' },
    );
  }),
};

/** The centres that the mounts give way to still leave the chain its slack, and no more than it may have. */
export const mountSlack: Check = {
  id: 'mount.slack',
  title: 'slack on the mounts under pull',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.slackUsual.source },
  atWorst: 'thin',
  perCase: true,
  subjects: onNamedMounts,
  run: onMoved(({ stage, steep, at, seats, shafts, worked, uses }, scene) => {
    // A tensioner follows, and an idler changes the length that is asked for.
    if (stage.tensioner === true || stage.idler) return null;
    if (stage.links === null)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] };
    const along = shafts[0].direction;
    const drawn = parallelPlace(seats[0].at, seats[1].at, along).centreDistance;
    const { centreDistance } = parallelPlace(at[0], at[1], along);
    const { size, teeth } = stage;
    const roundIn = { pitch: size.pitch, teethDriver: teeth.driver, teethDriven: teeth.driven, centreDistance };
    const round = chainLength.run(roundIn);
    const limit = steep ? CHAIN_LIMITS.slackSpecial : CHAIN_LIMITS.slackUsual;
    // A slack that is set is set at rest to half of what it may be; else it is what the chain is drawn with.
    const isSet = scene.model.adjusters.some(({ sets, of }) => sets === 'slack' && of === stage.id);
    const rest = chainLength.run({ ...roundIn, centreDistance: drawn });
    // The links themselves make the centres swing by as much as the chain runs.
    if (Math.abs(round.links - rest.links) <= least('count')) return null;
    const long = isSet ? Math.hypot(rest.span, (limit.value / 2) * rest.span) - rest.span : null;
    const linksNeeded = long === null ? round.links : stage.links - long / size.pitch + (round.links - rest.links);
    const input = { pitch: size.pitch, linksFitted: stage.links, linksNeeded, span: round.span };
    const output = chainSlack.run(input);
    const { show } = scene;
    const before = () => ([0, 1] as const).flatMap((n) => worked(n, seats[n].at, seats[n].address));
    const shift = centreDistance - drawn;
    const from = isSet
      ? `With ${show('length', (limit.value / 2) * rest.span)} of movement by hand set at rest, the`
      : 'As drawn, the';
    const moved = () =>
      `${from} mounts bring the centres ${show('length', Math.abs(shift))} ${shift > 0 ? 'further apart' : 'nearer'} under pull`;
    if (output.excess <= 0)
      return {
        kind: 'plain',
        holds: false,
        says: () => `${moved()}, and the chain is ${show('length', -output.excess)} too short to have slack.`,
        uses,
        used: before,
      };
    return measured(
      { name: 'movement over span', value: output.movementOverSpan, kind: 'number', use: 'percent' },
      { name: 'limit', value: limit.value, kind: 'number', use: 'percent' },
      () =>
        `${moved()}: ${show('length', output.handMovement)} of slack in all at mid-span, ${show('percent', output.movementOverSpan)} of the span; ${show('percent', limit.value)} is the limit.`,
      uses,
      () => [
        ...before(),
        {
          method: chainLength,
          input: roundIn,
          output: round,
          origins: {
            pitch: `chain-sizes/${size.key}`,
            teethDriver: `${stage.address}/teeth/driver`,
            teethDriven: `${stage.address}/teeth/driven`,
            centreDistance: 'places of the two seats, moved on the mounts',
          },
        },
        {
          method: chainSlack,
          input,
          output,
          origins: {
            pitch: `chain-sizes/${size.key}`,
            linksFitted: `${stage.address}/links`,
            linksNeeded: isSet ? 'those fitted less the slack set at rest, and what the movement changes' : 'above',
            span: 'above',
          },
        },
      ],
      { capacity: limit.row, demand: 'above' },
    );
  }),
};
