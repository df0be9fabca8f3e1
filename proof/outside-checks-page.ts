import { type CaseResult, type Compared, countsAsOutside, runCase } from '@oddwheel/mechanics/method/cases';
import type { Method, Param, Source } from '@oddwheel/mechanics/method/method';
import { kindOfParam } from '@oddwheel/mechanics/method/working';
import { siUnit } from '@oddwheel/quantity/kinds';
import { ALL_CASES, TOPICS } from './cases/all.ts';
import type { ProofCase } from './cases/case.ts';
import { methodNamed, rowLookup } from './run-cases.ts';

const HOW_WORDS: Readonly<Record<Source['how'], string>> = {
  read: 'read',
  memory: 'from memory',
  derived: 'worked out here',
  'common practice': 'common practice',
};

const KIND_WORDS: Readonly<Record<ProofCase['kind'], string>> = {
  'published-example': 'published example',
  'table-spot': 'table value',
  constructed: 'own making',
  'reference-library': 'reference library',
};

const INTRO = `# Outside checks

What the methods are held against. A check counts when its expected value was published by somebody else (a worked example, a
value of a table) or comes from a general-purpose numerical library. The last column says whether the source was read or is
quoted from memory; a value from memory is to be looked up before anything rests on it. Where a source prints rounded
numbers, the rounding is what is allowed. Values that this project worked out itself stand in a list of their own: they check
the arithmetic and do not count.

The numbers are design aids: local codes, inspection and licensed practice decide.

Made from the cases under \`proof/cases\`; do not edit by hand. \`npm test\` runs every one of them.
`;

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** Six figures are enough to read; the tests compare at full precision. */
const figure = (value: number | string): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(7))) : value;

function unitOf(method: Method, key: string): string {
  const param: Param | undefined = method.outputs[key.split('/')[0] ?? key];
  const kind = param === undefined ? null : kindOfParam(param);
  return kind === null ? '' : siUnit(kind);
}

function comparedText(method: Method, { key, expected, got, allowed }: Compared): string {
  const unit = unitOf(method, key);
  const within = typeof expected === 'string' ? '' : ` ± ${String(Number(allowed.toPrecision(2)))}`;
  return `${key}: ${figure(expected)}${within}${unit === '' ? '' : ` ${unit}`}, got ${figure(got)}`;
}

function checkedText(method: Method, result: CaseResult): string {
  const lines = result.compared.map((one) => comparedText(method, one));
  return [...lines, ...result.faults, ...(result.ok ? [] : ['**missed**'])].join('<br>');
}

function editionText({ edition }: Source): string {
  if (edition === undefined) return '';
  return /^\d+(\.\d+)+$/.test(edition) ? `version ${edition}` : `${edition} edition`;
}

function sourceText(source: ProofCase['source']): string {
  const text = [source.title, editionText(source), source.at ?? ''].filter((part) => part !== '').join(', ');
  return source.address === undefined ? text : `${text} (seen at ${source.address})`;
}

function row(one: ProofCase): string {
  const method = methodNamed(one.method);
  const result = runCase(method, one, rowLookup);
  const note = one.note === undefined ? '' : `<br>*${one.note}*`;
  const cells = [
    one.id,
    `[${one.method}](methods/${one.method}.md)`,
    checkedText(method, result),
    `${sourceText(one.source)}${note}`,
    `${KIND_WORDS[one.kind]}, ${HOW_WORDS[one.source.how]}`,
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

const HEAD = '| check | method | expected and got, in SI units | source | how |\n|---|---|---|---|---|';

function tables(level: string, keep: (one: ProofCase) => boolean): string {
  return TOPICS.flatMap(({ topic, cases }) => {
    const rows = cases.filter(keep).map(row);
    return rows.length === 0 ? [] : [`${level} ${topic}\n\n${HEAD}\n${rows.join('\n')}\n`];
  }).join('\n');
}

/** The page of outside checks, as Markdown: what counts, then every case with its expected value, what the method gives, and the source. */
export function outsideChecksPage(): string {
  const outside = ALL_CASES.filter(countsAsOutside);
  const read = outside.filter(({ source }) => source.how === 'read').length;
  const count = `${outside.length} checks count: ${read} with a source that was read, ${outside.length - read} from memory. ${ALL_CASES.length - outside.length} more check the arithmetic only.`;
  return [
    INTRO,
    `${count}\n`,
    tables('##', countsAsOutside),
    '## Arithmetic only, do not count\n',
    tables('###', (one) => !countsAsOutside(one)),
  ].join('\n');
}
