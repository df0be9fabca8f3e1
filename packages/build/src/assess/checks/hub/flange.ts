import { boltGroup } from '@oddwheel/mechanics/joint/bolt-group';
import { boltModes } from '@oddwheel/mechanics/joint/bolt-modes';
import { boltSlip } from '@oddwheel/mechanics/joint/bolt-slip';
import { threadEngagement } from '@oddwheel/mechanics/joint/thread-engagement';
import { BOLT_CLASSES } from '@oddwheel/tables/bolt-classes';
import { HUB_METALS } from '@oddwheel/tables/hub-metals';
import { rowInSi } from '@oddwheel/tables/table';
import type { Hub, HubBolts } from '../../../model/hub.ts';
import type { CaseLoads } from '../../loads.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import { THROUGH } from './flanks.ts';
import { force, type Mode, torque as torqueAmount, worstOf } from './modes.ts';
import {
  NOTHING,
  needed,
  pushAcross,
  seatsWith,
  type TorqueSeat,
  torqueSeatOf,
  torqueThrough,
  unknown,
} from './seats.ts';
import { areaOf, frictionOf, preloadOf } from './tightened.ts';

type Jointed = TorqueSeat & { readonly hub: Hub };

const CIRCLES = new Map<string, { readonly x: readonly number[]; readonly y: readonly number[] }>();

/** Places of the bolts of a circle, the first on the first axis. */
function circle(count: number, diameter: number) {
  const slot = `${count}:${diameter}`;
  const known = CIRCLES.get(slot);
  if (known) return known;
  const angles = Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count);
  const found = {
    x: angles.map((angle) => (diameter / 2) * Math.cos(angle)),
    y: angles.map((angle) => (diameter / 2) * Math.sin(angle)),
  };
  CIRCLES.set(slot, found);
  return found;
}

const boltsMissing = ({ hub, seat }: Jointed): Outcome =>
  unknown({ address: `${hub.address}/bolts`, says: `the bolts of ${seat.name}: thread, number and circle` });

const gradeMissing = ({ hub, seat }: Jointed): Outcome =>
  unknown({ address: `${hub.address}/bolts/grade`, says: `the strength of the bolts of ${seat.name}` });

function modesOf(
  found: Jointed,
  bolts: HubBolts,
  pushed: number,
  of: { thickness: number; edge: number },
  scene: Scene,
) {
  const { hub } = found;
  const at = `${hub.address}/bolts`;
  const area = areaOf(bolts.thread);
  const yielding = scene.at(hub.metal.yield);
  const input = {
    diameter: area.diameter,
    sheared: area.root,
    ...of,
    bolts: 1,
    planes: 1,
    proof: rowInSi(BOLT_CLASSES, bolts.grade ?? '').proof ?? Number.NaN,
    plateYield: yielding,
  };
  const output = boltModes.run(input);
  const mode = (name: string, capacity: number, uses: Mode['uses']): Mode => ({
    name,
    demand: force('on the hardest loaded bolt', pushed),
    capacity: force(name, capacity),
    uses,
    origins: { capacity: 'above', demand: 'above' },
  });
  const modes = [
    mode('the bolt shears at', output.shear, []),
    mode('the bolt is crushed at', output.boltCrush, []),
    mode('the hole draws long at', output.plateCrush, [hub.metal.yield]),
    mode('the hole tears out at', output.tearOut, [hub.metal.yield]),
  ];
  const used = {
    method: boltModes,
    input,
    output,
    origins: {
      diameter: `thread-sizes/${bolts.thread}`,
      sheared: 'root of the thread, above',
      thickness: `${at}/thickness`,
      edge: `${at}/edge`,
      bolts: 'one of them',
      planes: 'one joint',
      proof: `bolt-classes/${bolts.grade}`,
      plateYield: hub.metal.yield.address,
    },
  };
  return { area, modes, used };
}

/** The pushes on the bolts of a flange together, which one circle of them takes. */
function groupOf(bolts: HubBolts, torque: number, across: number) {
  const { x, y } = circle(bolts.count, bolts.circle);
  const input = { x, y, forceX: 0, forceY: across, atX: 0, atY: 0, torque, diameter: areaOf(bolts.thread).root };
  return { input, output: boltGroup.run(input) };
}

