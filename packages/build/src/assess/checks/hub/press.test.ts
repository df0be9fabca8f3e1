import { describe, expect, test } from 'vitest';
import { openSession } from '../../../session.ts';
import { SMALL_BUILD } from '../../../testing/small-build.ts';
import { pressPasses } from './press.ts';
import { torqueSeatOf } from './seats.ts';

type Json = { [key: string]: Json | string | number | readonly unknown[] };
interface Build {
  brief: { loads?: Json; vehicle: Json; engine: { output: { material?: string; seats: { sprocket: Json } } } };
  path: { shafts: { axle: { direction: readonly number[]; material?: string; seats: { wheel: Json } } } };
}

const D = 0.04;
const PRESS = { interference: '0.06..0.09 mm', length: '40 mm', outside: '80 mm' };
const hub = (metal: string, press: Json = {}): Json => ({
  torqueBy: 'press fit',
  metal,
  press: { ...PRESS, roughness: '0.000001 mm', ...press },
});

/** Findings of the smallest build after a change. */
function findings(change: (build: Build) => void) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as Build;
  change(build);
  const opened = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return (id: string) => {
    const found = opened.session.assessment.findings.find((one) => one.id === id);
    return found && { ...found, says: found.says.replace(/\s/g, ' ') };
  };
}

/** The output's sprocket of the smallest build pressed on 40 mm. */
const pressed = (metal: string, { cold = '-10 degC', hot = '80 degC' } = {}, press: Json = {}) =>
  findings(({ brief }) => {
    brief.loads = { cold, hot };
    brief.engine.output.material = '42CrMo4-tempered-to-100';
    Object.assign(brief.engine.output.seats.sprocket, { diameter: '40 mm', width: '40 mm', hub: hub(metal, press) });
  })('hub.torque:/brief/engine/output/seats/sprocket');

const SHOP = { cold: '20 degC', hot: '20 degC' };
const reserve = (...of: Parameters<typeof pressed>): number => pressed(...of)?.reserve?.value ?? Number.NaN;

describe('a pressed hub at the temperatures of work', () => {
  test('an aluminium hub at 80 °C holds what its growth leaves, worked out by hand: 122.8 N·m of 236 N·m', () => {
    const found = pressed('wrought aluminium', {}, { interference: '0.06 mm' });
    // 60 µm less 1.6 nm of smoothed peaks and 12e-6 · 40 mm · 60 K; the walls give (1.9967 / 70 GPa + 0.7 / 206 GPa) · d.
    const left = 60e-6 - 1.6e-9 - 12e-6 * D * 60;
    const p = left / (D * ((8000 / 4800 + 0.33) / 70e9 + 0.7 / 206e9));
    expect(found?.capacity?.value).toBeCloseTo((0.05 * p * Math.PI * D ** 2 * 0.04) / 2, 2);
    expect(found?.says).toMatch(
      /at 80 °C where the aluminium hub loosens by 1.1 thou, the press fit slips at 122.8 N·m/,
    );
    expect(reserve('wrought aluminium', SHOP, { interference: '0.06 mm' }) / (found?.reserve?.value ?? 0)).toBeCloseTo(
      60 / 31.2,
      3,
    );
    // It lets go altogether where the growth takes all of it.
    expect(pressed('wrought aluminium', {}, { interference: '0.028 mm' })?.severity).toBe('fails');
  });

  test('a steel hub is the same at any temperature, and asks for none', () => {
    expect(reserve('hardened steel')).toBe(reserve('hardened steel', SHOP));
    expect(reserve('hardened steel', { cold: '-40 degC', hot: '120 degC' })).toBe(reserve('hardened steel', SHOP));
    const found = pressed('hardened steel', { cold: '-40 degC', hot: '120 degC' });
    expect(found?.says).not.toContain('°C');
  });

  test('cast iron grows less than steel: it loosens in the cold and is strained in the heat', () => {
    // 1.5e-6 · 40 mm · 50 K = 3 µm of 30 µm; then 3.6 µm at 80 °C on top of 120 µm.
    const loose = { interference: '0.03 mm', outside: '120 mm' };
    const winter = { cold: '-30 degC', hot: '80 degC' };
    const summer = { cold: '20 degC', hot: '80 degC' };
    expect(reserve('cast iron', winter, loose) / reserve('cast iron', SHOP, loose)).toBeCloseTo(27 / 30, 4);
    expect(reserve('cast iron', summer, loose)).toBe(reserve('cast iron', SHOP, loose));
    expect(pressed('cast iron', winter, loose)?.says).toContain('at −30 °C where the grey cast iron hub loosens');
    const tight = { interference: '0.12 mm' };
    expect(reserve('cast iron', SHOP, tight) / reserve('cast iron', summer, tight)).toBeCloseTo(123.6 / 120, 4);
  });

  test('the stress of an aluminium hub is that of the coldest day', () => {
    const tight = { interference: '0.2..0.25 mm' };
    const cold = pressed('cast aluminium', {}, tight);
    const shop = pressed('cast aluminium', SHOP, tight);
    // 12e-6 · 40 mm · 30 K = 14.4 µm come to 250 µm.
    expect((cold?.demand?.value ?? 0) / (shop?.demand?.value ?? 1)).toBeCloseTo(264.4 / 250, 6);
    expect(cold?.says).toMatch(
      /At the most, at −10 °C where the aluminium hub tightens by 0.57 thou, the stress in the hub/,
    );
  });
});

