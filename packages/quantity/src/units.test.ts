import { describe, expect, it } from 'vitest';
import { roundDigits } from './digits.ts';
import { decimal, shifted } from './exact.ts';
import { KINDS, type Kind, siUnit } from './kinds.ts';
import { findUnit, fromSi, HARDNESS_SCALES, requireUnit, toSi, unitKey, unitsOf } from './units.ts';

const kinds = Object.keys(KINDS) as Kind[];

type Row = readonly [kind: Kind, symbol: string, factor: string];

/**
 * NIST Special Publication 811, Guide for the Use of the International System of Units, 2008, appendix B.8 and B.9.
 * Read in transcripts of the tables, not in the printed book. Exact rows are boldface there or exact by definition.
 */
const READ_EXACT: readonly Row[] = [
  ['length', 'in', '2.54e-2'],
  ['length', 'ft', '3.048e-1'],
  ['length', 'yd', '9.144e-1'],
  ['length', 'mi', '1.609344e3'],
  ['length', 'thou', '2.54e-5'],
  ['length', 'µm', '1.0e-6'],
  ['mass', 't', '1.0e3'],
  ['area', 'in²', '6.4516e-4'],
  ['area', 'ft²', '9.290304e-2'],
  ['volume', 'L', '1.0e-3'],
  ['speed', 'mph', '4.4704e-1'],
  ['speed', 'ft/s', '3.048e-1'],
  ['acceleration', 'g', '9.80665'],
  ['force', 'kgf', '9.80665'],
  ['pressure', 'bar', '1.0e5'],
  ['pressure', 'atm', '1.01325e5'],
  ['energy', 'kW·h', '3.6e6'],
  ['time', 'min', '6.0e1'],
  ['time', 'h', '3.6e3'],
];
const READ_ROUNDED: readonly Row[] = [
  ['mass', 'lb', '4.535924e-1'],
  ['mass', 'oz', '2.834952e-2'],
  ['volume', 'in³', '1.638706e-5'],
  ['volume', 'ft³', '2.831685e-2'],
  ['volume', 'US gal', '3.785412e-3'],
  ['speed', 'km/h', '2.777778e-1'],
  ['force', 'lbf', '4.448222'],
  ['pressure', 'psi', '6.894757e3'],
  ['power', 'hp', '7.456999e2'],
  ['power', 'PS', '7.354988e2'],
  ['angle', '°', '1.745329e-2'],
  ['angle', '′', '2.908882e-4'],
  ['angle', '″', '4.848137e-6'],
  ['angle', 'rev', '6.283185'],
  ['angularSpeed', 'rpm', '1.047198e-1'],
];
/** The same appendix, from memory. */
const MEMORY_EXACT: readonly Row[] = [
  ['speed', 'ft/min', '5.08e-3'],
  ['speed', 'in/s', '2.54e-2'],
  ['acceleration', 'ft/s²', '3.048e-1'],
  ['torque', 'kgf·m', '9.80665'],
  ['torque', 'kgf·cm', '9.80665e-2'],
  ['pressure', 'kgf/cm²', '9.80665e4'],
  ['stiffness', 'kgf/mm', '9.80665e3'],
  ['density', 'g/cm³', '1.0e3'],
];
const MEMORY_ROUNDED: readonly Row[] = [
  ['torque', 'lbf·ft', '1.355818'],
  ['torque', 'lbf·in', '1.129848e-1'],
  ['energy', 'ft·lbf', '1.355818'],
  ['pressure', 'ksi', '6.894757e6'],
  ['stiffness', 'lbf/in', '1.751268e2'],
  ['stiffness', 'lbf/ft', '1.459390e1'],
  ['linearDensity', 'lb/ft', '1.488164'],
  ['linearDensity', 'lb/in', '1.785797e1'],
  ['density', 'lb/ft³', '1.601846e1'],
  ['density', 'lb/in³', '2.767990e4'],
  ['areaMoment', 'in⁴', '4.162314e-7'],
  ['inertia', 'lb·ft²', '4.214011e-2'],
  ['inertia', 'lb·in²', '2.926397e-4'],
  ['angularSpeed', '°/s', '1.745329e-2'],
  ['angularSpeed', 'rev/s', '6.283185'],
  ['temperatureDifference', '°F', '5.555556e-1'],
  ['temperature', '°F', '5.555556e-1'],
];
/** SI Brochure, 9th edition, 2019, table 7 (prefixes) and table 8; powers of ten and of sixty, worked out by hand. */
const SI: readonly Row[] = [
  ['fraction', '%', '0.01'],
  ['angle', 'mrad', '1e-3'],
  ['length', 'mm', '1e-3'],
  ['length', 'cm', '1e-2'],
  ['length', 'km', '1e3'],
  ['area', 'mm²', '1e-6'],
  ['area', 'cm²', '1e-4'],
  ['volume', 'mL', '1e-6'],
  ['volume', 'cm³', '1e-6'],
  ['volume', 'mm³', '1e-9'],
  ['areaMoment', 'cm⁴', '1e-8'],
  ['areaMoment', 'mm⁴', '1e-12'],
  ['turningStiffness', 'kN·m/rad', '1e3'],
  ['viscosity', 'mm²/s', '1e-6'],
  ['time', 'ms', '1e-3'],
  ['frequency', 'kHz', '1e3'],
  ['speed', 'mm/s', '1e-3'],
  ['mass', 'g', '1e-3'],
  ['linearDensity', 'g/m', '1e-3'],
  ['inertia', 'kg·cm²', '1e-4'],
  ['inertia', 'kg·mm²', '1e-6'],
  ['force', 'kN', '1e3'],
  ['torque', 'kN·m', '1e3'],
  ['torque', 'N·mm', '1e-3'],
  ['torque', 'N·cm', '1e-2'],
  ['energy', 'kJ', '1e3'],
  ['energy', 'MJ', '1e6'],
  ['power', 'kW', '1e3'],
  ['pressure', 'kPa', '1e3'],
  ['pressure', 'MPa', '1e6'],
  ['pressure', 'GPa', '1e9'],
  ['stiffness', 'kN/m', '1e3'],
  ['stiffness', 'N/mm', '1e3'],
  ['stiffness', 'kN/mm', '1e6'],
  ['temperature', '°C', '1'],
  ['temperatureDifference', '°C', '1'],
];
/** One sixtieth, and 60/(2π), to seven figures; worked out by hand. */
const SIXTIETHS: readonly Row[] = [
  ['speed', 'm/min', '1.666667e-2'],
  ['frequency', '1/min', '1.666667e-2'],
  ['torqueSlope', 'N·m/rpm', '9.549297'],
];