/** Push on the hardest loaded bolt of a flange that has slipped, N; null without bolts. */
export function hardestBolt(found: Jointed, torque: number, load: CaseLoads): number | null {
  const { bolts } = found.hub;
  return bolts && groupOf(bolts, torque, pushAcross(found, load)).output.greatest;
}

/** Bolts of a flange that has slipped: the hardest loaded one and its hole, with the push of the part in the worst direction. */
export function flangePasses(found: Jointed, torque: number, load: CaseLoads, scene: Scene): Outcome {
  const { hub, seat } = found;
  const { bolts } = hub;
  if (!bolts) return boltsMissing(found);
  if (bolts.grade === null) return gradeMissing(found);
  const at = `${hub.address}/bolts`;
  const sizes = needed({ thickness: bolts.thickness, edge: bolts.edge }, at, {
    thickness: `the thickness of the thinner part that the bolts of ${seat.name} hold`,
    edge: `how far the holes of ${seat.name} lie from the nearest edge`,
  });
  if (!sizes.ok) return sizes.outcome;
  const across = pushAcross(found, load);
  const { input, output } = groupOf(bolts, torque, across);
  const { show } = scene;
  const { area, modes, used } = modesOf(found, bolts, output.greatest, sizes.of, scene);
  return worstOf(
    modes,
    ({ name, capacity }) =>
      `If the flange slips, its bolts pass ${show('torque', torque)} and ${show('force', across)} across: ${show('force', output.greatest)} on the hardest loaded; ${name} ${show('force', capacity.value)}.`,
    () => [
      area.used,
      {
        method: boltGroup,
        input,
        output,
        origins: {
          x: `${at}/circle and ${at}/count`,
          y: `${at}/circle and ${at}/count`,
          forceX: 'the bolt that passes the push is taken',
          forceY: 'what the part brings under this case',
          atX: 'at the middle of the shaft',
          atY: 'at the middle of the shaft',
          torque: THROUGH,
          diameter: 'root of the thread, above',
        },
      },
      used,
    ],
  );
}

const isFlange = ({ torqueBy, bolts }: Hub): boolean => torqueBy === 'bolted flange' && bolts !== null;

/** Friction takes torque and push together; the push uses up its part at the circle. */
const askedOfFriction = (found: Jointed, bolts: HubBolts, torque: number, load: CaseLoads): number =>
  torque + (pushAcross(found, load) * bolts.circle) / 2;

/** A flange that does not slip keeps its bolts tight and its holes round. */
export const hubSlip: Check = {
  id: 'hub.slip',
  title: 'flange held by friction',
  consequence: 'wears out',
  wanted: { reserve: 1.2, from: 'stated default of this project: peaks are known to a fifth' },
  atWorst: 'thin',
  perCase: true,
  rare: true,
  subjects: seatsWith(isFlange),
  demand: ({ model }, subject, load) => {
    const found = torqueSeatOf(model, subject);
    const torque = found ? torqueThrough(found, load) : 0;
    return found?.hub.bolts && torque >= NOTHING ? askedOfFriction(found, found.hub.bolts, torque, load) : null;
  },
  run: ({ model, show }, subject, load) => {
    const found = torqueSeatOf(model, subject);
    const bolts = found?.hub.bolts;
    if (!found || !bolts || !load) return null;
    const torque = torqueThrough(found, load);
    if (torque < NOTHING) return null;
    const at = `${found.hub.address}/bolts`;
    if (bolts.tightening === null)
      return unknown({
        address: `${at}/tightening`,
        says: `the tightening torque of the bolts of ${found.seat.name}`,
      });
    const preload = preloadOf(bolts.thread, bolts, bolts.tightening, at);
    const friction = frictionOf(bolts);
    const input = { preload: preload.least, bolts: bolts.count, planes: 1, friction: friction.value };
    const output = boltSlip.run(input);
    const asked = askedOfFriction(found, bolts, torque, load);
    const slips = (output.push * bolts.circle) / 2;
    return measured(
      torqueAmount('asked of the friction', asked),
      torqueAmount('slips at', slips),
      () =>
        `The bolts clamp with at least ${show('force', preload.least)} each; the flange slips at ${show('torque', slips)}, and torque and push ask for ${show('torque', asked)}.`,
      [],
      () => [
        preload.used,
        {
          method: boltSlip,
          input,
          output,
          origins: {
            preload: 'least preload, above',
            bolts: `${at}/count`,
            planes: 'one joint',
            friction: friction.from,
          },
        },
      ],
      {
        capacity: `the push at which it slips, above, at the radius of ${at}/circle`,
        demand: 'torque through the seat, and the push across it at the same radius, under this case',
      },
    );
  },
};

