import { chainIdlerLength } from '@oddwheel/mechanics/chain/idler-length';
import { dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import { describe, expect, test } from 'vitest';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

type Json = { [key: string]: Json | string | number | boolean | readonly unknown[] };

function assessed(change: (build: { output: Json; shafts: Json; stages: Json }) => void) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as { brief: Json; path: { shafts: Json; stages: Json } };
  change({ output: (build.brief.engine as Json).output as Json, ...build.path });
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { assessment, evaluation } = opened.session;
  return {
    find: (check: string) => assessment.findings.find((f) => f.check === check),
    scene: evaluation.middle.scene,
    path: assessment.path,
  };
}

describe('idler of a chain', () => {
  // 520, 15 : 45, driver ahead and 50 mm up, wheel rolling forward: the span below hangs slack.
  const idler = (more: Json = {}, at: Json = {}) =>
    assessed(({ stages }) => {
      (stages['chain-1'] as Json).idler = {
        at: { x: '330 mm', y: '88.9 mm', z: '-60 mm', ...at },
        teeth: 12,
        span: 'slack span',
        runs: 'outside the chain',
        hold: 'fixed',
        ...more,
      };
    });

  test('on the slack span below, held fast: found where it is, and its length counts', () => {
    const { find, scene } = idler();
    expect(find('idler.place')?.severity).toBe('holds');
    expect(find('idler.slack-side')?.severity).toBe('holds');
    expect(find('idler.overrun')?.severity).toBe('holds');
    const chain = scene.stages[0]?.chain;
    const [c, u] = [Math.hypot(0.6, 0.05), [-0.6, -0.05]];
    const [out, up] = [
      [-0.27, -0.11],
      [-0.05, 0.6],
    ];
    const along = ((out[0] ?? 0) * (u[0] ?? 0) + (out[1] ?? 0) * (u[1] ?? 0)) / c;
    const across = ((out[0] ?? 0) * (up[0] ?? 0) + (out[1] ?? 0) * (up[1] ?? 0)) / c;
    const exact = chainIdlerLength.run({
      pitch: 0.015875,
      teethDriver: 15,
      teethDriven: 45,
      centreDistance: c,
      teethIdler: 12,
      idlerAlong: along,
      idlerAcross: -across,
      idlerSide: 'outside',
    });
    expect(chain?.linksNeeded).toBeCloseTo(exact.links, 9);
    expect(find('chain.fit')?.demand?.value).toBeCloseTo(exact.links, 9);
    expect(find('idler.mesh')?.capacity?.value).toBeCloseTo(exact.teethInMesh, 9);
  });

  test('pressed in little it has too few teeth in mesh; off its span the finding says so', () => {
    expect(idler({}, { z: '-75 mm' }).find('idler.mesh')?.severity).toBe('fails');
    const off = idler({}, { z: '-300 mm' });
    expect(off.find('idler.mesh')?.says).toContain('does not touch');
    expect(off.find('chain.fit')?.missing[0]?.address).toBe('/path/stages/chain-1/idler/at');
  });

  test('sprung on the span that runs tight on overrun it fails, and the fix is named', () => {
    const found = idler({ hold: 'sprung' }).find('idler.overrun');
    expect(found?.severity).toBe('fails');
    expect(found?.says).toContain('Hold the idler fast');
  });

  test('drawn on the upper span and meant for the slack one it fails; on purpose there it is thin and carries pull', () => {
    const up = { z: '95 mm' };
    expect(idler({}, up).find('idler.place')?.severity).toBe('fails');
    const meant = idler({ span: 'tight span' }, up);
    expect(meant.find('idler.place')?.severity).toBe('holds');
    expect(meant.find('idler.slack-side')?.severity).toBe('thin');
  });

  test('on the tight span the pulls follow the bent chain: each turns its shaft by one newton metre, and what is left over presses on the idler', () => {
    const { scene } = idler({ span: 'tight span' }, { z: '95 mm' });
    const geometry = scene.stages[0];
    const actions = geometry?.actions(1);
    if (!geometry?.chain?.idler || !actions) throw new Error('no idler');
    const { pitchRadiusDriver: r1, pitchRadiusDriven: r2, idler: over } = geometry.chain;
    expect(dot(actions.from.moment, [0, 1, 0])).toBeCloseTo(-1, 12);
    expect(dot(actions.to.moment, [0, 1, 0])).toBeCloseTo(1, 12);
    const sum = plus(times(r1, actions.from.force), times(r2, actions.to.force));
    expect(norm(sum)).toBeCloseTo(2 * Math.sin(over.wrap / 2), 12);
    // An idler outside presses the chain inward, so the shafts are pulled outward.
    expect(dot(sum, over.span)).toBeLessThan(0);
    const slack = geometry.actions(-1);
    expect(norm(plus(times(r1, slack.from.force), times(r2, slack.to.force)))).toBeLessThan(1e-12);
  });

  test('out of the plane by more than a millimetre (The Complete Guide to Chain, 7.1.2.2, read)', () => {
    expect(idler().find('idler.plane')?.severity).toBe('holds');
    expect(idler({}, { y: '90.5 mm' }).find('idler.plane')?.severity).toBe('fails');
  });
});

