import type { StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { Finding, Severity } from '@oddwheel/build/assess/types';
import { cross, dot, minus, norm, times, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Posed } from './build-solids.ts';
import { alongLine } from './dimensions.ts';
import type { DrawnNote, Point, View } from './drawing.ts';
import { Room, roundAbout, sizeText } from './lettering.ts';
import { centreLines, seenFrom } from './notes.ts';
import { onPage, type Plane } from './plane.ts';
import { inMm } from './shaft-solids.ts';
import type { Solid } from './solids.ts';
import { boundsOf, partsOf, roomAround, textBoxes, viewOf } from './view.ts';

/** Looks along a shaft from ahead, from the left or from above, whichever is nearest; z, or else y, up. */
export function planeAlong(direction: Vec3): Plane {
  const most = direction.reduce((best, x, k) => (Math.abs(x) > Math.abs(direction[best] ?? 0) + 1e-9 ? k : best), 0);
  const towards = times((direction[most] ?? 0) >= 0 ? 1 : -1, direction);
  const level: Vec3 = Math.abs(towards[2]) > 0.9 ? [0, -1, 0] : [0, 0, 1];
  const up = unit(minus(level, times(dot(level, towards), towards)));
  return { right: cross(up, towards), up, towards };
}

const worst: readonly Severity[] = ['fails', 'unknown', 'thin', 'holds'];

/** The finding that says most about one check of a stage. */
const findingOf = (findings: readonly Finding[], check: string, address: string): Finding | undefined =>
  findings
    .filter((one) => one.check === check && one.address === address)
    .sort((a, b) => worst.indexOf(a.severity) - worst.indexOf(b.severity))[0];

/** A chain or belt along its shafts, with its centres and, where it stands too steep, its slope. */
export function loopView(
  posed: Posed,
  geometry: StageGeometry,
  solids: readonly Solid[],
  findings: readonly Finding[],
  height: number,
): View {
  const { stage, from, to } = geometry;
  const plane = planeAlong(from.direction);
  const seats = [from.seats.find(({ id }) => id === stage.from.seat), to.seats.find(({ id }) => id === stage.to.seat)];
  const shown = solids.filter(
    ({ of, role, moves }) =>
      of === stage.address ||
      of.startsWith(`${stage.address}/`) ||
      seats.some((seat) => seat?.address === of) ||
      (role === 'shaft' && (moves === from.address || moves === to.address)),
  );
  const parts = partsOf(plane, shown);
  const lines = centreLines(plane, [from, to], shown, 0.7 * height);
  const [a, b] = seats.map((seat) => (seat ? onPage(plane, inMm(seat.at)) : null));
  const title = `${stage.name}, seen ${seenFrom(plane.towards)}`;
  const id = `along ${stage.address}` as const;
  if (!a || !b || stage.kind === 'coupling' || stage.kind === 'unit')
    return viewOf(id, title, plane, parts, lines, height);
  const apart = norm([b[0] - a[0], b[1] - a[1], 0]);
  const count =
    stage.kind === 'chain'
      ? stage.links === null
        ? 'links not chosen'
        : `${stage.links} links`
      : stage.kind === 'belt' && stage.beltTeeth !== null
        ? `${stage.beltTeeth} teeth`
        : '';
  const text = [sizeText(posed.model, apart), count].filter((part) => part !== '').join(', ');
  const slack = findingOf(findings, 'chain.slack', stage.address);
  const [first, second] = a[0] <= b[0] ? [a, b] : [b, a];
  const centres: DrawnNote = {
    of: stage.address,
    finding: slack?.id ?? null,
    elements: [
      { kind: 'line', line: 'thin', from: a, to: b },
      alongLine(first, second, text, height, slack && slack.severity !== 'holds' ? slack.severity : null),
    ],
  };
  const shape = boundsOf([...parts, ...lines], height);
  const room = new Room(height, textBoxes([centres], height), roomAround(shape, height));
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  // Beside the chain, or else under it.
  const under: Point = [(shape.left + shape.right) / 2 - middle[0], shape.bottom - 1.6 * height - middle[1]];
  const slope = findingOf(findings, 'chain.slope', stage.address);
  const steep: DrawnNote[] =
    slope && slope.severity !== 'holds' && geometry.chain
      ? [
          {
            of: stage.address,
            finding: slope.id,
            elements: room.place({
              near: middle,
              tries: [...roundAbout([4, 6, 8, 10].map((d) => d * height)), under],
              lines: [
                {
                  text: `${slope.severity}: slope ${Math.round((geometry.chain.slope * 180) / Math.PI)}°`,
                  weight: 'strong',
                  severity: slope.severity,
                },
              ],
              leader: false,
            }),
          },
        ]
      : [];
  return viewOf(id, title, plane, parts, [...lines, centres, ...steep], height);
}
