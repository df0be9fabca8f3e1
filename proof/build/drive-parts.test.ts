import { readFileSync } from 'node:fs';
import type { Finding } from '@oddwheel/build/assess/types';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';

type Tree = { [key: string]: Tree };
const demo = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}/build.json`, import.meta.url), 'utf8');

/** Findings at the middle of all ranges, after a change of the demo. */
function findings(name: string, change: (stages: Record<string, Record<string, unknown>>) => void): readonly Finding[] {
  const build = JSON.parse(demo(name)) as Tree;
  const stages = build.path?.stages as unknown as Record<string, Record<string, unknown>>;
  change(stages);
  const opened = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment.findings;
}

const one = (list: readonly Finding[], id: string): Finding | undefined =>
  list.find((finding) => finding.id.startsWith(id));
const stage = (stages: Record<string, Record<string, unknown>>, id: string): Record<string, unknown> => {
  const found = stages[id];
  if (!found) throw new Error(id);
  return found;
};

describe('a bevel pair', () => {
  const AT = '/path/stages/bevel';
  const made = (driver: unknown, driven: unknown) => (stages: Record<string, Record<string, unknown>>) => {
    const bevel = stage(stages, 'bevel');
    bevel.made = { driver, driven };
    delete bevel.donor;
  };

  test('of unknown make is thin at best, and says its range', () => {
    const list = findings('marsh-hauler', made({ file: 'skates' }, { file: 'skates' }));
    const make = one(list, `gear.make:${AT}`);
    expect(make?.severity).toBe('thin');
    expect(make?.says).toMatch(/% to .*%/);
    for (const check of ['gear.bending', 'gear.contact', 'gear.peak'])
      expect(one(list, `${check}:${AT}`)?.severity ?? 'none').not.toBe('holds');
  });

  test('of known steel is judged by its number, and no longer by its make', () => {
    const list = findings('marsh-hauler', made({ steel: 'case hardened' }, { steel: 'case hardened' }));
    expect(one(list, `gear.make:${AT}`)).toBeUndefined();
    expect(one(list, `gear.bending:${AT}`)?.reserve).not.toBeNull();
  });

  test('bears more the harder it is, bending and contact', () => {
    const at = (hardness: string) => findings('marsh-hauler', made({ hardness }, { hardness }));
    const [soft, hard] = [at('200'), at('350')];
    for (const check of ['gear.bending', 'gear.contact', 'gear.peak'])
      expect(one(hard, `${check}:${AT}`)?.reserve?.value).toBeGreaterThan(
        one(soft, `${check}:${AT}`)?.reserve?.value ?? Number.NaN,
      );
  });

  test('used on its other flanks, or at another angle, is thin', () => {
    const turned = findings('marsh-hauler', (stages) => {
      (stage(stages, 'bevel').donor as Record<string, unknown>).turned = 'the other way';
    });
    expect(one(turned, `gear.flank:${AT}`)).toMatchObject({
      severity: 'thin',
      says: expect.stringContaining('held back'),
    });
    const slanted = findings('marsh-hauler', (stages) => {
      (stage(stages, 'bevel').donor as Record<string, unknown>).angle = '80 deg';
    });
    expect(one(slanted, `gear.flank:${AT}`)?.says).toContain('another angle');
    // Both turned round is the same flank again.
    const both = findings('marsh-hauler', (stages) => {
      Object.assign(stage(stages, 'bevel').donor as Record<string, unknown>, {
        turned: 'the other way',
        drove: 'the driven gear of here',
      });
    });
    expect(one(both, `gear.flank:${AT}`)?.severity).toBe('holds');
  });

  test('with a chipped tooth fails', () => {
    const list = findings('marsh-hauler', (stages) => {
      (stage(stages, 'bevel').card as Record<string, unknown>).chips = 'some';
    });
    expect(one(list, `gear.card:${AT}`)?.severity).toBe('fails');
  });

  test('open to the road is thin', () => {
    const list = findings('marsh-hauler', (stages) => {
      stage(stages, 'bevel').lubrication = 'open, greased';
    });
    expect(one(list, `gear.oil:${AT}`)).toMatchObject({ severity: 'thin', says: expect.stringContaining('grit') });
  });
});

describe('a chain', () => {
  const AT = '/path/stages/chain-1';

  test('is judged by the strength on its box', () => {
    const reserve = (strength: string) =>
      one(
        findings('marsh-hauler', (stages) => {
          stage(stages, 'chain-1').strength = strength;
        }),
        `chain.pull:${AT}`,
      )?.reserve?.value ?? Number.NaN;
    expect(reserve('40 kN') / reserve('20 kN')).toBeCloseTo(2, 9);
  });

  test('that would hit the brake line fails, and nobody saying is unknown', () => {
    const hit = (breaks: string | undefined) =>
      one(
        findings('marsh-hauler', (stages) => {
          stage(stages, 'chain-1').breaks = breaks;
        }),
        `chain.broken:${AT}`,
      )?.severity;
    expect(hit('brake line')).toBe('fails');
    expect(hit('fuel line or tank')).toBe('fails');
    expect(hit('its guard')).toBe('holds');
    expect(hit(undefined)).toBe('unknown');
  });

  test('wears sooner in dirt, and a dry one is thin', () => {
    const wear = (oiled: string) =>
      one(
        findings('marsh-hauler', (stages) => {
          stage(stages, 'chain-1').oiled = oiled;
        }),
        `chain.wear:${AT}`,
      );
    const [oil, dirt, dry] = [wear('oil bath or stream'), wear('dirty or seldom'), wear('dry')];
    expect(oil?.reserve?.value).toBeGreaterThan(dirt?.reserve?.value ?? Number.NaN);
    expect(dirt?.reserve?.value).toBeGreaterThan(dry?.reserve?.value ?? Number.NaN);
    expect(dry?.severity).toBe('thin');
    expect(wear('sealed rings')?.severity).toBe('unknown');
  });
});

describe('a toothed belt', () => {
  const AT = '/path/stages/belt';
  const belt = (change: Record<string, unknown>) =>
    one(
      findings('rail-cart', (stages) => {
        Object.assign(stage(stages, 'belt'), change);
      }),
      `belt.teeth:${AT}`,
    );

  test('with curved teeth has no open rating', () => {
    expect(belt({})).toMatchObject({ severity: 'unknown', says: expect.stringContaining('maker') });
  });

  test('of a rated profile carries more the wider it is', () => {
    const at = (width: string) =>
      belt({ profile: 'H', pitch: '1/2 in', length: undefined, width })?.reserve?.value ?? Number.NaN;
    expect(at('2 in')).toBeGreaterThan(at('1 in'));
  });

  test('of another pitch than its profile says so', () => {
    expect(belt({ profile: 'T10' })).toMatchObject({ severity: 'unknown', says: expect.stringContaining('pitch') });
  });
});
