import { bevelApex } from '@oddwheel/mechanics/bevel/apex';
import { chainCentreDistance } from '@oddwheel/mechanics/chain/centre-distance';
import { convexDistance } from '@oddwheel/mechanics/clearance/convex-distance';
import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import { describe, expect, test } from 'vitest';
import type { Model, Shaft } from '../model/model.ts';
import { openSession, validateText } from '../session.ts';
import type { Session } from '../session-types.ts';
import { assumptionsOf } from './assumptions.ts';
import { beginBuild } from './begin-build.ts';
import { layOutBuild } from './lay-out.ts';
import { soFar } from './read-six.ts';
import type { BeginAssumption, BeginResult, SixFields } from './types.ts';

/** An invented twin and a wheel of 1.1 m. */
const SIX: SixFields = {
  power: '27 kW',
  powerAt: '7500 rpm',
  torque: '40 N.m',
  torqueAt: '5500 rpm',
  gears: '2.75 1.78 1.36 1.12 0.96',
  primary: '65:31',
  tyre: '110/85R36',
  mass: '320 kg',
  speed: '65 km/h',
};

type Good = Extract<BeginResult, { readonly ok: true }>;

function good(six: SixFields): Good {
  const result = beginBuild(six);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result;
}

function sessionOf(text: string): Session {
  const opened = openSession(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function standsOn(session: Session): readonly BeginAssumption[] {
  const asked = assumptionsOf(session);
  for (let k = 0; k < 50; k += 1) {
    const { done, value } = asked.next();
    if (done) return value;
  }
  throw new Error('no end');
}

const seat = (shaft: Shaft | undefined, id: string) => {
  const found = shaft?.seats.find((one) => one.id === id);
  if (!shaft || !found) throw new Error(`no seat ${id}`);
  return found;
};

/** A round part of a shaft. */
function round(shaft: Shaft | undefined, id: string, radius: number, width: number): Solid {
  const { at } = seat(shaft, id);
  const half = times(width / 2, shaft?.direction ?? [0, 0, 0]);
  return { shape: 'cylinder', from: plus(at, times(-1, half)), to: plus(at, half), radius, rounding: 0 };
}

/** Every part that could meet the tyre, as a solid. */
function partsBy({ shafts, stages }: Model): Solid[] {
  const [, shaftA, shaftB] = shafts;
  const bevel = stages[1];
  if (bevel?.kind !== 'bevel' || !bevel.module) throw new Error('no bevel pair');
  const tip = (teeth: number) => ((teeth + 2) * (bevel.module?.si ?? 0)) / 2;
  const bearing = (shaft: Shaft | undefined, id: string) =>
    round(shaft, id, (seat(shaft, id).outside ?? 0) / 2, seat(shaft, id).width ?? 0);
  const chains = stages.flatMap((stage, k): Solid[] => {
    if (stage.kind !== 'chain') return [];
    const { pitch, innerWidth } = stage.size;
    return [stage.teeth.driver, stage.teeth.driven].map((teeth, end) => {
      const radius = pitch / (2 * Math.sin(Math.PI / teeth)) + pitch / 2;
      const ref = end === 0 ? stage.from : stage.to;
      return round(shafts[k + end], ref.seat, radius, 2 * innerWidth);
    });
  });
  return [
    ...chains,
    ...['bearing-front', 'bearing-rear'].map((id) => bearing(shaftA, id)),
    ...['bearing-right', 'bearing-left'].map((id) => bearing(shaftB, id)),
    round(shaftA, 'pinion', tip(bevel.teeth.driver), seat(shaftA, 'pinion').width ?? 0),
    round(shaftB, 'gear', tip(bevel.teeth.driven), seat(shaftB, 'gear').width ?? 0),
  ];
}

/** What every first layout keeps, worked out anew from the file's own model. */
function expectClosed(six: SixFields, { text, session }: { readonly text: string; readonly session: Session }): void {
  expect(validateText(text)).toEqual([]);
  const { assessment } = session;
  const { model } = session.evaluation;
  expect(assessment.findings.filter((f) => f.severity === 'fails').map((f) => `${f.id} ${f.says}`)).toEqual([]);
  expect(assessment.findings.find((f) => f.check === 'path.forward')?.severity).toBe('holds');
  // Beside the chains there is the room that is wanted, with the bodies that carry them moved.
  const beside = assessment.findings.filter(
    (f) => f.check === 'clear.parts' && f.address.startsWith('/path/stages/chain'),
  );
  expect(beside.filter((f) => f.severity === 'thin').map((f) => f.says)).toEqual([]);
  for (const [k, stage] of model.stages.entries()) {
    const [from, to] = [model.shafts[k], model.shafts[k + 1]];
    if (stage.kind === 'bevel') {
      const apex = bevelApex.run({
        originDriver: from?.origin ?? [0, 0, 0],
        originDriven: to?.origin ?? [0, 0, 0],
        directionDriver: from?.direction ?? [1, 0, 0],
        directionDriven: to?.direction ?? [1, 0, 0],
      });
      expect(apex.axisDistance).toBe(0);
    }
    if (stage.kind !== 'chain' || stage.links === null) continue;
    expect(stage.links % 2).toBe(0);
    const [a, b] = [seat(from, stage.from.seat).at, seat(to, stage.to.seat).at];
    const along = k === 0 ? 0 : 1;
    // In one plane, across the shafts' direction.
    expect(Math.abs(a[along] - b[along])).toBeLessThan(1e-9);
    const drawn = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    const { centreDistance } = chainCentreDistance.run({
      pitch: stage.size.pitch,
      teethDriver: stage.teeth.driver,
      teethDriven: stage.teeth.driven,
      links: stage.links,
    });
    expect(Math.abs(drawn - centreDistance), six.tyre).toBeLessThan(1e-9);
  }
  if (model.wheel.diameter === null || model.wheel.width === null) return;
  const half: [number, number, number] = [0, model.wheel.width / 2, 0];
  const tyre: Solid = {
    shape: 'cylinder',
    from: [0, -half[1], 0],
    to: half,
    radius: model.wheel.diameter / 2,
    rounding: 0,
  };
  for (const part of partsBy(model))
    expect(convexDistance(tyre, part).distance).toBeGreaterThanOrEqual(model.space.wanted.si);
}

describe('a first build from six fields', () => {
  test('worked by hand: a twin of 27 kW on a wheel of 1.1 m', () => {
    const result = good(SIX);
    // 36 in rim and twice 85 % of 110 mm: 914.4 + 187 = 1101.4 mm; a radial tyre rolls 3.05 diameters (ETRTO): 3.359 m.
    // 65 km/h = 18.06 m/s: 5.375 turns of the wheel a second. 7500 rpm = 125 turns of the crank: 23.26 in all.
    // Primary 65/31 = 2.0968, top gear 0.96: 23.26 / 2.0129 = 11.55 for the path.
    expect(result.overall).toBeGreaterThan(23.26 * 0.995);
    expect(result.overall).toBeLessThanOrEqual(23.27);
    const [, a, b, c, d, e, f] = /^chain (\d+):(\d+), bevel (\d+):(\d+), chain (\d+):(\d+)$/.exec(result.train) ?? [];
    const ratio = (Number(b) / Number(a)) * (Number(d) / Number(c)) * (Number(f) / Number(e));
    expect(Math.abs(ratio / 11.55 - 1)).toBeLessThan(0.006);
    // Peak torque in first: 40 × 2.0968 × 2.75 × 0.97 = 223.7 N·m on the output. Chain 1 of 15 teeth on 15.875 mm has a pitch
    // radius of 15.875 / (2 sin 12°) = 38.18 mm: 5.86 kN, against half of 26.4 kN, a reserve of 2.25; 12.7 mm pitch would
    // make 7.32 kN against 8.35 kN, less than 1.5.
    expect(result.choices.find((choice) => choice.what === 'Chain 1')?.chosen).toMatch(/^15:\d+ on 12B, \d+ links$/);
    expectClosed(SIX, { text: result.text, session: sessionOf(result.text) });
  });

  test('typed texts stand in the file as they were typed', () => {
    const six = { ...SIX, power: '36 hp', torque: '30 lbf.ft', mass: '705 lb', speed: '40 mph', tyre: '132 1/4 in' };
    const { build, assessment } = sessionOf(good(six).text);
    expect(build.brief.engine.peaks).toEqual({
      power: '36 hp',
      powerAt: '7500 rpm',
      torque: '30 lbf.ft',
      torqueAt: '5500 rpm',
    });
    expect(build.brief.vehicle.mass).toBe('705 lb');
    expect(build.brief.wheel).toEqual({ rollOut: '132 1/4 in' });
    expect(build.brief.targets?.topSpeed).toBe('40 mph');
    expect(assessment.units).toMatchObject({ power: 'hp', torque: 'lbf·ft', mass: 'lb', speed: 'mph' });
  });

  test('an unknown gearbox is ranges with a note, high on the list', () => {
    const result = good({ ...SIX, gears: null, primary: '' });
    const session = sessionOf(result.text);
    const { build } = session;
    expect(build.brief.engine.gears[0]).toBe('2.4..3.2');
    expect(build.brief.engine.primary).toBeUndefined();
    expect(build.notes?.['/brief/engine/gears']).toMatch(/^Assumed/);
    const listed = standsOn(session);
    expect(listed.slice(0, 8).map(({ address }) => address)).toEqual(
      expect.arrayContaining(['/brief/engine/gears', '/brief/engine/primary']),
    );
  });

  test('what the layout took is listed, by how many findings hang on it', () => {
    const assumptions = standsOn(sessionOf(good(SIX).text));
    const counts = assumptions.map(({ findings }) => findings);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    for (const address of ['/brief/engine/output/sense', '/brief/engine/idle', '/path/stages/bevel/module'])
      expect(assumptions.map((one) => one.address)).toContain(address);
    expect(new Set(assumptions.map((one) => one.address)).size).toBe(assumptions.length);
  });

  test('the same six fields give the same text', () => {
    expect(good(SIX).text).toBe(good({ ...SIX, tyre: ' 110/85R36 ' }).text);
  });
});

describe('while the fields are typed', () => {
  const NOTHING: SixFields = {
    ...{ power: '', powerAt: '', torque: '', torqueAt: '', gears: '', primary: '', tyre: '', mass: '', speed: '' },
  };

  test('the reduction is known from three of them, and what is left for the path with the gearbox', () => {
    expect(soFar(NOTHING)).toEqual({ faults: [], overall: null, path: null });
    const three = { ...NOTHING, powerAt: '7500 rpm', tyre: '110/85R36', speed: '65 km/h' };
    // As worked by hand above: 125 turns of the crank over 5.375 of the wheel, and 2.0129 in the box.
    expect(soFar(three).overall).toBeCloseTo(23.26, 1);
    expect(soFar(three).path).toBeNull();
    expect(soFar({ ...three, gears: SIX.gears, primary: '65:31' }).path).toBeCloseTo(11.55, 1);
    // Ranges stand in for a box that is not known: middle of 0.85..1.05 and of the usual primary ratios.
    const unknown = soFar({ ...three, gears: null });
    expect(unknown.path).toBeGreaterThan(8);
    expect(unknown.path).toBeLessThan(16);
  });

  test('it is the one that the layout comes near', () => {
    const { overall, path } = good(SIX);
    const typed = soFar(SIX);
    expect(Math.abs(overall / (typed.overall ?? 0) - 1)).toBeLessThan(0.006);
    expect(Math.abs(path / (typed.path ?? 0) - 1)).toBeLessThan(0.006);
  });

  test('a typed field is told at once what is wrong with it; a blank one is not', () => {
    const { faults, overall } = soFar({
      ...NOTHING,
      mass: '320',
      powerAt: '7500',
      tyre: '110/85R36',
      speed: '65 km/h',
    });
    expect(faults.map(({ field }) => field).sort()).toEqual(['mass', 'powerAt']);
    expect(overall).toBeNull();
  });
});

describe('over engines, wheels and speeds', () => {
  const TYRES = ['3.50-10', '18x9.50-8', '120/70ZR17', '26x9.00-12', '31x10.50R15', '110/85R36', '1.3 m', '3.5 m'];
  const BOXES = [
    { gears: null, primary: '' },
    { gears: '2.75 1.78 1.36 1.12 0.96', primary: '65:31' },
    { gears: '1', primary: '1' },
  ];
  const ENGINES = [
    [5, 3600],
    [12, 3600],
    [15, 9000],
    [27, 7500],
    [45, 6500],
    [60, 10500],
  ] as const;
  const SLOW = [
    ['22 km/h', '180 kg'],
    ['45 km/h', '600..900 kg'],
  ] as const;
  const FAST = [
    ['40 km/h', '350 kg'],
    ['110 km/h', '250 kg'],
  ] as const;

  for (const tyre of TYRES)
    test(`${tyre}: closed and forward, or refused with a field`, () => {
      let laid = 0;
      for (const [kW, rpm] of ENGINES)
        for (const box of BOXES)
          for (const [speed, mass] of rpm > 7000 ? FAST : SLOW) {
            const torque = ((kW * 1000) / ((rpm * Math.PI) / 30)) * 1.15;
            const six: SixFields = {
              power: `${kW} kW`,
              powerAt: `${rpm} rpm`,
              torque: `${torque.toFixed(2)} N.m`,
              torqueAt: `${Math.round(rpm * 0.72)} rpm`,
              tyre,
              mass,
              speed,
              ...box,
            };
            const result = layOutBuild(six);
            if (result.ok) {
              laid += 1;
              expectClosed(six, result);
            } else {
              expect(result.faults).toHaveLength(1);
              expect(['speed', 'tyre', 'torque']).toContain(result.faults[0]?.field);
            }
          }
      expect(laid).toBeGreaterThan(24);
    });
});

describe('what cannot be laid out or read', () => {
  const faultsOf = (six: Partial<SixFields>) => {
    const result = beginBuild({ ...SIX, ...six });
    return result.ok ? [] : result.faults.map(({ field, problem }) => ({ field, problem }));
  };

  test('each field is named with what is wrong, all at once', () => {
    const faults = faultsOf({ power: '27', torqueAt: '', gears: '2,75 x', tyre: 'big', mass: '320', speed: '65' });
    expect(new Set(faults.map(({ field }) => field))).toEqual(
      new Set(['power', 'torqueAt', 'gears', 'tyre', 'mass', 'speed']),
    );
  });

  test('figures that contradict each other', () => {
    expect(faultsOf({ powerAt: '5000 rpm' })[0]?.field).toBe('powerAt');
    expect(faultsOf({ power: '90 kW' })[0]?.field).toBe('power');
    expect(faultsOf({ torque: '90 N.m' })[0]?.field).toBe('torque');
    expect(faultsOf({ gears: '0.96 1.12 2.75' })[0]?.problem).toMatch(/First gear/);
  });

  test('a diameter where a roll-out belongs', () => {
    expect(faultsOf({ tyre: '26 in' })[0]?.problem).toMatch(/one turn of the wheel/);
  });

  test('a reduction that two chains and a pair do not make', () => {
    expect(faultsOf({ speed: '3 km/h' })[0]).toMatchObject({ field: 'speed' });
    expect(faultsOf({ speed: '900 km/h' })[0]).toMatchObject({ field: 'speed' });
  });
});