describe('a push along the shaft', () => {
  const wheel = (direction: readonly number[], drivenLoad?: string) =>
    findings(({ brief, path }) => {
      if (drivenLoad) brief.vehicle.drivenLoad = drivenLoad;
      path.shafts.axle.direction = direction;
      path.shafts.axle.material = '42CrMo4-tempered-to-100';
      Object.assign(path.shafts.axle.seats.wheel, { diameter: '40 mm', width: '40 mm', hub: hub('hardened steel') });
    })('hub.torque:/path/shafts/axle/seats/wheel');
  const lean = Math.asin(0.06);

  test('the ground under a leaning wheel pushes it along its shaft, and what that takes from the torque is told', () => {
    const straight = wheel([0, 1, 0], '200 kg');
    const leaning = wheel([0, Math.cos(lean), Math.sin(lean)], '200 kg');
    expect(straight?.says).toContain('beside 0 N along the shaft');
    const push = 200 * 9.80665 * 0.06;
    expect(leaning?.says).toContain(`beside ${push.toPrecision(4)} N along the shaft`);
  });

  test('a push without torque is judged by itself, and no push asks nothing', () => {
    const opened = (direction: readonly number[]) => {
      const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as Build;
      const { axle } = build.path.shafts;
      build.brief.vehicle.drivenLoad = '200 kg';
      axle.direction = direction;
      axle.material = '42CrMo4-tempered-to-100';
      const loose = hub('hardened steel', { interference: '0.001 mm' });
      Object.assign(axle.seats.wheel, { diameter: '40 mm', width: '40 mm', hub: loose });
      const session = openSession(JSON.stringify(build), { ends: 'not yet' });
      if (!session.ok) throw new Error(JSON.stringify(session.faults));
      const { scene } = session.session.evaluation.middle;
      const found = torqueSeatOf(scene.model, { address: '/path/shafts/axle/seats/wheel', element: '', stage: null });
      const [load] = scene.cases;
      if (!found || !load) throw new Error('No pressed wheel.');
      return pressPasses(found, 0, load, scene);
    };
    expect(opened([0, 1, 0])).toBeNull();
    const outcome = opened([0, Math.cos(lean), Math.sin(lean)]);
    if (outcome?.kind !== 'measured') throw new Error('Not measured.');
    // p = δ E / (2 d) (1 − d² / D²), and µ p π d l of friction against the load's part along the shaft.
    const squeeze = (((1e-6 - 1.6e-9) * 206e9) / (2 * D)) * (1 - 0.25);
    const friction = 0.06 * squeeze * Math.PI * D * 0.04;
    expect(outcome.reserve).toBeCloseTo(friction / (200 * 9.80665 * 0.06), 6);
    expect(outcome.says().replace(/\s/g, ' ')).toMatch(/slips at 581.* N along the shaft; 117.7 N is asked/);
  });

  test('where the load on it is not known, only a leaning wheel asks for it', () => {
    expect(wheel([0, 1, 0])?.missing).toEqual([]);
    expect(wheel([0, Math.cos(lean), Math.sin(lean)])?.missing).toContainEqual(
      expect.objectContaining({ address: '/brief/vehicle/drivenLoad' }),
    );
  });
});