describe('alignment', () => {
  test('sprocket planes: 1 mm at 602 mm centres (The Complete Guide to Chain, 7.1.2.2, read)', () => {
    const off = (station: string) =>
      assessed(({ shafts }) => {
        ((shafts.axle as Json).seats as Json).sprocket = { kind: 'sprocket', name: 'sprocket 45', station };
      }).find('chain.plane');
    expect(off('3 1/2 in')?.severity).toBe('holds');
    expect(off('89.9 mm')?.reserve?.value).toBeCloseTo(1, 6);
    expect(off('91 mm')?.severity).toBe('fails');
  });
});

describe('universal joints', () => {
  const DEGREE = Math.PI / 180;
  /** Output aft, a joint, then a shaft at an angle to it in the level plane, bevel free: the wheel's shaft is not across, which is no matter here. */
  const joint = (angle: number, kind: string, second?: number) =>
    assessed(({ output, shafts, stages }) => {
      output.origin = { x: '600 mm', y: '0 mm', z: '0 mm' };
      output.direction = [-1, 0, 0];
      output.seats = { joint: { kind: 'joint', name: 'joint', station: '100 mm' } };
      const middle = second === undefined ? 0 : 200;
      const away = second === undefined ? angle : second;
      const [x, y] = [500 - middle * Math.cos(angle * DEGREE), middle * Math.sin(angle * DEGREE)];
      shafts.axle = {
        name: 'Axle',
        origin: { x: `${x} mm`, y: `${y} mm`, z: '0 mm' },
        direction: [-Math.cos(away * DEGREE), Math.sin(away * DEGREE), 0],
        seats: {
          joint: { kind: 'joint', name: 'joint', station: '0 mm' },
          wheel: { kind: 'wheel', name: 'wheel', station: '200 mm' },
        },
      };
      delete stages['chain-1'];
      stages.joint = { kind: 'coupling', name: 'Joint', from: 'output/joint', to: 'axle/joint', joint: kind };
    });
  const fact = (found: ReturnType<typeof joint>, key: string) =>
    found.path.find(({ kind }) => kind === 'coupling')?.facts.find((f) => f.key === key)?.spread.value;

  test('uj-ratio-30 — stored question and answer: 1.1547 less 0.86603 at 30° (read)', () => {
    const found = joint(30, 'universal joint');
    expect(fact(found, 'unevenness')).toBeCloseTo(1.1547 - 0.86603, 4);
    expect(found.find('coupling.angle')?.severity).toBe('thin');
    expect(found.find('coupling.even')?.severity).toBe('thin');
    expect(joint(40, 'universal joint').find('coupling.angle')?.severity).toBe('fails');
    expect(joint(2, 'universal joint').find('coupling.even')?.severity).toBe('holds');
  });

  test('two joints at 8° each with parallel ends turn evenly; at 7° and 5° like one at 4.90° (rule of squares 4.899°, computed)', () => {
    const even = joint(8, 'two universal joints', 0);
    expect(fact(even, 'unevenness')).toBeCloseTo(0, 12);
    expect(even.find('coupling.even')?.severity).toBe('holds');
    const uneven = joint(7, 'two universal joints', 2).find('coupling.even');
    // In phase the extremes of both joints meet: highest speed cos 5° / cos 7°.
    const exact = Math.acos(Math.cos(7 * DEGREE) / Math.cos(5 * DEGREE));
    expect(uneven?.demand?.value).toBeCloseTo(exact, 9);
    expect(Math.abs(exact / DEGREE - 4.899)).toBeLessThan(0.01);
    expect(uneven?.severity).toBe('thin');
  });
});

