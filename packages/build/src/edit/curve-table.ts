import { parseQuantity } from '@oddwheel/quantity/parse';
import type { Fault } from '../fault.ts';

/** A torque curve as the build file holds it. */
export interface CurveFile {
  readonly units: { readonly speed: 'rpm' | 'rad/s'; readonly torque: 'N.m' | 'lbf.ft' };
  readonly rows: readonly (readonly [speed: number, torque: number])[];
}

export type CurveRead =
  | {
      readonly ok: true;
      readonly curve: CurveFile;
      /** The table gave power; torque was worked out from it. */
      readonly fromPower: boolean;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const AT = '/brief/engine/curve';
const EXAMPLE =
  'A first line with the units, such as "rpm  N.m" or "rpm  kW", then a line for each speed, such as "2500  32.5".';

type Meaning =
  | { readonly is: 'speed'; readonly unit: CurveFile['units']['speed'] }
  | { readonly is: 'torque'; readonly unit: CurveFile['units']['torque'] }
  | { readonly is: 'power'; readonly unit: string };

/** How units stand in the heads of tables. The more particular comes first: "ft·lb" holds "lb". */
const UNITS: readonly (readonly [RegExp, Meaning])[] = [
  [/(?:r\/min|rpm|1\/min|min\s?(?:\^)?[-−⁻][1¹]|\/min)(?![a-z])/i, { is: 'speed', unit: 'rpm' }],
  [/rad\/s/i, { is: 'speed', unit: 'rad/s' }],
  [/(?:lbf?[\s.·*-]?ft|(?:ft|foot)[\s.·*-]?(?:lbf?|pounds?))(?![a-z])/i, { is: 'torque', unit: 'lbf.ft' }],
  [/(?<![a-zµ])N[\s.·*-]?m(?![a-z])/i, { is: 'torque', unit: 'N.m' }],
  [/(?<![a-z])kW(?![a-z])/i, { is: 'power', unit: 'kW' }],
  [/(?<![a-z])W(?![a-z])/, { is: 'power', unit: 'W' }],
  [/(?<![a-z])(?:b?hp)(?![a-z])/i, { is: 'power', unit: 'hp' }],
  [/(?<![a-z])PS(?![a-z])/, { is: 'power', unit: 'PS' }],
];

/** Units named in a text, in the order in which they stand. */
function unitsIn(text: string): readonly Meaning[] {
  const found: { readonly at: number; readonly end: number; readonly meaning: Meaning }[] = [];
  for (const [pattern, meaning] of UNITS)
    for (const match of text.matchAll(new RegExp(pattern, `g${pattern.flags}`))) {
      const end = match.index + match[0].length;
      if (!found.some((other) => match.index < other.end && other.at < end))
        found.push({ at: match.index, end, meaning });
    }
  return found.sort((a, b) => a.at - b.at).map(({ meaning }) => meaning);
}

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/** The cells of a line: between tabs, semicolons, or bars; else between blanks; else between commas. */
function cells(line: string): string[] {
  const trimmed = line.trim().replace(/^\||\|$/g, '');
  const parts = /[\t;|]/.test(trimmed)
    ? trimmed.split(/[\t;|]/)
    : /\d,\s/.test(trimmed)
      ? trimmed.split(/,\s+/)
      : /\d\s+[\d.+-]/.test(trimmed)
        ? trimmed.split(/\s+/)
        : trimmed.split(',');
  return parts.map((part) => part.trim().replace(/^"(.*)"$/, '$1'));
}

const isData = (line: string): boolean => cells(line).filter((cell) => NUMBER.test(cell)).length > 1;

const fault = (line: number | null, problem: string, read: string, accepted: string): Fault => ({
  code: 'curve.table',
  address: AT,
  ...(line === null ? {} : { line }),
  problem: line === null ? problem : `Line ${line}: ${problem}`,
  read,
  accepted,
});

/** A cell as a number, or what is wrong with it. */
function cellNumber(cell: string | undefined): number | string {
  if (cell === undefined || cell === '') return 'a number is missing.';
  if (!NUMBER.test(cell)) return `“${cell}” is no number.`;
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(cell))
    return `“${cell}” can be read as ${cell.replace(',', '')} and as ${cell.replace(',', '.')}.`;
  return Number(cell.replace(',', '.'));
}

const siOf = (unit: string, kind: 'power' | 'angularSpeed'): number => {
  const parsed = parseQuantity(`1 ${unit}`, kind);
  if (!parsed.ok) throw new Error(`The unit ${unit} is not known.`);
  return parsed.si;
};

