import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';
import type { Severity } from '@oddwheel/build/assess/types';
import type { Model, Shaft } from '@oddwheel/build/model/model';
import { dot, plus, times } from '@oddwheel/mechanics/numerics/vector';
import { lies } from './draw-turned.ts';
import type { Bounds, DrawnNote, Element, Point } from './drawing.ts';
import { lineHeight, type Room, roundAbout, sizeText } from './lettering.ts';
import { onPage, type Plane } from './plane.ts';
import { inMm, MM } from './shaft-solids.ts';
import type { Solid } from './solids.ts';

const note = (elements: readonly Element[], of: string | null = null): DrawnNote => ({ of, finding: null, elements });

/** The ground under the loaded wheel, hatched. */
export function groundNote(level: number, from: number, to: number, pitch: number): DrawnNote {
  const count = Math.max(1, Math.floor((to - from) / pitch));
  return note([
    { kind: 'line', line: 'visible', from: [from, level], to: [to, level] },
    {
      kind: 'hatch',
      lines: Array.from({ length: count }, (_, k): readonly [Point, Point] => {
        const x = from + (k + 1) * pitch;
        return [
          [x, level],
          [x - 0.6 * pitch, level - 0.6 * pitch],
        ];
      }),
    },
  ]);
}

/** How far the parts of a shaft stand out from its axis, and where they end along it. */
function reachOf(
  shaft: Shaft,
  solids: readonly Solid[],
): { readonly radius: number; readonly from: number; readonly to: number } {
  const own = solids.filter(({ moves, role }) => moves === shaft.address && role !== 'grown tyre');
  const points = own.flatMap(({ shape }) => (shape.shape === 'turned' ? shape.outline : []));
  return {
    radius: Math.max(12, ...points.map(([, radius]) => radius)),
    from: Math.min(0, ...points.map(([station]) => station)),
    to: Math.max(0, ...points.map(([station]) => station)),
  };
}

/** Centre lines of the shafts in a view: along them, or a cross where they stand end on. */
export function centreLines(
  plane: Plane,
  shafts: readonly Shaft[],
  solids: readonly Solid[],
  over: number,
): readonly DrawnNote[] {
  return shafts.map((shaft) => {
    const { radius, from, to } = reachOf(shaft, solids);
    const line = (a: Point, b: Point): Element => ({ kind: 'line', line: 'centre', from: a, to: b });
    if (lies(plane, shaft.direction) === 'end on') {
      const [x, y] = onPage(plane, inMm(shaft.origin));
      const r = radius + over;
      return note([line([x - r, y], [x + r, y]), line([x, y - r], [x, y + r])], shaft.address);
    }
    const at = (station: number): Point => onPage(plane, plus(inMm(shaft.origin), times(station, shaft.direction)));
    return note([line(at(from - over), at(to + over))], shaft.address);
  });
}

/** Names of the shafts at their ends. */
export function shaftNames(
  plane: Plane,
  shafts: readonly Shaft[],
  solids: readonly Solid[],
  room: Room,
  height: number,
): readonly DrawnNote[] {
  return shafts.map((shaft) => {
    const { from, to } = reachOf(shaft, solids);
    const ends = [from, to].map((station) => onPage(plane, plus(inMm(shaft.origin), times(station, shaft.direction))));
    const near = (ends[0]?.[1] ?? 0) >= (ends[1]?.[1] ?? 0) ? ends[0] : ends[1];
    return note(
      room.place({
        near: near ?? [0, 0],
        tries: roundAbout([1, 1.8, 2.8, 4.2, 6].map((d) => d * height)),
        lines: [{ text: shaft.name, weight: 'note', severity: null }],
        leader: true,
      }),
      shaft.address,
    );
  });
}

/** Names of keep-outs, rooms to work and tubes, inside their outlines where there is room. */
export function spaceNames(
  model: Model,
  boxes: readonly { readonly of: string; readonly bounds: Bounds }[],
  room: Room,
  height: number,
): readonly DrawnNote[] {
  const names = new Map([...model.space.keepOuts, ...model.space.tubes].map(({ address, name }) => [address, name]));
  return boxes.flatMap(({ of, bounds }): DrawnNote[] => {
    const name = names.get(of);
    if (name === undefined) return [];
    const near: Point = [(bounds.left + bounds.right) / 2, (bounds.bottom + bounds.top) / 2];
    const steps = [0, 1, -1, 2, -2, 3, -3].map((k): Point => [0, k * lineHeight(height) - 0.3 * height]);
    return [
      note(
        room.place({ near, tries: steps, lines: [{ text: name, weight: 'note', severity: null }], leader: false }),
        of,
      ),
    ];
  });
}

