import { chainLength } from '@oddwheel/mechanics/chain/length';
import { chainSlack } from '@oddwheel/mechanics/chain/slack';
import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Body, Seat, Stage } from '../../model/model.ts';
import { parallelPlace } from '../geometry/tangent.ts';
import type { StageGeometry } from '../geometry/types.ts';
import { disc, type LoopWheel, loopEnvelope, type Section } from './loop.ts';
import type { Envelopes, Part } from './part.ts';
import { chainSection, sprocketRadii, toothWidth } from './sizes.ts';
import type { UnknownSize } from './types.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;
type BeltStage = Extract<Stage, { readonly kind: 'belt' }>;

/** Back of a toothed belt over its pitch line or tooth below it, and flange of a pulley over it, at most; parts of the belt's pitch. */
const BELT_SIDE = 0.5;

/** One end of a stage on its shaft line. */
export interface StageEnd {
  readonly seat: Seat;
  readonly line: number;
  readonly bodies: readonly Body[];
  /** Where the seat stands at an angle of the arm. */
  readonly place: (arm: number) => Vec3;
  /** What is fixed to its shaft, at an angle of the arm. */
  readonly carry: (solids: readonly Solid[]) => Part['at'];
  readonly swings: boolean;
}

interface Drive {
  readonly index: number;
  readonly from: StageEnd;
  readonly to: StageEnd;
  readonly normal: Vec3;
}

const together = (a: readonly Body[], b: readonly Body[]): readonly Body[] => [...new Set([...a, ...b])];

/** A toothed wheel on its seat. */
function wheelPart(
  role: 'sprocket' | 'pulley',
  stage: Stage,
  drive: Drive,
  end: StageEnd,
  size: readonly [radius: number, halfWidth: number],
  larger: number | null,
): Part {
  const at = (radius: number) => (arm: number) => [disc(end.place(arm), drive.normal, radius, size[1])];
  return {
    role,
    name: end.seat.name,
    address: end.seat.address,
    element: stage.address,
    bodies: end.bodies,
    lines: [end.line],
    stage: drive.index,
    at: at(size[0]),
    largest: larger === null || larger <= size[0] ? null : at(larger),
    swings: end.swings,
    growth: 0,
  };
}

/** Chain length beyond what its centres ask for, at an angle of the arm; a drawn idler keeps it as drawn. */
function excessAt(stage: ChainStage, geometry: StageGeometry, { from, to, normal }: Drive): (arm: number) => number {
  const { links, teeth, size, idler } = stage;
  if (links === null || !geometry.chain) return () => 0;
  const drawn = (links - geometry.chain.linksNeeded) * size.pitch;
  if (idler?.sprung === true || stage.tensioner === true) return () => 0;
  if (idler) return () => Math.max(0, drawn);
  return (arm) => {
    if (arm === 0) return Math.max(0, drawn);
    const { centreDistance } = parallelPlace(from.place(arm), to.place(arm), normal);
    const input = { pitch: size.pitch, teethDriver: teeth.driver, teethDriven: teeth.driven, centreDistance };
    try {
      return Math.max(0, (links - chainLength.run(input).links) * size.pitch);
    } catch (error) {
      if (error instanceof MethodError) return Math.max(0, drawn);
      throw error;
    }
  };
}

/** Wheels of a loop in the order of a chain that runs counter-clockwise about the normal. */
function loopAt(
  { from, to }: Drive,
  arm: number,
  radii: readonly [number, number],
  idler: LoopWheel | null,
): readonly LoopWheel[] {
  const ends = [
    { centre: from.place(arm), radius: radii[0], inside: true },
    { centre: to.place(arm), radius: radii[1], inside: true },
  ];
  return idler ? [...ends, idler] : ends;
}

