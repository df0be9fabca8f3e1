import { describe, expect, it } from 'vitest';
import { originWords, symbolValue } from './value.ts';

describe('values of a working', () => {
  it('stand in the units of the build, the unit apart', () => {
    expect(symbolValue({ value: 0.01905, kind: 'length' }, {})).toEqual({ number: '19.05', unit: 'mm' });
    expect(symbolValue({ value: 0.01905, kind: 'length' }, { length: 'in' })).toEqual({ number: '0.75', unit: 'in' });
    expect(symbolValue({ value: Math.PI / 6, kind: 'angle' }, {})).toEqual({ number: '30', unit: '°' });
    expect(symbolValue({ value: 17, kind: 'count' }, {})).toEqual({ number: '17', unit: '' });
    expect(symbolValue({ value: 59.9865514, kind: 'count' }, {})).toEqual({ number: '59.99', unit: '' });
    expect(symbolValue({ value: 0.96, kind: 'fraction' }, {})).toEqual({ number: '0.96', unit: '' });
    expect(symbolValue({ value: 6.4, kind: 'speed' }, { speed: 'mph' })).toEqual({ number: '6.4', unit: 'm/s' });
  });

  it('lists keep one unit, words stand as they are', () => {
    expect(symbolValue({ value: [0.1, 0.2], kind: 'length' }, {})).toEqual({ number: '100;\u2009200', unit: 'mm' });
    expect(symbolValue({ value: 'radial', kind: null }, {})).toEqual({ number: 'radial', unit: '' });
  });

  it('says an address of the build by its keys', () => {
    expect(originWords('/path/stages/chain-1/teeth/driver')).toBe('chain 1, teeth, driver');
    expect(originWords('/brief/engine/idle')).toBe('engine, idle');
    expect(originWords('chain-sizes/12B')).toBe('chain-sizes/12B');
  });
});
