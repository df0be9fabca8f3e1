import { readFileSync } from 'node:fs';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';

const open = (name: string) => {
  const opened = openSession(readFileSync(new URL(`../../examples/${name}/build.json`, import.meta.url), 'utf8'));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment;
};

describe.each(['marsh-hauler', 'rail-cart', 'hill-trike'])('the layout of %s closes', (name) => {
  const { findings, closure } = open(name);
  const severities = (check: string) => findings.filter((f) => f.check === check).map((f) => f.severity);

  test('chains reach round with even links and clear sprockets, belts fit, axes are parallel or meet', () => {
    for (const check of [
      'chain.fit',
      'chain.links',
      'chain.clear',
      'chain.parallel',
      'belt.fit',
      'spur.centres',
      'bevel.meet',
    ])
      for (const severity of severities(check)) expect(`${check} ${severity}`).toBe(`${check} holds`);
  });

  test('power balances and torques close', () => {
    expect(closure?.power).toBeLessThan(1e-12);
    expect(closure?.torque).toBeLessThan(1e-12);
  });

  test('the wheel rolls forward, but for the first form of hill-trike, whose spur pair turns it backward', () => {
    expect(severities('path.forward')).toEqual([name === 'hill-trike' ? 'fails' : 'holds']);
    expect(findings.filter((f) => f.severity === 'fails').map((f) => f.check)).toEqual(
      name === 'hill-trike' ? ['path.forward'] : [],
    );
  });
});
