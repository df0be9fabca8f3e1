import { describe, expect, it } from 'vitest';
import { digits, reserveText, show, shownText, unitSize } from './shown.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });
const thin = '\u2009';
const rpm = (Math.PI * 2) / 60;

describe('numbers on the page (face of the page, numbers)', () => {
  it('parts thousands by a thin space and writes a true minus', () => {
    expect(digits(3221, 0)).toBe(`3${thin}221`);
    expect(digits(-4.5, 1)).toBe('−4.5');
    expect(digits(1234567.891, 2)).toBe(`1${thin}234${thin}567.89`);
    expect(digits(-0.004, 2)).toBe('0.00');
  });

  it('gives at most four figures', () => {
    expect(show(certain(4454.3 * rpm), 'angularSpeed', {})).toEqual({ number: `4${thin}454`, unit: 'rpm', give: null });
    expect(show(certain(38.614), 'torque', {}).number).toBe('38.61');
    expect(show(certain(18 / 3.6), 'speed', {}, 3).number).toBe('18.0');
    expect(show(certain(0), 'torque', {}).number).toBe('0');
  });

  it('takes its precision from the uncertainty, which has the same unit and decimals', () => {
    expect(show({ value: 239.37, lo: 234.6, hi: 244.2 }, 'torque', {})).toEqual({
      number: '239',
      unit: 'N·m',
      give: '5',
    });
    expect(shownText(show({ value: 1.2831, lo: 1.181, hi: 1.381 }, 'number', {}))).toBe(`1.3${thin}±${thin}0.1`);
    expect(show({ value: 239.37, lo: 239.369, hi: 239.371 }, 'torque', {}).give).toBeNull();
  });

  it('uses the units of the build: 548 N·m is 404.2 lbf·ft; 66 km/h is 41.01 mph (NIST SP 811:2008, B.8)', () => {
    expect(shownText(show(certain(548), 'torque', { torque: 'lbf·ft' }))).toBe(`404.2${thin}lbf·ft`);
    expect(shownText(show(certain(66 / 3.6), 'speed', { speed: 'mph' }))).toBe(`41.01${thin}mph`);
    expect(unitSize('speed', { speed: 'mph' })).toBeCloseTo(0.44704, 12);
    expect(shownText(show(certain(Math.PI / 2), 'angle', {}))).toBe('90.00°');
  });

  it('writes a reserve with two decimals, and one under the limit never as the limit', () => {
    expect(reserveText(1.2849)).toBe('1.28');
    expect(reserveText(12.345)).toBe('12.35');
    expect(reserveText(123.45)).toBe('123.5');
    expect(reserveText(0.9961)).toBe('0.99');
    expect(reserveText(1)).toBe('1.00');
  });
});
