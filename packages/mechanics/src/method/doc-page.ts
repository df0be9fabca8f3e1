import { siUnit } from '@oddwheel/quantity/kinds';
import { rangeWords } from './limits.ts';
import type { Method, Param, Source } from './method.ts';
import { paramsOf, symbolParts } from './names.ts';
import { stepText, toText } from './text.ts';
import { kindOfParam } from './working.ts';

const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\s*\n\s*/g, ' ');

const tableRow = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  return [tableRow(head), `|${head.map(() => '---').join('|')}|`, ...rows.map(tableRow)];
}

function unitCell(param: Param): string {
  const kind = kindOfParam(param);
  if (kind === null) return param.form === 'choice' ? 'one of the words' : 'text';
  const unit = siUnit(kind);
  if (param.form === 'integer') return 'whole number';
  const plain = unit === '' ? 'plain number' : unit;
  if (param.form === 'vector') return `vector, ${plain}`;
  return param.form === 'list' ? `list, ${plain}` : plain;
}

function rangeCell(param: Param): string {
  switch (param.form) {
    case 'value':
      return rangeWords(param.range, param.kind);
    case 'integer':
      return rangeWords(param.range, 'count');
    case 'list': {
      const least = param.atLeast === undefined ? '' : `at least ${param.atLeast} entries`;
      const each = rangeWords(param.range, param.kind);
      return [least, each === '' ? '' : `each ${each}`].filter((words) => words !== '').join(', ');
    }
    case 'choice':
      return param.choices.join(', ');
    default:
      return '';
  }
}

function defaultCell(param: Param): string {
  return 'default' in param && param.default !== undefined ? String(param.default) : '';
}

/** A source as one line, with how it is known where that is not from a page that was read. */
export function sourceLine(source: Source): string {
  const named = [source.title, source.edition, source.at]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
  const how = {
    read: '',
    memory: ' (from memory)',
    derived: ' (worked out here)',
    'common practice': ' (common practice)',
  };
  return `${named}${how[source.how]}`;
}

/**
 * The page of one method in Markdown: what it gives, inputs, steps with their formulas, results, what it takes for granted, sources. All numbers on it
 * are in SI units.
 * @throws RangeError when a step names a value that has no symbol.
 */
export function methodPage(method: Method): string {
  const names = paramsOf(method);
  const symbolCell = (key: string): string => {
    const { vector } = symbolParts(names, key);
    return `${toText({ op: 'sym', key }, names)}${vector ? ' (vector)' : ''}`;
  };
  const inputRows = Object.entries(method.inputs).map(([key, param]) => [
    symbolCell(key),
    `\`${key}\``,
    param.meaning,
    unitCell(param),
    rangeCell(param),
    defaultCell(param),
  ]);
  const outputRows = Object.entries(method.outputs).map(([key, param]) => [
    symbolCell(key),
    `\`${key}\``,
    param.meaning,
    unitCell(param),
    method.results.includes(key) ? 'result' : 'on the way',
  ]);
  const steps = method.steps.flatMap((step, i) => [
    `${i + 1}. ${step.says}`,
    '',
    `       ${stepText(step, names)}${'is' in step ? '' : `   (solved for ${toText({ op: 'sym', key: step.key }, names)})`}`,
    '',
  ]);
  return [
    `# ${method.id}`,
    '',
    `${method.gives}.`,
    '',
    '## Takes',
    '',
    ...table(['symbol', 'key', 'meaning', 'unit', 'range', 'default'], inputRows),
    '',
    '## Gives',
    '',
    ...table(['symbol', 'key', 'meaning', 'unit', 'role'], outputRows),
    '',
    ...(steps.length === 0 ? [] : ['## Steps', '', ...steps]),
    ...(method.holds === undefined || method.holds.length === 0
      ? []
      : ['## Takes for granted', '', ...method.holds.map((line) => `- ${line}`), '']),
    '## Sources',
    '',
    ...method.sources.map((source) => `- ${sourceLine(source)}`),
    '',
  ].join('\n');
}
