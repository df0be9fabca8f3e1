import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

const MAKER = {
  title: 'A belt maker’s catalogue for polyurethane belts T and AT',
  how: 'read',
  address: 'github.com/ArtemFilin1990/Mar, commit 7b871a5',
} as const;

export const BELT_STRENGTH_CASES: readonly ProofCase[] = [
  {
    method: 'belt.pulls',
    id: 'belt-pulls-3m',
    given: { power: '0.02744 kW', speed: '0.4 m/s', wrap: 0.99 },
    expect: {
      tight: { value: '85.75 N', within: { abs: '0.05 N' } },
      slack: { value: '17.15 N', within: { abs: '0.02 N' } },
      shaft: { value: '101.87 N', within: { abs: '0.05 N' } },
    },
    source: {
      title: 'A calculation sheet that cites the Chinese mechanical design handbook, family of ISO 5295',
      at: 'synchronous belt 3M, 20 and 20 teeth',
      how: 'read',
      address: 'xiaomilidoc.com/p-12235936.html',
    },
    kind: 'published-example',
  },
  {
    method: 'belt.toothLoad',
    id: 'belt-at10-start',
    given: { perTooth: '7350 N/m', meshed: 12.5, width: '85.47 mm' },
    expect: { pull: { value: '7540 N', within: { rel: 0.002 } } },
    source: { ...MAKER, at: 'calculation example, AT10, start with 300 N·m on 25 teeth' },
    kind: 'published-example',
    note: 'The printed width put in gives the pull of the start, 300 N·m over the pitch radius, back; 12 of 12.5 teeth count.',
  },
  {
    method: 'belt.toothLoad',
    id: 'belt-t10-table',
    given: { perTooth: '3070 N/m', meshed: 8, width: '25 mm' },
    expect: { pull: { value: '614 N', within: { rel: 0.0001 } } },
    source: constructed('Printed load of a tooth, T10 at 1000 turns a minute, times teeth and width'),
    kind: 'constructed',
  },
  ...(
    [
      ['L', '9.525 mm', 20, 40, '1450 rpm', '300 mm', '19.05 mm', '244.46 N', '0.095 kg/m', '25.4 mm', '0.8038 kW', 9],
      ['H', '12.7 mm', 24, 48, '1800 rpm', '420 mm', '38.1 mm', '2100.85 N', '0.448 kg/m', '76.2 mm', '8.5455 kW', 11],
    ] as const
  ).map(
    ([
      profile,
      pitch,
      teethSmall,
      teethLarge,
      speed,
      centreDistance,
      width,
      basePull,
      baseMass,
      baseWidth,
      power,
      meshed,
    ]): ProofCase => ({
      method: 'belt.trapezoidalRating',
      id: `belt-rating-${profile.toLowerCase()}-${teethSmall}-${teethLarge}`,
      given: { pitch, teethSmall, teethLarge, centreDistance, speed, width, baseWidth, basePull, baseMass },
      expect: {
        power: { value: power, within: { rel: 0.001 } },
        meshed: { value: meshed, within: { abs: 0 } },
      },
      source: constructed('The same by hand, rounded at each step'),
      kind: 'constructed',
    }),
  ),
  ...(
    [
      ['L', '9.525 mm', '25.4 mm', '244.46 N', '0.095 kg/m', 0.436, 0.000301, 20],
      ['H', '12.7 mm', '76.2 mm', '2100.85 N', '0.448 kg/m', 3.73, 0.00141, 24],
      ['XH', '22.225 mm', '101.6 mm', '4048.9 N', '1.484 kg/m', 7.21, 0.00468, 24],
    ] as const
  ).map(([profile, pitch, width, basePull, baseMass, a, b, teeth]): ProofCase => {
    const turns = 1.2;
    const diameter = (teeth * Number.parseFloat(pitch)) / (25.4 * Math.PI);
    const power = diameter * turns * (a - b * (diameter * turns) ** 2);
    return {
      method: 'belt.trapezoidalRating',
      id: `belt-rating-american-${profile.toLowerCase()}`,
      given: {
        pitch,
        teethSmall: teeth,
        teethLarge: teeth,
        centreDistance: '1 m',
        speed: '1200 rpm',
        width,
        baseWidth: width,
        basePull,
        baseMass,
      },
      expect: { power: { value: `${power} hp`, within: { rel: 0.025 } } },
      source: {
        title: "Machinery's Handbook",
        at: `synchronous belts, horsepower formula of section ${profile}`,
        how: 'memory',
      },
      kind: 'table-spot',
      note: 'The American formula was recalled apart from the numbers that the method was given.',
    };
  }),
];
