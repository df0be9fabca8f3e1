import { defineTable, type How, type Row, rowInSi, type Table } from './table.ts';

type CycleColumn = 'time' | 'speed';

/** A driving cycle: road speed over time. */
export type Cycle = Table<CycleColumn>;

interface CycleFacts {
  readonly id: string;
  readonly title: string;
  readonly range: string;
  readonly how: How;
  readonly source: string;
}

/** A corner: time in seconds, speed in km/h. */
type Corner = readonly [number, number];

function cycleOf(facts: CycleFacts, unit: 'km/h' | 'mph', corners: readonly Corner[]): Cycle {
  const rows: Record<string, Row<CycleColumn>> = {};
  for (const [time, speed] of corners) rows[String(time)] = { values: { time, speed }, how: facts.how };
  return defineTable({
    id: facts.id,
    title: facts.title,
    range: facts.range,
    how: facts.how,
    source: facts.source,
    columns: {
      time: { kind: 'time', unit: 's', meaning: 'time since the start' },
      speed: { kind: 'speed', unit, meaning: 'road speed' },
    },
    rows,
  });
}

/** Declares a cycle published second by second: 601 speeds last 600 s. */
export function defineTrace(
  facts: CycleFacts & { readonly unit: 'km/h' | 'mph'; readonly speeds: readonly number[] },
): Cycle {
  return cycleOf(
    facts,
    facts.unit,
    facts.speeds.map((speed, time) => [time, speed]),
  );
}

/** Declares a cycle published by its corners, in s and km/h, at whole seconds. */
export function defineCorners(facts: CycleFacts & { readonly corners: readonly Corner[] }): Cycle {
  return cycleOf(facts, 'km/h', facts.corners);
}

/** Corners of parts that follow one another; each part begins at 0 s with the speed that the part before ends with. */
export function repeated(parts: readonly (readonly Corner[])[]): readonly Corner[] {
  const corners: Corner[] = [];
  let start = 0;
  for (const part of parts) {
    for (const [time, speed] of part) if (time > 0 || corners.length === 0) corners.push([start + time, speed]);
    start += part.at(-1)?.[0] ?? 0;
  }
  return corners;
}

/**
 * Road speed at every whole second of a cycle, straight between the rows, in m/s: one more than the seconds it lasts.
 */
export function cycleTrace(cycle: Cycle): readonly number[] {
  const rows = Object.keys(cycle.rows)
    .map((key) => rowInSi(cycle, key))
    .map(({ time = 0, speed = 0 }) => ({ time, speed }))
    .sort((a, b) => a.time - b.time);
  const trace: number[] = [];
  for (let k = 0; k + 1 < rows.length; k++) {
    const [a, b] = [rows[k] as (typeof rows)[number], rows[k + 1] as (typeof rows)[number]];
    for (let t = a.time; t < b.time; t++)
      trace.push(a.speed + ((b.speed - a.speed) * (t - a.time)) / (b.time - a.time));
  }
  const last = rows.at(-1);
  return last === undefined ? trace : [...trace, last.speed];
}