/**
 * Reads a torque curve from columns pasted out of a table: cells between tabs, semicolons, blanks or commas, decimal point or comma, under
 * a line that names the units (rpm or rad/s with N·m, lbf·ft, or kW, W, hp, PS). Torque is worked out from power where there is no torque.
 * Lines without numbers are passed over. All faults at once, with the line.
 */
export function curveFromTable(text: string): CurveRead {
  const lines = text.split(/\r?\n/);
  const first = lines.findIndex(isData);
  if (first < 0)
    return { ok: false, faults: [fault(null, 'No line with two numbers was found.', text.slice(0, 60), EXAMPLE)] };
  const columns = columnsOf(lines.slice(0, first), cells(lines[first] ?? ''));
  if (typeof columns === 'string')
    return { ok: false, faults: [fault(null, columns, lines.slice(0, first).join(' ').slice(0, 60), EXAMPLE)] };

  const faults: Fault[] = [];
  const rows: { readonly speed: number; readonly torque: number; readonly line: number }[] = [];
  lines.slice(first).forEach((line, index) => {
    if (line.trim() === '') return;
    const number = first + index + 1;
    const parts = cells(line);
    const [speed, value] = [cellNumber(parts[columns.speedAt]), cellNumber(parts[columns.valueAt])];
    for (const bad of [speed, value])
      if (typeof bad === 'string')
        faults.push(fault(number, bad, line.trim(), 'Numbers such as 2500 and 32.5, or 32,5.'));
    if (typeof speed === 'string' || typeof value === 'string') return;
    if (speed < 0 || value < 0)
      faults.push(
        fault(number, 'a number is below zero.', line.trim(), 'Speed and torque at full throttle, zero or more.'),
      );
    else if (columns.value.is === 'power' && speed === 0)
      faults.push(fault(number, 'power at standstill gives no torque.', line.trim(), 'A speed above zero.'));
    else rows.push({ speed, torque: torqueOf(columns, speed, value), line: number });
  });
  const falling = rows.length > 1 && (rows[0]?.speed ?? 0) > (rows.at(-1)?.speed ?? 0);
  if (falling) rows.reverse();
  rows.forEach((row, k) => {
    const before = rows[k - 1];
    if (before && row.speed <= before.speed)
      faults.push(
        fault(
          row.line,
          `${row.speed} comes after ${before.speed}.`,
          String(row.speed),
          'Speeds in one order, each once.',
        ),
      );
  });
  if (faults.length === 0 && rows.length < 2)
    faults.push(fault(null, 'A curve needs two speeds at least.', `${rows.length} line`, EXAMPLE));
  if (faults.length > 0) return { ok: false, faults: faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0)) };
  const units = {
    speed: columns.speed.unit,
    torque: columns.value.is === 'torque' ? columns.value.unit : 'N.m',
  } as const;
  return {
    ok: true,
    curve: { units, rows: rows.map(({ speed, torque }) => [speed, torque] as const) },
    fromPower: columns.value.is === 'power',
  };
}

interface Columns {
  readonly speed: Extract<Meaning, { is: 'speed' }>;
  readonly speedAt: number;
  readonly value: Exclude<Meaning, { is: 'speed' }>;
  readonly valueAt: number;
}

/** Which column is what, from the lines above the numbers; else what is missing there. */
function columnsOf(head: readonly string[], row: readonly string[]): Columns | string {
  const meanings: (Meaning | undefined)[] = row.map(() => undefined);
  for (const line of head) {
    const parts = cells(line);
    const inOrder = unitsIn(line);
    const perCell = parts.map((part) => unitsIn(part)[0]);
    const fits = parts.length === row.length;
    row.forEach((_, k) => {
      meanings[k] ??= fits ? perCell[k] : inOrder.length === row.length ? inOrder[k] : undefined;
    });
  }
  const speedAt = meanings.findIndex((meaning) => meaning?.is === 'speed');
  const torqueAt = meanings.findIndex((meaning) => meaning?.is === 'torque');
  const valueAt = torqueAt >= 0 ? torqueAt : meanings.findIndex((meaning) => meaning?.is === 'power');
  const speed = meanings[speedAt];
  const value = meanings[valueAt];
  if (speed?.is !== 'speed') return 'No column is named as engine speed.';
  if (value === undefined || value.is === 'speed') return 'No column is named as torque or power.';
  return { speed, speedAt, value, valueAt };
}

/** Torque in the unit of the column; from power, T = P / ω in N·m, to a hundredth. */
function torqueOf({ speed, value }: Columns, n: number, x: number): number {
  if (value.is === 'torque') return x;
  return Math.round((100 * x * siOf(value.unit, 'power')) / (n * siOf(speed.unit, 'angularSpeed'))) / 100;
}
