/** Reading JSON: RFC 8259 (The JavaScript Object Notation Data Interchange Format), with JSON.parse as the referee. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJsonText } from './json-text.ts';
import { DEEPEST } from './syntax.ts';

function faultsOf(text: string) {
  const parsed = parseJsonText(text);
  return parsed.ok ? [] : parsed.faults;
}

describe('what is read', () => {
  const text = '{\n  "path": {\n    "a/b": [17, "1/4 in"]\n  }\n}\n';

  it('gives the value that JSON.parse gives', () => {
    const parsed = parseJsonText(text);
    expect(parsed.ok && parsed.value).toEqual(JSON.parse(text));
  });

  it('tells where each address stands: a member where its key begins', () => {
    const parsed = parseJsonText(text);
    const locate = (address: string) => (parsed.ok ? parsed.locate(address) : undefined);
    expect(locate('')).toEqual({ line: 1, column: 1 });
    expect(locate('/path')).toEqual({ line: 2, column: 3 });
    expect(locate('/path/a~1b')).toEqual({ line: 3, column: 5 });
    expect(locate('/path/a~1b/1')).toEqual({ line: 3, column: 17 });
    expect(locate('/path/none')).toBeUndefined();
  });

  it('reads past a byte order mark, which takes no column (RFC 8259, section 8.1)', () => {
    const parsed = parseJsonText('\ufeff{"a": 1}');
    expect(parsed.ok && parsed.value).toEqual({ a: 1 });
    expect(parsed.ok && parsed.locate('/a')).toEqual({ line: 1, column: 2 });
  });

  it('counts lines alike with CRLF', () => {
    const parsed = parseJsonText('{\r\n  "a": 1\r\n}');
    expect(parsed.ok && parsed.locate('/a')).toEqual({ line: 2, column: 3 });
  });

  it('keeps keys that only look special as plain keys', () => {
    const parsed = parseJsonText('{"constructor": 1, "toString": 2}');
    expect(parsed.ok && Object.entries(parsed.value as object)).toEqual([
      ['constructor', 1],
      ['toString', 2],
    ]);
  });
});

describe('what is refused, and how it is said', () => {
  const cases: [
    name: string,
    text: string,
    code: string,
    line: number,
    column: number,
    read: string,
    accepted: RegExp,
  ][] = [
    ['an empty file', '', 'json.empty', 1, 1, '', /one JSON object/],
    ['a file of white space', ' \n\n', 'json.empty', 1, 1, '', /one JSON object/],
    ['a comma too many', '{\n  "a": 1,\n}', 'json.syntax', 3, 1, '}', /^A key in double quotes/],
    ['a comma missing', '{\n  "a": 1\n  "b": 2\n}', 'json.syntax', 3, 3, '"b"', /^A comma before the next key/],
    ['a comma missing in a list', '[1 2]', 'json.syntax', 1, 4, '2', /^A comma before the next item/],
    ['a colon missing', '{"a" 1}', 'json.syntax', 1, 6, '1', /^A colon/],
    ['a key without quotes', '{teeth: 17}', 'json.syntax', 1, 2, 'teeth', /^A key in double quotes/],
    ['a value missing', '{"a": }', 'json.syntax', 1, 7, '}', /^A value/],
    ['a leading zero', '{"a": 017}', 'json.syntax', 1, 7, '017', /^A value/],
    ['a unit without quotes', '{"a": 17mm}', 'json.syntax', 1, 7, '17mm', /^A value/],
    ['a wrong word', '[True]', 'json.syntax', 1, 2, 'True', /^A value/],
    ['a comment', '{} // mine', 'json.syntax', 1, 4, '/', /^Nothing more/],
    ['no end', '{"a": [1', 'json.syntax', 1, 9, 'the end of the file', /^A comma before the next item/],
    ['the wrong bracket', '[1}', 'json.syntax', 1, 3, '}', /\] to close/],
    ['a string without end', '{"a": "17\n}', 'json.syntax', 1, 7, '"17', /closing|double quote/],
    ['an unknown escape', '["\\x"]', 'json.syntax', 1, 3, '\\', /\\n/],
    ['a control character in a string', '["a\tb"]', 'json.syntax', 1, 4, '\t', /escape/],
    ['a number beyond all bounds', '{"a": 1e999}', 'json.not-finite', 1, 7, '1e999', /1.79e308/],
    ['a key that reaches into the program', '{\n "__proto__": {}}', 'json.unsafe-key', 2, 2, '__proto__', /other key/],
    ['too many levels', '['.repeat(DEEPEST + 1), 'json.too-deep', 1, DEEPEST + 1, '[', /levels/],
  ];
  it.each(cases)('%s', (_name, text, code, line, column, read, accepted) => {
    const faults = faultsOf(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ code, line, column, read });
    expect(faults[0]?.accepted).toMatch(accepted);
  });

  it('reads very long strings, and says quickly when one has no end', () => {
    const long = 'a\\n'.repeat(500_000);
    expect(parseJsonText(`["${long}"]`).ok).toBe(true);
    expect(faultsOf(`["${long}`)[0]).toMatchObject({ code: 'json.syntax', column: 2 });
  });

  it('takes 100 levels', () => {
    expect(parseJsonText('['.repeat(DEEPEST) + ']'.repeat(DEEPEST)).ok).toBe(true);
  });

  it('lists every duplicate key, each with its own address and the line of the second', () => {
    const faults = faultsOf('{\n "s": {"n": 1, "n": 2},\n "t": 1,\n "t": 1e999\n}');
    expect(faults.map(({ code, address, line, column }) => [code, address, line, column])).toEqual([
      ['json.duplicate-key', '/s/n', 2, 16],
      ['json.duplicate-key', '/t', 4, 2],
    ]);
    expect(faults[1]?.problem).toContain('first in line 3');
  });
});

describe('agreement with JSON.parse', () => {
  const accepts = (text: string): boolean => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };

  it('reads every JSON text to the same value', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        fc.pre(!text.includes('__proto__'));
        const parsed = parseJsonText(text);
        expect(parsed.ok && parsed.value).toEqual(JSON.parse(text));
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('accepts no text that JSON.parse refuses, and refuses none that it accepts', () => {
    const pieces = [
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"a"',
      '"',
      '\\',
      '1',
      '-',
      '0',
      '.',
      'e',
      '+',
      'true',
      'nul',
      ' ',
      '\n',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 8 }), (parts) => {
        const text = parts.join('');
        const duplicates = !parseJsonText(text).ok && faultsOf(text).every(({ code }) => code === 'json.duplicate-key');
        expect(parseJsonText(text).ok || duplicates).toBe(accepts(text));
      }),
      { seed: 2, numRuns: 5000 },
    );
  });

  it('the same with one character of a good text taken out or put in', () => {
    const arbitrary = fc.tuple(
      fc.json({ maxDepth: 3 }),
      fc.nat(),
      fc.constantFrom('', ',', '"', '}', '0', '\\', '\u0001', 'e'),
    );
    fc.assert(
      fc.property(arbitrary, ([good, where, piece]) => {
        const at = where % good.length;
        const text = good.slice(0, at) + piece + good.slice(piece === '' ? at + 1 : at);
        const own = faultsOf(text).map(({ code }) => code);
        fc.pre(own.every((code) => code === 'json.syntax' || code === 'json.empty'));
        expect(own.length === 0).toBe(accepts(text));
      }),
      { seed: 3, numRuns: 2000 },
    );
  });
});
