import { KINDS } from '@oddwheel/quantity/kinds';
import { findUnit } from '@oddwheel/quantity/units';
import { describe, expect, it } from 'vitest';
import { listTables, tableNamed, tableRow } from './catalogue.ts';
import { CHAIN_LIMITS_TABLE } from './chain-limits.ts';
import { CHAIN_SIZES } from './chain-sizes.ts';
import { nearestKeys, OffTableError, rowInSi, sourceOf } from './table.ts';
import { TYRE_LOAD_INDICES } from './tyre-load-indices.ts';
import { TYRE_SPEED_SYMBOLS } from './tyre-speed-symbols.ts';

const TENSILE_RULE = 12_500 * 0.45359237 * 9.80665;

describe('every table', () => {
  it.each(listTables().map((table) => [table.id, table] as const))('%s: units, marks, finite numbers', (id, table) => {
    expect(tableNamed(id)).toBe(table);
    for (const { kind, unit } of Object.values(table.columns)) {
      expect(Object.hasOwn(KINDS, kind)).toBe(true);
      expect(findUnit(kind, unit), `${kind} in "${unit}"`).toBeDefined();
    }
    expect(Object.keys(table.rows).length).toBeGreaterThan(0);
    for (const [key, row] of Object.entries(table.rows)) {
      expect(Object.keys(row.values).length, key).toBeGreaterThan(0);
      for (const value of Object.values(rowInSi(table, key))) expect(Number.isFinite(value)).toBe(true);
      expect(sourceOf(table, key).length).toBeGreaterThan(3);
      expect(tableRow(`${id}/${key}`)).toEqual(rowInSi(table, key));
    }
  });
});

describe('chain sizes', () => {
  it('12B, ISO 606:2004 Table 1 (pitch, roller, width read; tensile from memory)', () => {
    expect(tableRow('chain-sizes/12B')).toMatchObject({
      pitch: 0.01905,
      rollerDiameter: 0.01207,
      innerWidth: 0.01168,
      minTensile: 28900,
      mass: 1.18,
    });
  });

  it('A and B series of one pitch differ: 08A and 08B, 12A and 12B, 24A and 24B', () => {
    const roller = (key: string) => rowInSi(CHAIN_SIZES, key).rollerDiameter;
    expect([roller('08A'), roller('08B')]).toEqual([0.00792, 0.00851]);
    expect([roller('12A'), roller('12B')]).toEqual([0.01191, 0.01207]);
    expect([roller('24A'), roller('24B')]).toEqual([0.02223, 0.0254]);
    expect(roller('10A')).toBe(roller('10B'));
  });

  it('strength of the ANSI sizes is 12 500 p² lbf, p in inch, save for 41 (ASME B29.1; read)', () => {
    for (const key of ['25', '35', '40', '50', '60', '80', '100', '120']) {
      const { pitch = 0, minTensile = 0 } = rowInSi(CHAIN_SIZES, key);
      expect(minTensile / (TENSILE_RULE * (pitch / 0.0254) ** 2), key).toBeCloseTo(1, 2);
    }
    expect(rowInSi(CHAIN_SIZES, '41').minTensile).toBeCloseTo(1500 * 0.45359237 * 9.80665, -1);
  });

  it('bearing area is pin diameter times width of the inner link (05B 11, 10B 67, 24B 554 mm²; worked out)', () => {
    for (const key of ['05B', '06B', '08B', '10B', '12B', '16B', '20B', '24B']) {
      const { pinDiameter = 0, innerLinkWidth = 0, bearingArea = 0 } = rowInSi(CHAIN_SIZES, key);
      expect(Math.abs(pinDiameter * innerLinkWidth - bearingArea) * 1e6, key).toBeLessThan(1);
    }
  });

  it('every size has what a drive needs', () => {
    for (const key of Object.keys(CHAIN_SIZES.rows)) {
      const row = rowInSi(CHAIN_SIZES, key);
      for (const column of ['pitch', 'rollerDiameter', 'innerWidth', 'minTensile'] as const)
        expect(row[column], `${key} ${column}`).toBeGreaterThan(0);
    }
  });

  it('an unknown size is refused, with the nearest ones named', () => {
    expect(() => tableRow('chain-sizes/12C')).toThrow(OffTableError);
    expect(() => tableRow('chain-sizes/12C')).toThrow(/has no row "12C"\. Nearest: 12A, 12B/);
    expect(nearestKeys(CHAIN_SIZES, '522')).toContain('520');
    expect(nearestKeys(CHAIN_SIZES, '12b')[0]).toBe('12B');
    expect(() => tableRow('chain-sizes/constructor')).toThrow(OffTableError);
  });

  it('an unknown table is refused, with all tables named', () => {
    expect(() => tableRow('chain-sizs/12B')).toThrow(/is not a row of a table; .*the tables are .*chain-sizes/);
    expect(() => tableRow('chain-sizes')).toThrow(RangeError);
  });

  it('the source line carries the mark', () => {
    expect(sourceOf(CHAIN_SIZES, '12A')).toBe('ISO 606:2004, Table 1, A series (from memory)');
    expect(sourceOf(CHAIN_LIMITS_TABLE, 'least-wrap')).toBe('A chain maker’s answers to frequent questions');
  });
});

describe('chain limits', () => {
  it('wrap 120°, slope 60°, slack 4 and 2 %, parallel within 1/300 (chain makers; read)', () => {
    expect(rowInSi(CHAIN_LIMITS_TABLE, 'least-wrap').angle).toBeCloseTo((2 * Math.PI) / 3, 15);
    expect(rowInSi(CHAIN_LIMITS_TABLE, 'most-slope').angle).toBeCloseTo(Math.PI / 3, 15);
    expect(rowInSi(CHAIN_LIMITS_TABLE, 'slack-usual').fraction).toBe(0.04);
    expect(rowInSi(CHAIN_LIMITS_TABLE, 'slack-special').fraction).toBe(0.02);
    expect(rowInSi(CHAIN_LIMITS_TABLE, 'parallel').slope).toBe(1 / 300);
  });
});

describe('tyre tables', () => {
  it('load index 62, 71, 112 carry 265, 345, 1120 kg (UN R75, R30; read)', () => {
    expect(['62', '71', '112'].map((key) => rowInSi(TYRE_LOAD_INDICES, key).mass)).toEqual([265, 345, 1120]);
  });

  it('load index follows 45 · 10^(LI/80) kg within 2 % (the rule behind the table)', () => {
    for (const key of Object.keys(TYRE_LOAD_INDICES.rows)) {
      const ratio = (rowInSi(TYRE_LOAD_INDICES, key).mass ?? 0) / (45 * 10 ** (Number(key) / 80));
      expect(Math.abs(ratio - 1), key).toBeLessThan(0.02);
    }
  });

  it('speed symbol H comes after U', () => {
    const kmh = (key: string) => ((rowInSi(TYRE_SPEED_SYMBOLS, key).speed ?? 0) * 3.6).toFixed(3);
    expect([kmh('U'), kmh('H'), kmh('V')]).toEqual(['200.000', '210.000', '240.000']);
  });
});

describe('efficiencies', () => {
  it('every stage kind has a range between 0 and 1', () => {
    for (const key of ['chain', 'belt', 'bevel', 'spur', 'coupling', 'unit', 'gearbox']) {
      const { low = 0, high = 0 } = tableRow(`stage-efficiencies/${key}`);
      expect(low).toBeGreaterThan(0.8);
      expect(high).toBeGreaterThanOrEqual(low);
      expect(high).toBeLessThan(1);
    }
  });
});