/** Chain, sprockets and idler of one stage. */
export function chainParts(stage: ChainStage, geometry: StageGeometry, drive: Drive): Envelopes {
  const { from, to } = drive;
  const missing = (address: string, says: string): UnknownSize => ({
    name: stage.name,
    element: stage.address,
    address,
    says,
  });
  const radii = [stage.teeth.driver, stage.teeth.driven].map((teeth) => sprocketRadii(stage, teeth));
  const [driver, driven] = radii;
  if (!driver || !driven) return { parts: [], unknown: [] };
  const largest = {
    driver: sprocketRadii(stage, Math.max(stage.teeth.driver, stage.largest.driver ?? 0)),
    driven: sprocketRadii(stage, Math.max(stage.teeth.driven, stage.largest.driven ?? 0)),
  };
  const half = toothWidth(stage);
  const sprockets = [
    wheelPart('sprocket', stage, drive, from, [driver.tip, half], largest.driver.tip),
    wheelPart('sprocket', stage, drive, to, [driven.tip, half], largest.driven.tip),
  ];
  const section = chainSection(stage);
  const { chain } = geometry;
  if (!chain) return { parts: sprockets, unknown: geometry.trouble.map(({ address, says }) => missing(address, says)) };
  const idlerRadii = stage.idler && sprocketRadii(stage, stage.idler.teeth);
  const oneBody = from.bodies.length === 1 && to.bodies.length === 1 && from.bodies[0] === to.bodies[0];
  const common = { element: stage.address, stage: drive.index, growth: 0 };
  const idler: Part[] =
    stage.idler && idlerRadii
      ? [
          {
            ...common,
            role: 'idler',
            name: `idler of ${stage.name}`,
            address: stage.idler.address,
            bodies: oneBody ? from.bodies : [],
            lines: [],
            at: fixed([disc(stage.idler.at, drive.normal, idlerRadii.tip, half)]),
            largest: null,
            swings: false,
          },
        ]
      : [];
  if (typeof section === 'string')
    return { parts: [...sprockets, ...idler], unknown: [missing(`${stage.address}/chain`, section)] };
  // An idler lies on the upper side when the axes are so turned that its span does.
  const normal = chain.idler ? sideways(drive, chain.u, chain.idler.span) : drive.normal;
  const over: LoopWheel | null =
    stage.idler && idlerRadii
      ? { centre: stage.idler.at, radius: idlerRadii.pitch, inside: stage.idler.runs === 'inside the chain' }
      : null;
  const excess = excessAt(stage, geometry, drive);
  const around =
    (sizes: readonly [number, number]) =>
    (arm: number): readonly Solid[] =>
      loopEnvelope(loopAt(drive, arm, sizes, over), normal, section, sagOf(stage, excess(arm)));
  const larger = largest.driver.pitch > driver.pitch || largest.driven.pitch > driven.pitch;
  return {
    parts: [
      {
        ...common,
        role: 'chain',
        name: stage.name,
        address: stage.address,
        bodies: together(from.bodies, to.bodies),
        lines: [from.line, to.line],
        at: around([driver.pitch, driven.pitch]),
        largest: larger ? around([largest.driver.pitch, largest.driven.pitch]) : null,
        swings: from.swings || to.swings,
      },
      ...sprockets,
      ...idler,
    ],
    unknown: [
      ...(stage.links === null
        ? [missing(`${stage.address}/links`, 'the number of links fitted: how far its slack span swings')]
        : []),
      ...(stage.tensioner === true && !stage.idler
        ? [missing(`${stage.address}/idler`, 'where the tensioner stands')]
        : []),
    ],
  };
}

const fixed = (solids: readonly Solid[]) => (): readonly Solid[] => solids;

/** Normal about which the idler's span is the upper one, seen with the driven wheel on the right. */
function sideways({ normal }: Drive, u: Vec3, toSpan: Vec3): Vec3 {
  return dot(cross(u, toSpan), normal) >= 0 ? normal : times(-1, normal);
}

/** How far a span swings to either side with all of the excess in it. */
function sagOf({ size, links }: ChainStage, excess: number): (length: number) => number {
  if (links === null || !(excess > 0)) return () => 0;
  const chain = { pitch: size.pitch, linksFitted: links, linksNeeded: links - excess / size.pitch };
  return (span) => chainSlack.run({ ...chain, span }).deflection;
}

/** Belt and pulleys of one stage. */
export function beltParts(stage: BeltStage, geometry: StageGeometry, drive: Drive): Envelopes {
  const { from, to } = drive;
  const unknown: UnknownSize[] = [from, to]
    .filter(({ seat }) => seat.width === null)
    .map(({ seat }) => ({
      name: seat.name,
      element: stage.address,
      address: `${seat.address}/width`,
      says: `the width of ${seat.name}`,
    }));
  if (geometry.relation === null || norm(minus(to.seat.at, from.seat.at)) === 0)
    return {
      parts: [],
      unknown: geometry.trouble.map(({ address, says }) => ({
        name: stage.name,
        element: stage.address,
        address,
        says,
      })),
    };
  const radius = (teeth: number): number => (stage.pitch * teeth) / (2 * Math.PI);
  const pulley = (end: StageEnd, teeth: number): readonly Part[] =>
    end.seat.width === null
      ? []
      : [wheelPart('pulley', stage, drive, end, [radius(teeth) + BELT_SIDE * stage.pitch, end.seat.width / 2], null)];
  const widths = [from, to].flatMap(({ seat }) => (seat.width === null ? [] : [seat.width]));
  // A belt is no wider than the narrower of its pulleys.
  const section: Section | null =
    widths.length === 0 ? null : { height: BELT_SIDE * stage.pitch, width: Math.min(...widths) / 2 };
  const belt: readonly Part[] = section
    ? [
        {
          role: 'belt',
          name: stage.name,
          address: stage.address,
          element: stage.address,
          bodies: together(from.bodies, to.bodies),
          lines: [from.line, to.line],
          stage: drive.index,
          at: (arm) =>
            loopEnvelope(
              loopAt(drive, arm, [radius(stage.teeth.driver), radius(stage.teeth.driven)], null),
              drive.normal,
              section,
              () => 0,
            ),
          largest: null,
          swings: from.swings || to.swings,
          growth: 0,
        },
      ]
    : [];
  return { parts: [...belt, ...pulley(from, stage.teeth.driver), ...pulley(to, stage.teeth.driven)], unknown };
}
