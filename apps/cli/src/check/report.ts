/** The assessment as a builder reads it in the terminal. */
import type { Assessment, Closure, Finding, PathElement, Severity } from '@oddwheel/build/assess/types';
import { formatQuantity } from '@oddwheel/quantity/format';
import { type Column, table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';
import { adjusterLines, assemblyLines, moveLines } from './adjusters.ts';
import { armLines } from './arm.ts';
import { type Beside, besideLines } from './beside.ts';
import { clearanceLines } from './clearance.ts';
import { bodyLines } from './layout.ts';
import { reserveText, spreadText, type Units } from './numbers.ts';
import { roadLines } from './road.ts';
import { turningLines } from './turning.ts';

export const CAUTION =
  'Caution: these numbers are design aids. A drive that fails can lock the wheel or throw parts. Local codes, inspection and licensed practice decide.';

/** Colours of the terminal that set a severity off; the word alone says the same. */
const COLOURS: Readonly<Record<Severity, string>> = { fails: '1;31', unknown: '2', thin: '33', holds: '' };

type Paint = (severity: Severity, text: string) => string;

/** Paints severities, or leaves them plain. */
export function painter(colour: boolean): Paint {
  return (severity, text) =>
    colour && COLOURS[severity] !== '' ? `\u001b[${COLOURS[severity]}m${text}\u001b[0m` : text;
}

function worstText(element: PathElement): string {
  if (!element.worst) return '';
  const { severity, reserve } = element.worst;
  return reserve === null ? severity : `${reserveText(reserve)} ${severity}`;
}

function speedText(element: PathElement, units: Units): string {
  const { angularSpeed, lineSpeed } = element.here;
  if (angularSpeed) return spreadText(angularSpeed, 'angularSpeed', units);
  return spreadText(lineSpeed, 'speed', element.kind === 'ground' ? units : { ...units, speed: 'm/s' });
}

function loadText(element: PathElement, units: Units): string {
  const { torque, force } = element.here;
  if (torque) return spreadText(torque, 'torque', units);
  return force ? `${spreadText(force, 'force', units)} pull` : '';
}

function pathLines({ path, gears, here, hereNote, units }: Assessment): string[] {
  const gear = gears.find(({ id }) => id === here.gear)?.name ?? here.gear;
  const speed = formatQuantity(here.roadSpeed, 'speed', units.speed ?? 'km/h');
  const right = { align: 'right' } as const;
  return [
    plainLine(`Path of power, ${gear} gear at ${speed}`),
    ...(hereNote === null ? [] : wrap(plainLine(hereNote), WIDTH)),
    '',
    ...table(
      [
        { title: 'Element' },
        { title: 'Teeth', ...right },
        { title: 'Ratio', ...right },
        { title: 'Speed', ...right },
        { title: 'Torque', ...right },
        { title: 'Power', ...right },
        { title: 'Lowest reserve' },
      ],
      path.map((element) => [
        element.name,
        element.teeth ?? '',
        spreadText(element.ratio, 'number', units),
        speedText(element, units),
        loadText(element, units),
        spreadText(element.here.power, 'power', units),
        worstText(element),
      ]),
    ),
  ];
}

function gearLines({ gears, units }: Assessment): string[] {
  const right = { align: 'right' } as const;
  return [
    'Gears',
    '',
    ...table(
      [
        { title: 'Gear' },
        { title: 'Overall ratio', ...right },
        { title: 'Road speed at idle', ...right },
        { title: 'at redline', ...right },
      ],
      gears.map((gear) => [
        gear.name,
        spreadText(gear.overall, 'number', units),
        spreadText(gear.speedAtIdle, 'speed', units),
        spreadText(gear.speedAtRedline, 'speed', units),
      ]),
    ),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function sentence(finding: Finding, cases: Assessment['cases']): string {
  const governing = cases.find(({ id }) => id === finding.governing);
  const unsaid = finding.missing.filter(({ says }) => !finding.says.includes(says));
  return [
    finding.says,
    ...(governing ? [`Governed by ${governing.name}.`] : []),
    ...(finding.either === null ? [] : [`${capital(finding.either)}.`]),
    ...(unsaid.length > 0 ? [`Missing: ${unsaid.map(({ says }) => says).join('; ')}.`] : []),
    ...(finding.severity === 'holds' ? [] : [`At stake: ${finding.consequence}.`]),
  ].join(' ');
}

const ORDER: readonly Severity[] = ['fails', 'unknown', 'thin', 'holds'];

function findingLines({ findings, cases }: Assessment, paint: Paint): string[] {
  const counts = ORDER.map((severity) => [findings.filter((x) => x.severity === severity).length, severity] as const);
  const columns: Column[] = [
    { title: 'Severity', paint: (cell, text) => paint(ORDER.find((x) => x === text) ?? 'holds', cell) },
    { title: 'Element' },
    { title: 'Finding', wraps: true },
    { title: 'Reserve', align: 'right' },
    { title: 'Wanted', align: 'right' },
  ];
  return [
    `Findings: ${counts.flatMap(([n, severity]) => (n > 0 ? [`${n} ${severity}`] : [])).join(', ') || 'none'}`,
    '',
    ...table(
      columns,
      findings.map((finding) => [
        finding.severity,
        finding.element,
        sentence(finding, cases),
        reserveText(finding.reserve?.value ?? null),
        finding.reserve === null ? '' : reserveText(finding.wanted),
      ]),
    ),
  ];
}

function assumedLines({ assumed }: Assessment): string[] {
  if (assumed.length === 0) return [];
  const columns = [{ title: 'Assumed', wraps: true }, { title: 'Taken as' }, { title: 'Source', wraps: true }];
  return [
    '',
    ...table(
      columns,
      assumed.map(({ name, text, source }) => [name, text, source]),
    ),
  ];
}

function findOutLines({ findOut }: Assessment): string[] {
  if (findOut.length === 0) return [];
  return [
    '',
    'What to find out next, by how many findings it settles',
    '',
    ...table(
      [
        { title: 'Input', wraps: true },
        { title: 'Now' },
        { title: 'Settles', align: 'right' },
        { title: 'How', wraps: true },
      ],
      findOut.map(({ name, text, findings, recipe }) => [name, text, String(findings.length), recipe]),
    ),
  ];
}

function referenceLines({ reference }: Assessment): string[] {
  const lines = reference.flatMap(({ text }) => wrap(plainLine(text), WIDTH));
  return lines.length === 0 ? [] : ['', 'Against the reference vehicle', '', ...lines];
}

function shelfLines({ parts }: Assessment): string[] {
  const lacking = parts.filter(({ need, have }) => have < need);
  if (lacking.length === 0) return [];
  const right = { align: 'right' } as const;
  return [
    '',
    'Not on the shelf',
    '',
    ...table(
      [
        { title: 'Part', wraps: true },
        { title: 'Needed', ...right },
        { title: 'There', ...right },
      ],
      lacking.map(({ what, need, have }) => [what, String(need), String(have)]),
    ),
  ];
}

function part(value: number): string {
  return value === 0 ? '0' : value.toExponential(0).replace('e-', 'e−').replace('e+', 'e');
}

function closureLine(closure: Closure | null): string {
  if (closure === null)
    return 'The balance of torques and power could not be struck: the path is not known from end to end.';
  return `Torques on every shaft close to ${part(closure.torque)} of the torque through it; power in equals power out and losses to ${part(closure.power)}.${closure.shafts === null ? '' : ` Forces and moments on shafts and their bearings close to ${part(closure.shafts)} of the greatest.`}`;
}

/**
 * Lines of the report: title, path, gears, reference, findings, what the shelf lacks, what was assumed, what to find out, the balance, the caution.
 * @param colour sets severities off in colour; the words stay the same
 */
export function reportLines(assessment: Assessment, colour: boolean, beside: Beside | null): string[] {
  return [
    ...wrap(plainLine(`${assessment.name}: ${assessment.about}`), WIDTH),
    '',
    ...pathLines(assessment),
    '',
    ...gearLines(assessment),
    ...referenceLines(assessment),
    ...roadLines(assessment),
    '',
    ...findingLines(assessment, painter(colour)),
    ...(beside ? besideLines(beside) : []),
    ...shelfLines(assessment),
    ...bodyLines(assessment),
    ...armLines(assessment),
    ...turningLines(assessment),
    ...clearanceLines(assessment),
    ...adjusterLines(assessment),
    ...moveLines(assessment),
    ...assemblyLines(assessment),
    ...assumedLines(assessment),
    ...findOutLines(assessment),
    '',
    ...wrap(closureLine(assessment.closure), WIDTH),
    ...wrap(CAUTION, WIDTH),
  ];
}