/** "tyre Ø1 100 × 110", inside the lower part of the wheel seen end on. */
export function tyreName(model: Model, centre: Point, radius: number, width: number, room: Room): DrawnNote {
  const what = model.wheel.tyre === null ? 'wheel' : 'tyre';
  const text = `${what} Ø${sizeText(model, 2 * radius)} × ${sizeText(model, width)}`;
  const tries = [0.72, 0.62, 0.8, 0.52, 0.42].map((part): Point => [0, -part * radius]);
  return note(
    room.place({ near: centre, tries, lines: [{ text, weight: 'plain', severity: null }], leader: false }),
    model.wheel.address,
  );
}

/** What a clearance is worth against what is wanted. */
export function clearanceSeverity({ smallest, wanted }: Pick<ClearanceRow, 'smallest' | 'wanted'>): Severity {
  if (smallest <= 0) return 'fails';
  return smallest < wanted ? 'thin' : 'holds';
}

/** Rings and labels at clearances that are not wide enough, in the view that shows the gap longest. */
export function clearanceNotes(
  model: Model,
  rows: readonly ClearanceRow[],
  plane: Plane,
  planes: readonly Plane[],
  room: Room,
  height: number,
): readonly DrawnNote[] {
  const seen = (row: ClearanceRow, one: Plane): number => {
    const [a, b] = row.at.map((at) => onPage(one, inMm(at)));
    const apart = a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0;
    // Where they touch, the view from the left, which stands first, has it.
    return apart < 0.01 ? 0 : apart;
  };
  return rows
    .filter((row) => clearanceSeverity(row) !== 'holds')
    .slice(0, 6)
    .flatMap((row): DrawnNote[] => {
      const best = planes.reduce((a, b) => (seen(row, b) > seen(row, a) + 0.01 ? b : a));
      if (best !== plane) return [];
      const [a, b] = row.at.map((at) => onPage(plane, inMm(at)));
      if (!a || !b) return [];
      const near: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const severity = clearanceSeverity(row);
      const radius = Math.max(0.75 * height, seen(row, plane) / 2 + 0.4 * height);
      const lines = [
        { text: `${row.first.name} to ${row.second.name}`, weight: 'strong', severity } as const,
        { text: `${severity}: ${sizeText(model, row.drawn * MM)} as drawn`, weight: 'plain', severity: null } as const,
        ...(row.drawn - row.smallest > 5e-5
          ? [{ text: `${sizeText(model, row.smallest * MM)} at worst`, weight: 'plain', severity: null } as const]
          : []),
      ];
      const ring: Element = { kind: 'circle', line: 'visible', fill: 'none', centre: near, radius, hole: 0 };
      const tries = roundAbout([2, 3, 4.5, 6, 8, 11, 14].map((d) => d * height));
      const whole = room.place({ near, tries, lines, leader: true });
      const short = [{ text: sizeText(model, row.drawn * MM), weight: 'strong', severity } as const];
      return [
        {
          of: row.first.address,
          finding: `clearance.gap:${row.first.address}`,
          elements: [ring, ...(whole.length > 0 ? whole : room.place({ near, tries, lines: short, leader: true }))],
        },
      ];
    });
}

/** The direction in which a shaft is seen, in words. */
export function seenFrom(towards: readonly [number, number, number]): string {
  const words = [
    [[1, 0, 0], 'from ahead'],
    [[-1, 0, 0], 'from behind'],
    [[0, 1, 0], 'from the left'],
    [[0, -1, 0], 'from the right'],
    [[0, 0, 1], 'from above'],
    [[0, 0, -1], 'from below'],
  ] as const;
  return words.find(([axis]) => dot(axis, towards) > 1 - 1e-6)?.[1] ?? 'along its shaft';
}
