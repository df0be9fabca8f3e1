import { describe, expect, test } from 'vitest';
import { openSession } from '../../../session.ts';
import { SMALL_BUILD } from '../../../testing/small-build.ts';

type Json = { [key: string]: Json | string | number | readonly unknown[] };

/** Findings of the output's sprocket of the smallest build, on a shaft of 25 mm, with a torque joint. */
function findings(hub: Json | null, seat: Json = {}) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as {
    brief: { engine: { output: { material?: string; seats: { sprocket: Json } } } };
  };
  const { output } = build.brief.engine;
  output.material = '42CrMo4-tempered-to-40';
  Object.assign(output.seats.sprocket, { diameter: '25 mm', width: '30 mm' }, seat, hub ? { hub } : {});
  const opened = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const own = opened.session.assessment.findings.filter(({ address }) => address.endsWith('output/seats/sprocket'));
  return (check: string) => {
    const found = own.find((one) => one.check === `hub.${check}`);
    // Numbers stand in narrow spaces that do not break.
    return found && { ...found, says: found.says.replace(/\s/g, ' ') };
  };
}

const key = (more: Json = {}, hub: Json = {}): Json => ({
  torqueBy: 'key',
  metal: 'medium carbon steel',
  key: { length: '28 mm', fit: 'tight', ...more },
  ...hub,
});