describe('spiral bevel pair', () => {
  const pair = (more: Json) =>
    assessed(({ output, shafts, stages }) => {
      output.origin = { x: '600 mm', y: '0 mm', z: '0 mm' };
      output.direction = [-1, 0, 0];
      output.seats = { gear: { kind: 'gear', name: 'pinion 16', station: '504 mm' } };
      (shafts.axle as Json).seats = {
        wheel: { kind: 'wheel', name: 'wheel', station: '-50 mm' },
        gear: { kind: 'gear', name: 'gear 48', station: '32 mm' },
      };
      delete stages['chain-1'];
      stages.pair = {
        kind: 'bevel',
        name: 'Pair',
        from: 'output/gear',
        to: 'axle/gear',
        teeth: { driver: 16, driven: 48 },
        module: '4 mm',
        faceWidth: '20 mm',
        ...more,
      };
    });

  test('gear-spiral-forces-signs — 16 : 48 at 90°, 20° and 35°: axial 804.8 or −523.8, radial 200.1 or 642.9 per 1000 of tangential (memory)', () => {
    const seen = (['left', 'right'] as const).map((hand) => {
      const { scene } = pair({ spiral: '35 deg', hand });
      const actions = scene.stages[0]?.actions(1);
      expect(actions?.forcesKnown).toBe(true);
      const [x = 0, y = 0, z = 0] = actions?.from.force ?? [];
      // The pinion's back looks forward; the gear stands left of its axis, so radial toward the own axis is to the right.
      const mean = 0.064 * (1 - 0.01 / (0.032 * Math.sqrt(10)));
      const unit = 1000 / (2 / mean);
      expect(Math.abs(z) * unit).toBeCloseTo(1000, 6);
      return { axial: x * unit, radial: -y * unit };
    });
    const [low, high] = [...seen].sort((a, b) => a.axial - b.axial);
    expect(Math.abs((high?.axial ?? 0) - 804.8)).toBeLessThan(0.8);
    expect(Math.abs((high?.radial ?? 0) - 200.1)).toBeLessThan(0.6);
    expect(Math.abs((low?.axial ?? 0) + 523.8)).toBeLessThan(0.8);
    expect(Math.abs((low?.radial ?? 0) - 642.9)).toBeLessThan(0.6);
  });

  test('pinion and gear press on each other with equal and opposite forces', () => {
    const actions = pair({ spiral: '35 deg', hand: 'left' }).scene.stages[0]?.actions(1);
    if (!actions) throw new Error('no actions');
    const back = times(3, actions.to.force);
    expect(norm(minus(back, times(-1, actions.from.force)))).toBeLessThan(1e-9 * norm(back));
  });

  test('one hand pushes the pinion out while driving, the other draws it in; half an answer is unknown', () => {
    const severity = (more: Json) => pair(more).find('bevel.hand')?.severity;
    expect(
      [severity({ spiral: '35 deg', hand: 'left' }), severity({ spiral: '35 deg', hand: 'right' })].sort(),
    ).toEqual(['holds', 'thin']);
    const blank = pair({ spiral: '35 deg' });
    expect(blank.find('bevel.hand')?.missing[0]?.address).toBe('/path/stages/pair/hand');
    expect(blank.scene.stages[0]?.actions(1).forcesKnown).toBe(false);
    expect(pair({ hand: 'left' }).find('bevel.hand')?.missing[0]?.address).toBe('/path/stages/pair/spiral');
    expect(pair({}).find('bevel.hand')).toBeUndefined();
  });

  test('seats at the mean or outer cone: 86.5 to 96 mm and 28.8 to 32 mm from the apex; half a face beyond fails', () => {
    expect(pair({}).find('bevel.seat')?.severity).toBe('holds');
    const off = assessed(({ output, shafts, stages }) => {
      output.origin = { x: '600 mm', y: '0 mm', z: '0 mm' };
      output.direction = [-1, 0, 0];
      output.seats = { gear: { kind: 'gear', name: 'pinion 16', station: '490 mm' } };
      (shafts.axle as Json).seats = {
        wheel: { kind: 'wheel', name: 'wheel', station: '-50 mm' },
        gear: { kind: 'gear', name: 'gear 48', station: '32 mm' },
      };
      delete stages['chain-1'];
      stages.pair = {
        kind: 'bevel',
        name: 'Pair',
        from: 'output/gear',
        to: 'axle/gear',
        teeth: { driver: 16, driven: 48 },
        module: '4 mm',
        faceWidth: '20 mm',
      };
    }).find('bevel.seat');
    expect(off?.demand?.value).toBeCloseTo(0.014, 9);
    expect(off?.severity).toBe('fails');
  });
});
