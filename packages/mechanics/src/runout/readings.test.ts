import { describe, expect, it } from 'vitest';
import { offsetByEnds, type Reading, sectionForm } from './readings.ts';
import { chuckTurned, inVBlock } from './supports.ts';

const DEGREE = Math.PI / 180;
const THOU = 25.4e-6;

const curve = (angles: readonly number[], value: (angle: number) => number): Reading[] =>
  angles.map((degrees) => ({ angle: degrees * DEGREE, value: value(degrees * DEGREE) }));
const evenly = (count: number) => Array.from({ length: count }, (_, k) => (360 * k) / count);
const lobed = (a: number) => 5 * THOU * Math.cos(a - 1) + 2 * THOU * Math.cos(2 * (a - 0.3)) + THOU * Math.cos(3 * a);

describe('one section', () => {
  it.each([[8], [12], [24], [72]])('%i even readings give offset, ovality and lobes', (count) => {
    const form = sectionForm(curve(evenly(count), lobed), 0.1 * THOU);
    expect(Math.hypot(form.offset.x, form.offset.y) / THOU).toBeCloseTo(5, 6);
    expect(form.harmonics[1]?.amplitude).toBeCloseTo(2 * THOU, 9);
    expect(form.harmonics[1]?.high).toBeCloseTo(0.3, 6);
    expect(form.fittedTir).toBeGreaterThanOrEqual(form.tir - 1e-12);
  });

  it('uneven marks do as well', () => {
    const form = sectionForm(curve([3, 40, 77, 101, 150, 188, 214, 251, 290, 333], lobed), 0.1 * THOU);
    expect(Math.hypot(form.offset.x, form.offset.y) / THOU).toBeCloseTo(5, 6);
  });

  it('four readings tell the offset alone', () => {
    const form = sectionForm(
      curve(evenly(4), (a) => 3 * THOU * Math.cos(a)),
      0.5 * THOU,
    );
    expect(form.harmonics).toHaveLength(1);
    expect(form.offset.x / THOU).toBeCloseTo(3, 9);
    expect(form.offsetSpread).toBeGreaterThan(0.1 * THOU);
  });

  it('a slipped reading is named, and a set that does not close is refused', () => {
    const slipped = curve(evenly(12), (a) => 5 * THOU * Math.cos(a)).map((one, k) =>
      k === 7 ? { ...one, value: one.value + 6 * THOU } : one,
    );
    expect(sectionForm(slipped, 0.5 * THOU).outliers).toEqual([7]);
    const open = [...curve(evenly(8), (a) => 5 * THOU * Math.cos(a)), { angle: 0, value: 8 * THOU }];
    expect(sectionForm(open, 0.5 * THOU)).toMatchObject({ closes: false });
    expect(sectionForm(open.slice(0, 8), 0.5 * THOU)).toMatchObject({ closes: true });
  });

  it('says what is accepted', () => {
    expect(() =>
      sectionForm(
        curve([0, 90, 180], () => 0),
        THOU,
      ),
    ).toThrow('3 read; 4 to 72');
    expect(() =>
      sectionForm(
        curve([0, 0, 0, 180], () => 0),
        THOU,
      ),
    ).toThrow('do not go round');
  });

  it('highest and lowest alone give the offset, less surely when they do not stand opposite', () => {
    const ends = (low: number) => offsetByEnds({ angle: 0, value: 4 * THOU }, { angle: low * DEGREE, value: 0 }, THOU);
    expect(ends(180).offset.x / THOU).toBeCloseTo(2, 9);
    expect(ends(180).lopsided).toBe(false);
    expect(ends(120).lopsided).toBe(true);
    expect(ends(120).offsetSpread).toBeGreaterThan(ends(180).offsetSpread);
    expect(() => ends(10)).toThrow('nearly the same mark');
  });
});

describe('supports', () => {
  it('a V takes the lobes it shows back to their size, and says which it hides', () => {
    const form = sectionForm(
      curve(evenly(36), (a) => 2 * THOU * Math.cos(3 * a) + 4 * 2.414 * THOU * Math.cos(8 * a)),
      0.1 * THOU,
    );
    const seen = inVBlock(form.harmonics, 90 * DEGREE);
    const three = seen.find(({ order }) => order === 3);
    const eight = seen.find(({ order }) => order === 8);
    expect(three && three.sees !== 'blind' && three.true.amplitude / THOU).toBeCloseTo(1, 6);
    expect(eight && eight.sees !== 'blind' && eight.true.amplitude / THOU).toBeCloseTo(4, 2);
    for (const order of [1, 7, 9]) expect(seen.find((one) => one.order === order)).toMatchObject({ sees: 'blind' });
  });

  it('half a turn in the chuck parts chuck from part', () => {
    const [part, chuck] = [
      { x: 3, y: 1 },
      { x: -1, y: 2 },
    ];
    const first = { x: part.x + chuck.x, y: part.y + chuck.y };
    const turned = { x: part.x - chuck.x, y: part.y - chuck.y };
    expect(chuckTurned(first, turned)).toEqual({ part, chuck });
  });
});
