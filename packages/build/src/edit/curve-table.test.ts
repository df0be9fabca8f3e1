import { describe, expect, test } from 'vitest';
import { curveFromTable } from './curve-table.ts';

const ROWS = [
  [2500, 32.5],
  [3500, 36.8],
];

describe('a torque curve pasted from a table', () => {
  test.each([
    ['tabs', 'rpm\tN·m\n2500\t32.5\n3500\t36.8'],
    ['semicolons and decimal commas', 'Drehzahl [1/min];Moment [Nm]\n2500;32,5\n3500;36,8\n'],
    ['blanks and decimal commas', 'rpm N.m\n2500 32,5\n3500 36,8'],
    ['commas', 'Engine speed (rpm),Torque (N m)\r\n2500,32.5\r\n3500,36.8\r\n'],
    ['commas with blanks', 'rpm, Nm\n2500, 32.5\n3500, 36.8'],
    ['bars', '| rpm | Nm |\n| 2500 | 32.5 |\n| 3500 | 36.8 |'],
    ['names in one line and units in the next', 'speed\ttorque\nrpm\tNm\n2500\t32.5\n3500\t36.8'],
    ['falling speeds', 'rpm\tNm\n3500\t36.8\n2500\t32.5'],
    ['a third column', 'torque Nm\tpower kW\trpm\n32.5\t8.5\t2500\n36.8\t13.5\t3500'],
  ])('%s', (_, text) => {
    expect(curveFromTable(text)).toEqual({
      ok: true,
      curve: { units: { speed: 'rpm', torque: 'N.m' }, rows: ROWS },
      fromPower: false,
    });
  });

  test.each(['rpm\tlbf·ft', 'r/min\tft-lb', 'RPM\tlb ft', 'rpm\tft.lbf'])('foot-pounds: %s', (head) => {
    const read = curveFromTable(`${head}\n2500\t24\n3500\t27`);
    expect(read).toMatchObject({ ok: true, curve: { units: { speed: 'rpm', torque: 'lbf.ft' } } });
  });

  test('torque from power: 13.5 kW at 3500 rpm is 13500 / (3500 × 2π / 60) = 36.83 N·m', () => {
    expect(curveFromTable('rpm kW\n3500 13.5\n7000 27')).toEqual({
      ok: true,
      curve: {
        units: { speed: 'rpm', torque: 'N.m' },
        rows: [
          [3500, 36.83],
          [7000, 36.83],
        ],
      },
      fromPower: true,
    });
  });

  test('horsepower, by its definition: torque in lbf·ft is 5252.1 × hp / rpm', () => {
    const read = curveFromTable('rpm\thp\n5252\t50\n6000\t50');
    const torque = read.ok ? (read.curve.rows[0]?.[1] ?? 0) : 0;
    expect(torque / 1.3558179).toBeCloseTo((5252.113 * 50) / 5252, 2);
  });

  test('speeds in radians per second stay so', () => {
    const read = curveFromTable('rad/s\tkW\n100\t3\n200\t6');
    expect(read).toMatchObject({
      ok: true,
      curve: {
        units: { speed: 'rad/s', torque: 'N.m' },
        rows: [
          [100, 30],
          [200, 30],
        ],
      },
    });
  });

  test('all wrong lines at once, each with its number and a right example', () => {
    const read = curveFromTable('rpm\tNm\n2500\t32.5\n3000\tabout 34\n3200\n3500\t-1\n3400\t36\n3400\t36');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.faults.map(({ line }) => line)).toEqual([3, 4, 5, 7]);
    for (const fault of read.faults) expect(fault.accepted).not.toBe('');
  });

  test.each([
    ['no units', '2500\t32.5\n3500\t36.8', 'No column is named as engine speed.'],
    ['no torque', 'rpm\tgear\n2500\t3\n3500\t4', 'No column is named as torque or power.'],
    ['no numbers', 'rpm\tNm', 'No line with two numbers was found.'],
    ['one line', 'rpm\tNm\n2500\t32.5', 'A curve needs two speeds at least.'],
    [
      'a comma that can be read two ways',
      'rpm;Nm\n2,500;32\n3,500;36',
      'Line 2: “2,500” can be read as 2500 and as 2.500.',
    ],
    ['power at standstill', 'rpm;kW\n0;0\n3500;36', 'Line 2: power at standstill gives no torque.'],
  ])('%s is refused', (_, text, problem) => {
    const read = curveFromTable(text);
    expect(read.ok ? null : read.faults[0]?.problem).toBe(problem);
  });
});
