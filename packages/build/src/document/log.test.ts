/** The log: one record whatever happens to its lines. All entries here are invented. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryContent, foldLog, type LogEntry, parseLogEntry, parseLogLines } from './log.ts';
import { appendedLines } from './ndjson.ts';

function entry(id: string, more: Partial<LogEntry> = {}): LogEntry {
  return {
    id,
    kind: 'run-out',
    taken: '2031-05-04T10:00:00Z',
    logged: '2031-05-04T10:00:01Z',
    body: { tir: '4 thou' },
    ...more,
  };
}

const ids = (entries: readonly LogEntry[]) => entries.map(({ id }) => id);

describe('reading lines', () => {
  const good = [entry('phone-1.1'), entry('phone-1.2', { after: 'phone-1.1' })];
  const [one, two] = good.map((line) => JSON.stringify(line)) as [string, string];

  it('a torn last line is set aside, with its number', () => {
    const log = parseLogLines(`${one}\n${two.slice(0, 40)}`);
    expect(ids(log.entries)).toEqual(['phone-1.1']);
    expect(log.torn).toMatchObject({ line: 2, text: two.slice(0, 40) });
    expect(log.bad).toEqual([]);
  });

  it('what is written after a torn line stands on a line of its own, and nothing is taken away', () => {
    const torn = `${one}\n${two.slice(0, 40)}`;
    const text = torn + appendedLines(torn, [JSON.parse(two)]);
    expect(text.startsWith(torn)).toBe(true);
    const log = parseLogLines(text);
    expect(log.entries).toEqual(good);
    expect(log.torn).toBeUndefined();
    expect(log.bad).toMatchObject([{ line: 2, text: two.slice(0, 40) }]);
  });

  it('a last line that only lacks its line end is whole', () => {
    expect(parseLogLines(`${one}\r\n\n${two}`)).toEqual({ entries: good, bad: [] });
  });

  it('any cut of a log loses at most the line that was cut', () => {
    const whole = `${one}\n${two}\n`;
    for (let cut = 0; cut <= whole.length; cut += 1) {
      const log = parseLogLines(whole.slice(0, cut));
      expect(log.entries).toEqual(good.slice(0, cut >= whole.length - 1 ? 2 : cut >= one.length ? 1 : 0));
      expect(log.bad).toEqual([]);
    }
  });

  it('unknown kinds are kept; lines that are no entries are reported in their order', () => {
    const odd = entry('phone-1.3', { kind: 'kind of the future', body: [1] });
    const log = parseLogLines(`nonsense\n${JSON.stringify(odd)}\n{"id":"x"}\n{"a":1,"a":2}\n`);
    expect(log.entries).toEqual([odd]);
    expect(log.bad.map(({ line }) => line)).toEqual([1, 3, 4]);
  });

  it.each<[string, unknown, string]>([
    ['no object', 5, ''],
    ['no counter', { ...entry('phone') }, '/id'],
    ['no kind', { ...entry('p.1'), kind: '' }, '/kind'],
    ['a time that is none', { ...entry('p.1'), taken: 'yesterday' }, '/taken'],
    ['a predecessor that is no id', { ...entry('p.1'), after: 'x' }, '/after'],
    ['a hash that is none', { ...entry('p.1'), design: 'abc' }, '/design'],
    ['no body', { id: 'p.1', kind: 'k', taken: '2031-05-04T10:00Z', logged: '2031-05-04T10:00+02:00' }, '/body'],
    ['a strike of nothing', { ...entry('p.1'), kind: 'strike' }, '/body/of'],
    ['a key of another format', { ...entry('p.1'), extra: 1 }, '/extra'],
    ['a key that reaches into the program', JSON.parse('{"id":"p.1","body":{"__proto__":1}}'), '/body/__proto__'],
  ])('refused: %s', (_name, value, address) => {
    const parsed = parseLogEntry(value);
    expect(parsed.ok ? [] : parsed.faults.map((fault) => fault.address)).toContain(address);
  });
});

describe('folding', () => {
  it('sequence comes from `after`, not from clocks or the order of lines', () => {
    const log = [
      entry('b.1', { after: 'a.2', taken: '2031-01-01T00:00:00Z' }),
      entry('a.2', { after: 'a.10' }),
      entry('a.10', { after: null, taken: '2031-12-31T00:00:00Z' }),
      entry('a.3'),
    ];
    expect(ids(foldLog(log).entries)).toEqual(['a.3', 'a.10', 'a.2', 'b.1']);
  });

  it('a strike marks an earlier entry and keeps it; striking the strike brings it back', () => {
    const strike = entry('a.2', { kind: 'strike', body: { of: 'a.1' } });
    const back = entry('a.3', { kind: 'strike', body: { of: 'a.2' } });
    expect(foldLog([entry('a.1'), strike])).toMatchObject({ struck: ['a.1'] });
    expect(ids(foldLog([entry('a.1'), strike]).entries)).toEqual(['a.1', 'a.2']);
    expect(foldLog([entry('a.1'), strike, back]).struck).toEqual(['a.2']);
  });

  it('one id with two contents is a clash, and both are kept', () => {
    const fold = foldLog([entry('a.1', { body: 2 }), entry('a.1', { body: 1 }), entry('a.1', { body: 2 })]);
    expect(fold.clashes).toEqual(['a.1']);
    expect(fold.entries.map(({ body }) => body)).toEqual([1, 2]);
  });

  it('the same entry sent again later is no clash; the first time it was logged counts', () => {
    const again = entry('a.1', { logged: '2031-05-05T00:00:00Z' });
    expect(foldLog([again, entry('a.1')])).toEqual({
      entries: [entry('a.1')],
      struck: [],
      clashes: [],
      gaps: [],
      loops: [],
    });
  });

  it('a missing predecessor is a gap, and a loop is reported and kept', () => {
    const fold = foldLog([
      entry('a.3', { after: 'a.2' }),
      entry('b.1', { after: 'b.2' }),
      entry('b.2', { after: 'b.1' }),
    ]);
    expect(fold.gaps).toEqual([{ id: 'a.3', after: 'a.2' }]);
    expect(fold.loops).toEqual(['b.1', 'b.2']);
    expect(ids(fold.entries)).toEqual(['a.3', 'b.1', 'b.2']);
  });

  it('shuffled and repeated lines fold to the same record', () => {
    const id = fc.tuple(fc.constantFrom('a', 'b', 'phone-1'), fc.nat(6)).map(([device, n]) => `${device}.${n}`);
    const one = fc.record({
      id,
      strike: fc.option(id, { nil: undefined, freq: 4 }),
      after: fc.option(id, { nil: undefined }),
      body: fc.nat(1),
      logged: fc.constantFrom('2031-05-04T10:00:01Z', '2031-05-04T11:00:00Z'),
    });
    const log = fc.array(one, { maxLength: 14 }).map((all) =>
      all.map(({ id, strike, after, body, logged }) =>
        entry(id, {
          logged,
          ...(after === undefined ? {} : { after }),
          ...(strike === undefined ? { body } : { kind: 'strike', body: { of: strike } }),
        }),
      ),
    );
    const order = fc.array(fc.nat(), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(log, order, (entries, picks) => {
        const repeats =
          entries.length === 0 ? [] : picks.slice(0, 10).map((n) => entries[n % entries.length] as LogEntry);
        const shuffled = [...entries, ...repeats]
          .map((line, i) => ({ line, at: picks[i] ?? 0 }))
          .sort((a, b) => a.at - b.at)
          .map(({ line }) => line);
        const fold = foldLog(entries);
        expect(foldLog(shuffled)).toEqual(fold);
        // Nothing is lost, and nothing comes before what it follows, loops apart.
        expect(new Set(fold.entries.map(entryContent))).toEqual(new Set(entries.map(entryContent)));
        const first = new Map<string, number>();
        for (const [i, line] of fold.entries.entries()) if (!first.has(line.id)) first.set(line.id, i);
        for (const line of fold.entries) {
          if (typeof line.after !== 'string' || fold.loops.includes(line.id)) continue;
          expect(first.get(line.after) ?? -1).toBeLessThan(first.get(line.id) ?? 0);
        }
      }),
      { seed: 31, numRuns: 1500 },
    );
  });
});
