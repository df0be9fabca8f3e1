import type { Finding } from '@oddwheel/build/assess/types';
import type { Json } from '@oddwheel/build/document/json';
import { printFile } from '@oddwheel/build/document/print';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';
import { buildOf, type KnownGood, knownGood } from './build-of.ts';

/**
 * Ordinary production layouts, recalled from typical specifications of their class (`memory`): what has run for tens of
 * thousands of kilometres must not read as failing, and the same with a part two sizes down must.
 */
const LAYOUTS = knownGood();

/** Checks that a proven drive passes; bodies and room round the shafts of these layouts are not recalled. */
const STRENGTH = /^(shaft|bearing|gear|chain|hub|adjust|target|road)\b/;
/** Nobody recalls how the rings of these bearings are held. */
const NOT_RECALLED = /^bearing\.(location|thrust)$/;

const UNCHANGED = new Map<string, readonly Finding[]>();

function findingsOf(layout: KnownGood, change?: (build: Json) => void): readonly Finding[] {
  const known = UNCHANGED.get(layout.id);
  if (!change && known) return known;
  const build = JSON.parse(JSON.stringify(buildOf(layout))) as Json;
  change?.(build);
  // Ends of what is open are tried where nothing may fail; a part two sizes down fails in the middle already.
  const opened = openSession(printFile(build), change ? { ends: 'not yet' } : {});
  if (!opened.ok) throw new Error(`${layout.id}: ${JSON.stringify(opened.faults)}`);
  const { findings } = opened.session.assessment;
  if (!change) UNCHANGED.set(layout.id, findings);
  return findings;
}

const failing = (findings: readonly Finding[]): string[] =>
  findings
    .filter(({ check, severity }) => severity === 'fails' && STRENGTH.test(check) && !NOT_RECALLED.test(check))
    .map(({ id, says }) => `${id}: ${says}`);

describe('known-good layouts', () => {
  test('six at least', () => expect(LAYOUTS.length).toBeGreaterThanOrEqual(6));

  test.each(LAYOUTS.map((layout) => [layout.id, layout] as const))(
    '%s draws no failing finding of strength',
    (_, layout) => {
      expect(failing(findingsOf(layout))).toEqual([]);
    },
  );

  const chains = LAYOUTS.flatMap((layout) =>
    layout.two_sizes_down
      .filter(({ part, expect: verdict }) => part === 'chain' && verdict === 'fails')
      .map(({ change }) => [layout.id, String(change.to), layout] as const),
  );
  test.each(chains)('%s with a chain of size %s fails', (_, size, layout) => {
    const findings = findingsOf(layout, (build) => {
      (build as unknown as { path: { stages: { chain: { chain: string } } } }).path.stages.chain.chain = size;
    });
    expect(findings.find(({ check }) => check === 'chain.pull')?.severity).toBe('fails');
  });

  const bored = (layout: KnownGood, teeth: number) =>
    findingsOf(layout, (build) => {
      (
        build as unknown as { path: { stages: { chain: { teeth: { driver: number } } } } }
      ).path.stages.chain.teeth.driver = teeth;
    }).find(({ check }) => check === 'chain.bore')?.severity;
  test.each(LAYOUTS.map((layout) => [layout.id, layout] as const))(
    '%s: its front sprocket fits on its shaft, and one of 8 teeth would not',
    (_, layout) => {
      expect(findingsOf(layout).find(({ check }) => check === 'chain.bore')?.severity).toBe('holds');
      expect(bored(layout, 8)).toBe('thin');
    },
  );

  const parts = (part: string) =>
    LAYOUTS.flatMap((layout) =>
      layout.two_sizes_down
        .filter((one) => one.part === part && one.expect === 'fails or thin')
        .map(({ change }) => [layout.id, String(change.to), layout] as const),
    );
  const output = (build: Json) =>
    (
      build as unknown as {
        brief: { engine: { output: { seats: { near: { row: string }; sprocket: { diameter: string } } } } };
      }
    ).brief.engine.output.seats;
  const worst = (findings: readonly Finding[], at: RegExp, of: RegExp): readonly string[] =>
    findings.filter(({ check, address }) => of.test(check) && at.test(address)).map(({ severity }) => severity);

  test.each(parts('output_shaft'))('%s with an output shaft of %s mm fails', (_, size, layout) => {
    const findings = findingsOf(layout, (build) => {
      output(build).sprocket.diameter = `${size} mm`;
    });
    expect(worst(findings, /output$/, /^shaft\.(yield|life)$/)).toContain('fails');
  });

  test.each(parts('output_bearing'))('%s with a %s beside its sprocket no longer holds', (_, row, layout) => {
    const change = (build: Json): void => {
      output(build).near.row = row;
    };
    const before = findingsOf(layout);
    const after = findingsOf(layout, change);
    const reserve = (findings: readonly Finding[]) =>
      findings.find(({ check, address }) => check === 'bearing.static' && address.endsWith('/near'))?.reserve?.value ??
      0;
    expect(reserve(after)).toBeLessThan(reserve(before) * 0.75);
    expect(worst(after, /near$/, /^bearing\.(life|static)$/)).not.toContain('holds');
  });
});
