import type { Finding } from '@oddwheel/build/assess/types';
import { describe, expect, it } from 'vitest';
import { sayChange } from './announce.ts';

const finding = (element: string, severity: Finding['severity'], reserve: number | null): Finding => ({
  id: `slack:${element}`,
  check: 'slack',
  address: `/${element}`,
  element,
  title: 'slack',
  says: '',
  either: null,
  severity,
  consequence: 'loses drive',
  governing: null,
  demand: null,
  capacity: null,
  reserve: reserve === null ? null : { value: reserve, lo: reserve, hi: reserve },
  wanted: 1.5,
  wantedFrom: '',
  missing: [],
  dependsOn: [],
  assumed: [],
  row: 0,
});

describe('what an edit did, in words', () => {
  const before = [finding('Chain 1', 'holds', 1.6), finding('Chain 2', 'holds', 2)];

  it('says which finding has a new severity', () => {
    const after = [finding('Chain 1', 'thin', 1.08), finding('Chain 2', 'holds', 1.9)];
    expect(sayChange(before, after)).toBe('Chain 1 slack now thin, 1.08.');
  });

  it('says new, unknown and gone ones', () => {
    expect(sayChange(before, [finding('Belt', 'unknown', null)])).toBe('Belt slack now unknown; 2 no longer checked.');
  });

  it('counts those past the third', () => {
    const many = ['A', 'B', 'C', 'D', 'E'].map((name) => finding(name, 'fails', 0.5));
    expect(sayChange([], many)).toContain('C slack now fails, 0.50; 2 more changed.');
  });

  it('with no new severity, names the reserve that moved most', () => {
    const after = [finding('Chain 1', 'holds', 1.7), finding('Chain 2', 'holds', 2.05)];
    expect(sayChange(before, after)).toBe('Chain 1 slack holds, 1.70.');
    expect(sayChange(before, before)).toBe('No check changed.');
  });
});