describe('torque joint of a seat', () => {
  test('a seat without one is asked for it, with the choices', () => {
    const named = findings(null)('named');
    expect(named?.severity).toBe('unknown');
    expect(named?.missing[0]?.address).toBe('/brief/engine/output/seats/sprocket/hub');
    expect(named?.missing[0]?.says).toMatch(
      /a key, a spline, a taper, a press fit, setscrews, a bolted flange, a weld/,
    );
    expect(findings(key())('named')).toBeUndefined();
  });

  test('a key of the standard is taken from its shaft: 8 x 7 on 25 mm, and by hand', () => {
    const find = findings(key());
    const torque = find('torque');
    expect(find('size')?.says).toContain('8 mm x 7 mm');
    // Least reserve where the hub is pressed: T / (12.5 mm) over 3 mm of height and 20 mm of straight side.
    const pressed = torque?.demand?.value ?? Number.NaN;
    const asked = ((pressed * 0.003 * 0.02) / 1) * 0.0125;
    expect(torque?.says).toContain(`${Math.round(asked)} N·m`);
    expect(torque?.capacity?.value).toBeCloseTo(340e6, -1);
    expect(find('fit')?.severity).toBe('holds');
    expect(find('possible')).toBeUndefined();
  });

  test('two keys carry as one and a half, square ends more than round ones', () => {
    const reserve = (hub: Json) => findings(hub)('torque')?.reserve?.value ?? Number.NaN;
    expect(reserve(key({ keys: 2 })) / reserve(key())).toBeCloseTo(1.5, 6);
    expect(reserve(key({ ends: 'square' })) / reserve(key())).toBeCloseTo(28 / 20, 6);
  });

  test('keys that cannot be made fail and say why; nothing else is said of them', () => {
    for (const [more, words] of [
      [{ length: '45 mm' }, /45 mm long in a part that is 30 mm wide/],
      [{ length: '7 mm' }, /shorter than its round ends/],
      [{ height: '4 mm' }, /nothing stands in the hub/],
      [{ width: '16 mm', height: '10 mm', depth: '5 mm' }, /wider than half of the shaft/],
      [{ depth: '9 mm', height: '12 mm' }, /is no shaft/],
    ] as const) {
      const find = findings(key(more));
      expect(find('possible')?.severity).toBe('fails');
      expect(find('possible')?.says).toMatch(words);
      expect(find('torque')).toBeUndefined();
    }
  });

  test('a key of another size than the standard, one that is too long, and one that slides are thin', () => {
    expect(findings(key({ width: '6 mm', height: '6 mm', depth: '3.5 mm' }))('size')?.severity).toBe('thin');
    expect(findings(key({ length: '40 mm' }), { width: '45 mm' })('size')?.severity).toBe('thin');
    expect(findings(key({ fit: 'slides' }))('fit')?.severity).toBe('thin');
    expect(findings(key({ sizes: 'inch standard' }))('size')?.severity).toBe('holds');
  });

  test('a shaft off the table asks for the size of the key', () => {
    const torque = findings(key(), { diameter: '5 mm' })('torque');
    expect(torque?.severity).toBe('unknown');
    expect(torque?.missing[0]?.says).toContain('width, height and depth');
  });

  test('setscrews alone fail, however many', () => {
    const find = findings({ torqueBy: 'setscrews', screws: { size: 'M8', count: 2 }, locking: 'thread locker' });
    expect(find('alone')?.severity).toBe('fails');
    expect(find('torque')?.capacity?.value).toBeCloseTo(((1500 * 4.4482216) / 2) * 1.3 * 0.025, 3);
    expect(find('locked')?.severity).toBe('holds');
  });

  test('straight, involute and unknown splines by their measured flanks', () => {
    const straight = findings({
      torqueBy: 'spline',
      metal: 'hardened steel',
      spline: { form: 'straight', teeth: 6, length: '24 mm', outside: '28 mm', inside: '23 mm' },
    })('torque');
    // 2 T / 25.5 mm over 0.75 of 6 flanks of 2.5 x 24 mm.
    expect(straight?.reserve?.value).toBeGreaterThan(1);
    const involute = findings({
      torqueBy: 'spline',
      metal: 'hardened steel',
      spline: { form: 'involute', teeth: 19, length: '20 mm', module: '1.25 mm' },
    })('torque');
    expect(involute?.severity).toBe('holds');
    const missing = findings({ torqueBy: 'spline', spline: { form: 'straight', teeth: 6, length: '20 mm' } })('torque');
    expect(missing?.missing.map(({ address }) => address.split('/').at(-1))).toEqual(['outside', 'inside']);
  });

  test('a spline of unknown standard is ranked by its diameters and size over pins', () => {
    const spline = { form: 'of unknown standard', teeth: 19, length: '20 mm', outside: '24.97 mm', inside: '22.5 mm' };
    const near = findings({ torqueBy: 'spline', spline: { ...spline, pin: '2.5 mm', over: '27.61 mm' } })('standard');
    expect(near?.severity).toBe('holds');
    expect(near?.says).toContain('ISO 4156, 30 degrees, module 1.25 mm');
    const none = findings({ torqueBy: 'spline', spline: { ...spline, pin: '2.5 mm', over: '29 mm' } })('standard');
    expect(none?.severity).toBe('thin');
    expect(none?.says).toContain('no standard');
    const asked = findings({ torqueBy: 'spline', spline })('standard');
    expect(asked?.missing.map(({ address }) => address.split('/').at(-1))).toEqual(['pin', 'over']);
  });

  test('a taper holds by the least preload of its nut', () => {
    const taper = { ratio: '10', length: '28 mm', thread: 'M16x1.5', tightening: '120 N.m' };
    const hub = { torqueBy: 'taper', taper, locking: 'split pin' };
    const draw = (0.7 * 120) / (0.2 * 0.016);
    const beta = Math.atan(1 / 20);
    const normal = draw / (Math.sin(beta) + 0.12 * Math.cos(beta));
    expect(findings(hub)('torque')?.capacity?.value).toBeCloseTo((0.12 * normal * (0.025 - 0.0014)) / 2, 6);
    expect(findings({ ...hub, taper: { ...taper, faces: 'blasted' } })('torque')?.capacity?.value).toBeGreaterThan(
      (0.12 * normal * 0.0236) / 2,
    );
    expect(findings({ torqueBy: 'taper', taper })('locked')?.severity).toBe('unknown');
    expect(findings({ torqueBy: 'taper', taper, locking: 'nothing' })('locked')?.severity).toBe('fails');
    expect(findings({ torqueBy: 'taper', taper: { ratio: '10', length: '400 mm' } })('possible')?.severity).toBe(
      'fails',
    );
  });

  const bolts = {
    thread: 'M8',
    count: 6,
    circle: '80 mm',
    grade: 'class-8.8',
    tightening: '25 N.m',
    thickness: '8 mm',
    edge: '14 mm',
    into: 'a thread in the part',
    engagement: '16 mm',
    part: 'cast aluminium',
  };
  const flange = (more: Json = {}): Json => ({
    torqueBy: 'bolted flange',
    bolts: { ...bolts, ...more },
    locking: 'lock wire',
  });

  test('a flange: bolts in shear, slip, preload, threads in aluminium', () => {
    const find = findings(flange());
    expect(find('torque')?.severity).toBe('holds');
    expect(find('preload')?.demand?.value).toBeCloseTo((1.3 * 25) / (0.2 * 0.008), 3);
    expect(find('preload')?.severity).toBe('holds');
    expect(find('thread')?.severity).toBe('holds');
    expect(findings(flange({ engagement: '8 mm' }))('thread')?.severity).toBe('thin');
    expect(findings(flange({ engagement: '8 mm', part: 'medium carbon steel' }))('thread')?.severity).toBe('holds');
    expect(findings(flange({ into: 'nuts' }))('thread')).toBeUndefined();
    expect(findings(flange({ tightening: '45 N.m' }))('preload')?.severity).toBe('fails');
    expect(findings(flange({ count: 2, circle: '40 mm' }))('slip')?.severity).toBe('thin');
    expect(findings(flange({ circle: '20 mm' }))('possible')?.severity).toBe('fails');
  });

  test('a flange of which something is missing asks for it', () => {
    for (const key of ['grade', 'thickness', 'edge'] as const) {
      const { [key]: _, ...rest } = bolts;
      const torque = findings({ torqueBy: 'bolted flange', bolts: rest, locking: 'staked' })('torque');
      expect(torque?.missing[0]?.address).toBe(`/brief/engine/output/seats/sprocket/hub/bolts/${key}`);
    }
    expect(findings({ torqueBy: 'bolted flange', locking: 'staked' })('torque')?.severity).toBe('unknown');
  });

  test('a weld: the base metal governs for mild steel, two welds share', () => {
    const weld = (count: number) =>
      findings({ torqueBy: 'weld', metal: 'mild steel', weld: { leg: '5 mm', count } })('torque');
    expect(weld(1)?.capacity?.value).toBeCloseTo(0.4 * 235e6, -1);
    expect(weld(1)?.says).toContain('base metal governs');
    expect((weld(2)?.reserve?.value ?? 0) / (weld(1)?.reserve?.value ?? 1)).toBeCloseTo(2, 6);
  });

  test('a press fit holds torque at its least interference, by hand, and yields at its most', () => {
    const press = {
      interference: '0.03..0.04 mm',
      length: '30 mm',
      outside: '50 mm',
      roughness: '0.005 mm',
    };
    const hub = { torqueBy: 'press fit', metal: 'hardened steel' };
    const torque = findings({ ...hub, press })('torque');
    // Lamé, both of steel, solid shaft: p = δ E / (2 d) (1 - d² / D²); T = µ p π d² l / 2.
    const tight = 0.03e-3 - 0.8 * 0.01e-3;
    const squeeze = ((tight * 206e9) / (2 * 0.025)) * (1 - 0.25);
    expect(torque?.capacity?.value).toBeCloseTo((0.06 * squeeze * Math.PI * 0.025 ** 2 * 0.03) / 2, 6);
    expect(torque?.says).toContain('At the least interference');
    const of = (more: Json) => findings({ ...hub, press: { ...press, ...more } });
    expect(of({ joined: 'shrunk, degreased' })('torque')?.capacity?.value).toBeCloseTo(
      (torque?.capacity?.value ?? 0) * 3,
      6,
    );
    const split = of({ interference: '0.03..0.5 mm', joined: 'shrunk, degreased' })('torque');
    expect(split?.capacity?.value).toBeCloseTo(800e6, -1);
    expect(split?.severity).toBe('fails');
    expect(of({ interference: '0.005 mm' })('torque')?.severity).toBe('fails');
    expect(of({ outside: '25 mm' })('possible')?.says).toContain('has no wall');
    expect(of({ bore: '25 mm' })('possible')?.severity).toBe('fails');
    expect(of({ length: '31 mm' })('possible')?.severity).toBe('fails');
  });

  test('a keyway that is no notch of the shaft is told', () => {
    expect(findings(key())('keyway')?.severity).toBe('thin');
    expect(findings(key())('keyway')?.says).toContain('does not count it');
    expect(findings({ torqueBy: 'weld' })('keyway')).toBeUndefined();
  });

  test('a press fit without its sizes asks for them; one piece with the shaft asks nothing', () => {
    expect(findings({ torqueBy: 'press fit' })('torque')?.severity).toBe('unknown');
    const one = findings({ torqueBy: 'one piece with the shaft' });
    expect(one('named')).toBeUndefined();
    expect(one('torque')).toBeUndefined();
  });
});
