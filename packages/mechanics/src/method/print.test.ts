import { describe, expect, it } from 'vitest';
import {
  add,
  branch,
  choose,
  cross,
  div,
  dot,
  fn,
  mul,
  neg,
  norm,
  num,
  PI,
  pow,
  product,
  sub,
  sum,
  sym,
  when,
} from './expr.ts';
import { stepMathML, toMathML } from './mathml.ts';
import { stepSentence } from './sentence.ts';
import { readXml } from './testing/xml.ts';
import { stepText, toText } from './text.ts';

const names = {
  L: { symbol: 'L', form: 'value' },
  C: { symbol: 'C', form: 'value' },
  a: { symbol: 'α', form: 'value' },
  p: { symbol: 'p', form: 'value' },
  z1: { symbol: 'z_1', form: 'integer' },
  z2: { symbol: 'z_2', form: 'integer' },
  r: { symbol: 'r', form: 'vector' },
  F: { symbol: 'F_t', form: 'vector' },
  i: { symbol: 'i', form: 'list' },
} as const;

const text = (expr: Parameters<typeof toText>[0]): string => toText(expr, names);
const inner = (expr: Parameters<typeof toText>[0]): string =>
  toMathML(expr, names)
    .replace(/^<math[^>]*><mrow>/, '')
    .replace(/<\/mrow><\/math>$/, '');

describe('a formula as text', () => {
  it('prints a sum of fractions on one line', () => {
    const length = add(div(mul(2, 'C', fn('cos', 'a')), 'p'), div(add('z1', 'z2'), 2));
    expect(stepText({ key: 'L', is: length, says: '' }, names)).toBe('L = 2·C·cos α / p + (z₁ + z₂) / 2');
  });
  it.each([
    [sub('L', sub('C', 'p')), 'L − (C − p)'],
    [add('L', neg('C'), num(-2)), 'L − C − 2'],
    [sub('L', neg('C')), 'L − (−C)'],
    [neg(add('L', 'C')), '−(L + C)'],
    [div(div('L', 'C'), 'p'), '(L / C) / p'],
    [div('L', mul('C', 'p')), 'L / (C·p)'],
    [mul(fn('cos', 'a'), 'L'), 'cos(α)·L'],
    [pow(fn('sin', 'a'), 2), '(sin α)²'],
    [pow(neg('L'), 2), '(−L)²'],
    [pow('L', num(1 / 3, '1/3')), 'L^(1/3)'],
    [pow('L', -2), 'L⁻²'],
    [mul(2e-9, 'L'), '2·10⁻⁹·L'],
    [fn('sqrt', add(pow('L', 2), pow('C', 2))), '√(L² + C²)'],
    [fn('max', 'L', 0), 'max(L; 0)'],
    [fn('abs', sub('L', 'C')), '|L − C|'],
    [choose([branch(when('z1', '>=', 17), 'L')], 0), '{ L if z₁ ≥ 17; 0 otherwise }'],
    [norm(cross('r', 'F')), '‖r × F_t‖'],
    [dot('r', 'F'), 'r ⋅ F_t'],
    [sym('F', 2), 'F_t,z'],
    [sym('i', 0), 'i₁'],
    [mul(PI, product('i')), 'π·(∏ i_k)'],
    [add(), '0'],
    [mul('L'), 'L'],
  ])('%#: %s', (expr, expected) => expect(text(expr)).toBe(expected));
  it('names the key that has no symbol', () => {
    expect(() => text(sym('missing'))).toThrow('There is no symbol for "missing".');
  });
});

describe('a formula as MathML', () => {
  it('stacks fractions and needs no brackets in them', () => {
    expect(inner(div(add('z1', 'z2'), 2))).toBe(
      '<mfrac><mrow><mrow><msub><mi>z</mi><mn>1</mn></msub><mo>+</mo><msub><mi>z</mi><mn>2</mn></msub></mrow></mrow><mrow><mn>2</mn></mrow></mfrac>',
    );
  });
  it('puts a thin space between symbols, and a dot before figures', () => {
    expect(inner(mul(2, 'C'))).toContain('<mn>2</mn><mo lspace="0" rspace="0.1667em">\u2062</mo><mi>C</mi>');
    expect(inner(mul('C', 2))).toContain('<mi>C</mi><mo>⋅</mo><mn>2</mn>');
    expect(inner(mul(2, div(1, 'C')))).toContain('<mo>⋅</mo><mfrac>');
  });
  it('prints function names, π, cases and vectors', () => {
    expect(inner(fn('cos', 'a'))).toContain('<mi>cos</mi>');
    expect(inner(PI)).toBe('<mi>π</mi>');
    expect(inner(choose([branch(when('L', '<', 'C'), 1)], 0))).toContain('<mo>&lt;</mo>');
    expect(inner(sym('r'))).toBe('<mover><mi>r</mi><mo stretchy="false">→</mo></mover>');
    expect(inner(pow(fn('sin', 'a'), 2))).toContain('<msup><mi>sin</mi><mrow><mn>2</mn></mrow></msup>');
  });
  it('escapes what symbols hold', () => {
    const odd = { odd: { symbol: 'a<b&"c"', form: 'value' } };
    expect(toMathML(sym('odd'), odd)).toContain('<mi>a&lt;b&amp;&quot;c&quot;</mi>');
  });
  it('prints a solved step with both its sides, on a line of its own', () => {
    const step = { key: 'L', left: pow('L', 2), right: sym('C'), says: '' };
    expect(stepMathML(step, names)).toMatch(/^<math xmlns="[^"]*" display="block">.*<mo>=<\/mo><mi>C<\/mi>/);
  });
});

describe('a formula as a sentence', () => {
  it.each([
    [
      add(div(mul(2, 'C', fn('cos', 'a')), 'p'), div(add('z1', 'z2'), 2)),
      'L equals 2 C cosine alpha over p plus open bracket z 1 plus z 2 close bracket over 2',
    ],
    [fn('sqrt', add(pow('C', 2), pow('p', 3))), 'L equals root of open bracket C squared plus p cubed close bracket'],
    [mul('C', num(1 / 3, '1/3'), PI), 'L equals C times open bracket 1 over 3 close bracket pi'],
    [
      choose([branch(when('C', '<=', 'p'), 1)], sum('i')),
      'L equals open bracket 1 if C is at most p, otherwise sum of all i close bracket',
    ],
  ])('%#', (is, expected) => expect(stepSentence({ key: 'L', is, says: '' }, names)).toBe(expected));
});

describe('the XML checker of these tests', () => {
  it.each(['<a><b></a></b>', '<a>&</a>', '<a x=1></a>', '<a x="1" x="2"></a>', '<a></a><b></b>', '<a>'])(
    'refuses %s',
    (bad) => {
      expect(() => readXml(bad)).toThrow();
    },
  );
});
