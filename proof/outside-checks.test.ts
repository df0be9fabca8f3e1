import { readFileSync } from 'node:fs';
import { explainFinding, openSession } from '@oddwheel/build/session';
import { METHODS } from '@oddwheel/mechanics/catalogue';
import { countsAsOutside, runCase } from '@oddwheel/mechanics/method/cases';
import { checkMethod } from '@oddwheel/mechanics/method/proof';
import { readInput } from '@oddwheel/mechanics/method/read-input';
import { describe, expect, test } from 'vitest';
import { ALL_CASES, TOPICS } from './cases/all.ts';
import { outsideChecksPage } from './outside-checks-page.ts';
import { methodNamed, rowLookup } from './run-cases.ts';

describe('worked examples, table values and library results', () => {
  for (const { topic, cases } of TOPICS)
    describe(topic, () => {
      for (const one of cases)
        test(`${one.id}: ${one.source.title}${one.source.at === undefined ? '' : `, ${one.source.at}`}`, () => {
          const { ok, faults, misses, worst } = runCase(methodNamed(one.method), one, rowLookup);
          const said = JSON.stringify({ faults, misses, worst });
          expect(ok, said).toBe(true);
        });
    });
});

describe('the set of checks', () => {
  test('each has its own name', () => {
    const ids = ALL_CASES.map(({ id }) => id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  test('at least 25 come from outside', () => {
    expect(ALL_CASES.filter(countsAsOutside).length).toBeGreaterThanOrEqual(25);
  });

  test('none that counts is worked out here, and each says where it stands in its source', () => {
    const placeless = ALL_CASES.filter(countsAsOutside).filter(({ source }) => source.at === undefined);
    expect(placeless.map(({ id }) => id)).toEqual([]);
  });

  test('the page is the same each time and names every check', () => {
    const page = outsideChecksPage();
    expect(outsideChecksPage()).toBe(page);
    expect(ALL_CASES.filter(({ id }) => !page.includes(`| ${id} |`)).map(({ id }) => id)).toEqual([]);
  });
});

describe('the working that a method shows is the one it computes', () => {
  for (const method of METHODS) {
    const cases = ALL_CASES.filter((one) => one.method === method.id);
    if (cases.length === 0) continue;
    test(method.id, () => {
      const misses = cases.flatMap((one) => {
        const read = readInput(method, one.given, rowLookup);
        return read.ok ? checkMethod(method, read.input) : [{ at: one.id, problem: JSON.stringify(read.faults) }];
      });
      expect(misses).toEqual([]);
    });
  }

  test('every method that the working of a build shows has a case; the others have theirs beside the code', () => {
    const shown = new Set(
      [
        '../examples/marsh-hauler/build.json',
        './builds/three-pair-train.json',
        './builds/open-engine-curve.json',
      ].flatMap(methodsShown),
    );
    expect(shown.size).toBeGreaterThan(8);
    const bare = [...shown].filter((id) => !id.startsWith('reserve.') && !ALL_CASES.some((one) => one.method === id));
    expect(bare).toEqual([]);
  });
});

/** Ids of the methods in the workings of all findings of a build. */
function methodsShown(file: string): string[] {
  const opened = openSession(readFileSync(new URL(file, import.meta.url), 'utf8'));
  if (!opened.ok) throw new Error(file);
  const { session } = opened;
  return session.assessment.findings.flatMap(
    ({ id }) => explainFinding(session, id)?.workings.map((working) => working.methodId) ?? [],
  );
}
