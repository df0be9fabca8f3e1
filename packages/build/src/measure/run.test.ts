import { METHODS } from '@oddwheel/mechanics/catalogue';
import { describe, expect, it } from 'vitest';
import { typeField } from '../fields.ts';
import { openSession } from '../session.ts';
import type { Session } from '../session-types.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { measuresFor } from './measures.ts';
import { runMeasure } from './run.ts';
import type { Measure, Readings } from './types.ts';

function open(change: (build: Record<string, unknown>) => void = () => {}): Session {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as Record<string, unknown>;
  change(build);
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

const session = open((build) => {
  const at = { x: '700 mm', y: '0 mm', z: '0 mm' };
  (build.brief as Record<string, unknown>).mounts = { front: { name: 'front', body: 'engine', at } };
});

/** Every field that has a sum beside it, with its measures. */
const FIELDS = [
  '/brief/engine/primary',
  '/brief/engine/gears/0',
  '/brief/wheel/rollOut',
  '/brief/vehicle/mass',
  '/brief/vehicle/drivenLoad',
  '/brief/vehicle/wheelInertia',
  '/brief/mounts/front/stiffness',
];
const PAIRS = FIELDS.flatMap((address) => measuresFor(address).map((measure) => ({ address, measure })));

const examples = (measure: Measure): Readings =>
  Object.fromEntries(measure.asks.map((ask) => [ask.key, ask.usual ?? ask.example]));

describe('measures', () => {
  it.each(PAIRS)('$measure.id at $address gives a text that the field takes', ({ address, measure }) => {
    const measured = runMeasure(session, measure.id, address, examples(measure));
    if (!measured.ok) throw new Error(JSON.stringify(measured));
    expect(measured.text).toMatch(/^[\d.]+\.\.[\d.]+( [a-zA-Z./\d]+)?$/);
    expect(typeField(session, address, measured.text)).toMatchObject({ ok: true });
    expect(measured.working.methodId).toBe(measure.method);
  });

  it.each(PAIRS.map(({ measure }) => measure))('$id asks for inputs of its method', (measure) => {
    const method = METHODS.find(({ id }) => id === measure.method);
    for (const ask of measure.asks) expect(method?.inputs).toHaveProperty(ask.key);
    expect(method?.results).toEqual(expect.arrayContaining([measure.result, measure.spread]));
    expect(measure.steps.length).toBeGreaterThan(1);
  });

  it('rounds outward, so that the field holds all that the readings allow', () => {
    const at = '/brief/wheel/rollOut';
    expect(runMeasure(session, 'roll', at, { distance: '33.52 m', tape: '25 mm' })).toMatchObject({
      ok: true,
      text: '3.3495..3.3545 m',
      says: '3.3520 ± 0.0025\u2009m',
    });
  });

  it('leaves out the zeros that both ends have', () => {
    const readings = { distance: '33.52 m', tape: '20 mm' };
    expect(runMeasure(session, 'roll', '/brief/wheel/rollOut', readings)).toMatchObject({
      text: '3.350..3.354 m',
      says: '3.352 ± 0.002\u2009m',
    });
  });

  it('takes several readings with the unit at the last one only', () => {
    const readings = { readings: '96; 101; 124 kg', scaleError: '1 kg' };
    expect(runMeasure(session, 'scales-all', '/brief/vehicle/mass', readings)).toMatchObject({
      text: '318..324 kg',
    });
  });

  it('gives the result in the unit that the field has', () => {
    const pounds = open((build) => {
      (build.brief as { vehicle: Record<string, unknown> }).vehicle.mass = '700 lb';
    });
    const readings = { readings: '321 kg', scaleError: '1 kg' };
    expect(runMeasure(pounds, 'scales-all', '/brief/vehicle/mass', readings)).toMatchObject({
      text: '705.4..709.9 lb',
    });
  });

  it('says which readings are wanted, and what is wrong with others, at once', () => {
    const measured = runMeasure(session, 'lever-driven', '/brief/vehicle/drivenLoad', {
      readings: '112 kg',
      tare: '4',
      loadArm: '450 mm',
    });
    expect(measured).toMatchObject({ ok: false, wanted: ['scaleArm'], faults: [{ key: 'tare' }] });
  });

  it('tells a time in which the wheel cannot swing', () => {
    const readings = { mass: '40 kg', time: '20 s', arm: '400 mm' };
    const measured = runMeasure(session, 'swing-edge', '/brief/vehicle/wheelInertia', readings);
    expect(measured).toMatchObject({ ok: false, wanted: [], faults: [{ key: 'time' }] });
  });

  it('a mount: a range in the units of the build', () => {
    const readings = { mass: '60 kg', before: '1.20 mm', after: '0.35 mm' };
    expect(runMeasure(session, 'mount', '/brief/mounts/front/stiffness', readings)).toMatchObject({
      text: '659..725 N/mm',
      says: '692 ± 33\u2009N/mm',
    });
  });

  it('refuses an id that is no measure', () => {
    expect(() => runMeasure(session, 'guess', '/brief/vehicle/mass', {})).toThrow(/no measure "guess"/);
  });
});