const exactRows = [...READ_EXACT, ...MEMORY_EXACT, ...SI];
const roundedRows = [...READ_ROUNDED, ...MEMORY_ROUNDED, ...SIXTIETHS];

describe('unit factors', () => {
  it.each(exactRows)('%s: one %s is exactly %s SI units', (kind, symbol, factor) => {
    expect(requireUnit(kind, symbol).factor).toEqual(decimal(factor));
  });

  it.each(roundedRows)('%s: one %s is %s SI units to seven figures', (kind, symbol, factor) => {
    const seven = roundDigits(requireUnit(kind, symbol).factor, 7);
    expect(seven).toEqual(roundDigits(decimal(factor), 7));
  });

  it('checks every unit in the table against one of these rows', () => {
    const checked = new Set([...exactRows, ...roundedRows].map(([kind, symbol]) => `${kind} ${symbol}`));
    const all = kinds.filter((kind) => kind !== 'hardness').flatMap((kind) => unitsOf(kind).slice(1));
    expect(all.map((unit) => `${unit.kind} ${unit.symbol}`).filter((name) => !checked.has(name))).toEqual([]);
  });

  it.each([
    ['pound-force', 'force', 'lbf', '4.4482216152605'],
    ['metric horsepower', 'power', 'PS', '735.49875'],
    ['pound-force foot', 'torque', 'lbf·ft', '1.3558179483314004'],
    ['horsepower', 'power', 'hp', '745.69987158227022'],
  ] as const)(
    '%s is exact to the last figure of its definition (NIST SP 811, 2008, B.8 footnote 23, from memory)',
    (_, kind, symbol, all) => {
      expect(requireUnit(kind, symbol).factor).toEqual(decimal(all));
    },
  );
});