/** Tightening does not stretch the bolts. */
export const hubPreload: Check = {
  id: 'hub.preload',
  title: 'preload of the bolts',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'ISO 898-1: proof strength' },
  atWorst: 'fails',
  perCase: false,
  subjects: seatsWith((hub) => isFlange(hub) && hub.bolts?.tightening !== null),
  run: ({ model, show }, subject) => {
    const found = torqueSeatOf(model, subject);
    const bolts = found?.hub.bolts;
    if (!found || !bolts || bolts.tightening === null) return null;
    if (bolts.grade === null) return gradeMissing(found);
    const at = `${found.hub.address}/bolts`;
    const preload = preloadOf(bolts.thread, bolts, bolts.tightening, at);
    const area = areaOf(bolts.thread);
    const proof = rowInSi(BOLT_CLASSES, bolts.grade).proof ?? Number.NaN;
    return measured(
      force('greatest preload', preload.most),
      force('proof load', proof * area.area),
      () =>
        `A torque wrench scatters: up to ${show('force', preload.most)} in a bolt, whose proof load is ${show('force', proof * area.area)}.`,
      [],
      () => [area.used, preload.used],
      { capacity: `bolt-classes/${bolts.grade} times the stress area above`, demand: 'greatest preload, above' },
    );
  },
};

/** A thread in the part is long enough for the bolt to break before it strips. */
export const hubThread: Check = {
  id: 'hub.thread',
  title: 'length of thread in the part',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'the bolt shall break before the thread strips' },
  atWorst: 'thin',
  perCase: false,
  subjects: seatsWith((hub) => isFlange(hub) && hub.bolts?.into !== 'nuts'),
  run: ({ model, show }, subject) => {
    const found = torqueSeatOf(model, subject);
    const bolts = found?.hub.bolts;
    if (!found || !bolts) return null;
    const { seat } = found;
    const at = `${found.hub.address}/bolts`;
    if (bolts.into === null)
      return unknown({
        address: `${at}/into`,
        says: `whether the bolts of ${seat.name} have nuts or a thread in the part`,
      });
    if (bolts.engagement === null)
      return unknown({ address: `${at}/engagement`, says: `the length of thread that the bolts of ${seat.name} have` });
    if (bolts.part === null)
      return unknown({ address: `${at}/part`, says: `the metal that the bolts of ${seat.name} are screwed into` });
    if (bolts.grade === null) return gradeMissing(found);
    const area = areaOf(bolts.thread);
    const input = {
      diameter: area.diameter,
      area: area.area,
      boltTensile: rowInSi(BOLT_CLASSES, bolts.grade).tensile ?? Number.NaN,
      partTensile: rowInSi(HUB_METALS, bolts.part).tensile ?? Number.NaN,
    };
    const output = threadEngagement.run(input);
    const { engagement, part } = bolts;
    return measured(
      { name: 'wanted', value: output.length, kind: 'length', use: 'length' },
      { name: 'length of thread', value: engagement, kind: 'length', use: 'length' },
      () =>
        `The bolts have ${show('length', engagement)} of thread in ${part}; from ${show('length', output.length)} on they break before it strips.`,
      [],
      () => [
        area.used,
        {
          method: threadEngagement,
          input,
          output,
          origins: {
            diameter: `thread-sizes/${bolts.thread}`,
            area: 'above',
            boltTensile: `bolt-classes/${bolts.grade}`,
            partTensile: `hub-metals/${part}`,
          },
        },
      ],
      { capacity: `${at}/engagement`, demand: 'above' },
    );
  },
};