describe('thermometer scales (NIST SP 811, 2008, B.9, Temperature; read)', () => {
  it.each([
    ['°C', 0, 273.15],
    ['°C', 100, 373.15],
    ['°F', 32, 273.15],
    ['°F', 212, 373.15],
    ['°F', -40, 233.15],
    ['°F', -459.67, 0],
  ])('%s %d is %d K', (unit, value, kelvin) => {
    expect(toSi('temperature', unit, value)).toBe(kelvin);
    expect(fromSi('temperature', unit, kelvin)).toBeCloseTo(value, 9);
  });

  it('keeps a difference free of the zero', () => {
    expect(toSi('temperatureDifference', 'degC', 60)).toBe(60);
    expect(toSi('temperatureDifference', 'degF', 90)).toBe(50);
  });
});

describe('the unit table', () => {
  it('gives each kind its SI unit first, with factor one', () => {
    for (const kind of kinds.filter((name) => name !== 'hardness')) {
      const [first] = unitsOf(kind);
      expect(first?.symbol).toBe(siUnit(kind));
      expect(first?.factor).toEqual(shifted(decimal('1'), 0));
      expect(first?.zero.n).toBe(0n);
    }
  });

  it('never has one spelling for two units of a kind, small letters and capitals included for shop units', () => {
    for (const kind of kinds) {
      const owner = new Map<string, string>();
      for (const unit of unitsOf(kind)) {
        const keys = new Set([unit.symbol, ...unit.spellings].map(unitKey));
        for (const key of [...keys].map((k) => (unit.anyCase ? k.toLowerCase() : k))) {
          expect(`${kind} ${key} ${owner.get(key) ?? unit.symbol}`).toBe(`${kind} ${key} ${unit.symbol}`);
          owner.set(key, unit.symbol);
        }
        expect(findUnit(kind, unit.symbol)).toBe(unit);
        for (const spelling of unit.spellings) expect(findUnit(kind, spelling)).toBe(unit);
      }
    }
  });

  it('names the hardness scales in one place and in the table alike', () => {
    expect(unitsOf('hardness').map((unit) => unit.symbol)).toEqual([...HARDNESS_SCALES]);
  });

  it('can be typed on a plain keyboard', () => {
    for (const unit of kinds.flatMap(unitsOf)) expect(unit.typed).toMatch(/^[\x20-\x7e]*$/);
  });

  it.each([
    ['torque', 'N·m', ['N.m', 'Nm', 'N·m', 'N⋅m', 'N-m', 'N m', 'N*m']],
    ['torque', 'lbf·ft', ['lbf.ft', 'ft.lbf', 'ft-lb', 'lb-ft', 'LB-FT', 'ft. lbs.', 'lbf·ft']],
    ['length', 'in', ['in', 'IN', 'in.', 'inch', '"', '″', '”', "''"]],
    ['length', 'ft', ['ft', "'", '′', '’', 'feet']],
    ['length', 'µm', ['µm', 'μm', 'um', 'micron']],
    ['length', 'thou', ['thou', 'mil']],
    ['inertia', 'kg·m²', ['kg.m2', 'kg·m²', 'kg m^2']],
    ['pressure', 'MPa', ['MPa', 'N/mm2', 'N/mm²']],
    ['angularSpeed', 'rpm', ['rpm', 'RPM', '1/min', 'min⁻¹', 'r/min']],
    ['volume', 'cm³', ['cc', 'cm3', 'cm³']],
    ['temperature', '°C', ['degC', '°C', '℃', 'C']],
  ] as const)('%s: %s is spelled %j', (kind, symbol, spellings) => {
    for (const spelling of spellings) expect(findUnit(kind, spelling)?.symbol).toBe(symbol);
  });

  it('keeps capitals of SI symbols apart', () => {
    for (const wrong of ['MM', 'Mm', 'KM']) expect(findUnit('length', wrong)).toBeUndefined();
    expect(findUnit('pressure', 'mPa')).toBeUndefined();
    expect(findUnit('power', 'mW')).toBeUndefined();
    expect(findUnit('torque', 'nm')).toBeUndefined();
  });

  it('reads a number in a unit as its text would be read, and refuses what is no number or no unit', () => {
    expect(toSi('length', 'mm', 25.4)).toBe(0.0254);
    expect(toSi('torque', 'lbf.ft', 40)).toBe(54.23271793325602);
    expect(fromSi('length', 'in', 0.00635)).toBe(0.25);
    expect(() => toSi('length', 'mm', Number.NaN)).toThrow(/length must be a finite number/);
    expect(() => toSi('length', 'kg', 1)).toThrow(/"kg" is not a unit of length; accepted: m, mm/);
  });
});
