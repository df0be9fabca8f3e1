import type { Ask, Measure } from './types.ts';

const HANGING =
  'A hanging wheel can kill when it falls: use rope and hooks rated for many times its weight, hang it low, and stay from under it.';

const CRANK: Ask = {
  key: 'inputTurns',
  name: 'Turns of the crank, with parts of a turn',
  kind: 'number',
  example: '57.7',
};
const OUTPUT: Ask = { key: 'outputTurns', name: 'Turns of the output', kind: 'number', example: '10', usual: '10' };
const READING: Ask = {
  key: 'reading',
  name: 'Turns of the crank may be off by',
  kind: 'number',
  example: '0.1',
  usual: '0.1',
};

const RATIO = {
  method: 'ratio.fromTurns',
  result: 'ratio',
  spread: 'spread',
  kind: 'ratio',
  units: { metric: '', inch: '' },
} as const;

const TURN_SAFELY =
  'Take the plugs out and the key away, so that the engine cannot start; keep fingers clear of chain and teeth.';

const TURNS_OF_GEAR: Measure = {
  ...RATIO,
  id: 'turns-gear',
  name: 'Count turns',
  steps: [
    'Take the plugs out, engage the gear, and mark crank and output with chalk against something that stands still.',
    'Turn the crank slowly, always the same way. Begin counting as the output’s mark passes, and stop after ten of its turns.',
    'Write down the turns of the crank; read the last part of a turn off a dial or by eye.',
  ],
  caution: TURN_SAFELY,
  asks: [
    CRANK,
    OUTPUT,
    { key: 'known', name: 'Primary ratio', kind: 'ratio', example: '65:31', from: '/brief/engine/primary' },
    READING,
  ],
};

const TURNS_OF_PRIMARY: Measure = {
  ...TURNS_OF_GEAR,
  id: 'turns-primary',
  steps: [
    'Take the plugs out, engage a gear whose own ratio is known, and mark crank and output with chalk against something that stands still.',
    ...TURNS_OF_GEAR.steps.slice(1),
  ],
  asks: [CRANK, OUTPUT, { key: 'known', name: 'Ratio of the gear engaged', kind: 'ratio', example: '0.96' }, READING],
};

const TURNS_OVERALL: Measure = {
  ...TURNS_OF_GEAR,
  id: 'turns-overall',
  steps: [
    'Take the plugs out, put the driven wheel on a stand, engage the gear, and mark crank and wheel.',
    'Turn the crank slowly, always the same way, and count its turns for ten turns of the wheel.',
    'With a differential hold the other wheel still: the free one then turns twice as often, so count twenty of its turns as ten.',
  ],
  asks: [CRANK, OUTPUT, READING],
};

const ROLL: Measure = {
  id: 'roll',
  name: 'Roll ten turns',
  method: 'vehicle.rollOutMeasured',
  steps: [
    'Load the vehicle as it will run, tyre at its pressure, on level hard ground.',
    'Chalk the tyre where it touches, and the ground beneath. Push straight ahead until the mark has come down ten times, and chalk again.',
    'Measure between the marks with a tape held tight.',
  ],
  caution:
    'Choose level ground and keep someone at the brake: a loaded vehicle that rolls away does not stop for a foot.',
  asks: [
    { key: 'distance', name: 'Distance between the marks', kind: 'length', example: '33.52 m' },
    { key: 'turns', name: 'Turns of the wheel', kind: 'number', example: '10', usual: '10' },
    { key: 'tape', name: 'Distance may be off by', kind: 'length', example: '20 mm', usual: '20 mm' },
  ],
  result: 'rollOut',
  spread: 'spread',
  kind: 'length',
  units: { metric: 'm', inch: 'in' },
};

const SCALE_ERROR: Ask = {
  key: 'scaleError',
  name: 'Each reading may be off by',
  kind: 'mass',
  example: '0.5 kg',
  usual: '0.5 kg',
};

const weigh = (who: string, example: string): Pick<Ask, 'key' | 'name' | 'kind' | 'list' | 'example'> => ({
  key: 'readings',
  name: `Reading under ${who}, semicolons between`,
  kind: 'mass',
  list: true,
  example,
});

const MASS = {
  method: 'vehicle.massFromScales',
  result: 'mass',
  spread: 'spread',
  kind: 'mass',
  units: { metric: 'kg', inch: 'lb' },
} as const;

const JACKED = 'Chock the other wheels. Never reach under a vehicle that stands on scales or on a plank.';

const scales = (id: string, how: string, who: string, example: string): readonly Measure[] => [
  {
    ...MASS,
    id: `scales-${id}`,
    name: 'Straight on the scale',
    steps: [
      how,
      'Set the scale on level ground under one wheel, and pack the other wheels to the same height.',
      'Brakes off, let it settle, read; then the next wheel in the same way. Two scales side by side carry twice as much: give both readings.',
    ],
    caution: JACKED,
    asks: [weigh(who, example), SCALE_ERROR],
  },
  {
    ...MASS,
    id: `lever-${id}`,
    name: 'Over a plank, beyond the range of the scale',
    steps: [
      how,
      'Lay a stiff plank with its one end on a square bar on the ground and its other end on a bar in the middle of the scale, level.',
      'Read the scale with the bare plank. Then stand the wheel on the plank, nearer to the bar on the ground; pack the other wheels to the same height.',
      'Measure from the bar on the ground to the middle of the tyre’s print, and to the bar on the scale.',
    ],
    caution: `${JACKED} Use a plank that bears a person at a third of its length without bending a finger’s breadth.`,
    asks: [
      weigh(who, example),
      { key: 'tare', name: 'Reading with the bare plank', kind: 'mass', example: '4 kg' },
      { key: 'scaleArm', name: 'From the ground bar to the bar on the scale', kind: 'length', example: '1.8 m' },
      { key: 'loadArm', name: 'From the ground bar to the middle of the tyre', kind: 'length', example: '450 mm' },
      SCALE_ERROR,
    ],
  },
];

const SWING_ASKS: readonly Ask[] = [
  { key: 'mass', name: 'Mass of the wheel as it hangs', kind: 'mass', example: '42 kg' },
  { key: 'time', name: 'Time of all swings', kind: 'time', example: '63.4 s' },
  { key: 'swings', name: 'Swings, there and back', kind: null, example: '20', usual: '20' },
];

const TIMING: Ask = {
  key: 'timing',
  name: 'Time may be off by',
  kind: 'time',
  example: '0.3 s',
  usual: '0.3 s',
};

const INERTIA = {
  result: 'inertia',
  spread: 'spread',
  kind: 'inertia',
  caution: HANGING,
  units: { metric: 'kg.m2', inch: 'lb.in2' },
} as const;

const SWING: readonly Measure[] = [
  {
    ...INERTIA,
    id: 'swing-wires',
    name: 'Hung flat on three ropes, twisting',
    method: 'vehicle.wheelInertiaFromWires',
    steps: [
      'Weigh the wheel with its tyre. Hang it flat, level, on two or three equal upright ropes, each as far from the middle.',
      'Twist it a few degrees about its middle and let go, so that it does not swing to the side.',
      'Time twenty twists there and back.',
    ],
    asks: [
      ...SWING_ASKS,
      { key: 'wireLength', name: 'Length of the ropes', kind: 'length', example: '2.4 m' },
      { key: 'wireRadius', name: 'From each rope to the middle of the wheel', kind: 'length', example: '400 mm' },
      TIMING,
    ],
  },
  {
    ...INERTIA,
    id: 'swing-edge',
    name: 'Hung on an edge, swinging',
    method: 'vehicle.wheelInertiaFromSwing',
    steps: [
      'Weigh the wheel with its tyre. Hang it by the inside of its rim, or by its bore, on a sharp edge that does not give.',
      'Push it a few degrees in its own plane and let go.',
      'Time twenty swings there and back, and measure from the edge to the middle of the wheel.',
    ],
    asks: [
      ...SWING_ASKS,
      { key: 'arm', name: 'From the edge to the middle of the wheel', kind: 'length', example: '430 mm' },
      TIMING,
    ],
  },
];

const MOUNT: Measure = {
  id: 'mount',
  name: 'Weight and dial gauge',
  method: 'mount.stiffnessByWeight',
  steps: [
    'Bolt the mount down as it will sit, with the dial gauge on a stand of its own that touches the moving side, in the direction asked about.',
    'Load it first with about what it will carry, then set the gauge and read it.',
    'Add a known weight, read at once, and take it off again: the gauge must come back. Read a second gauge on what the mount is bolted to.',
  ],
  caution: 'Keep feet and hands from under the weight, and tie it so that it cannot slide off.',
  asks: [
    { key: 'mass', name: 'Weight added', kind: 'mass', example: '60 kg' },
    { key: 'before', name: 'Gauge before', kind: 'length', example: '1.20 mm', usual: '0 mm' },
    { key: 'after', name: 'Gauge after', kind: 'length', example: '0.35 mm' },
    { key: 'elsewhere', name: 'What it is bolted to moved', kind: 'length', example: '0.05 mm', usual: '0 mm' },
    { key: 'mounts', name: 'Equal mounts under the weight', kind: null, example: '1', usual: '1' },
    { key: 'gauge', name: 'Each reading may be off by', kind: 'length', example: '0.02 mm', usual: '0.02 mm' },
  ],
  result: 'stiffness',
  spread: 'spread',
  kind: 'stiffness',
  units: { metric: 'N/mm', inch: 'lbf/in' },
};

const AT: readonly (readonly [RegExp, readonly Measure[]])[] = [
  [/^\/brief\/engine\/primary$/, [TURNS_OF_PRIMARY]],
  [/^\/brief\/engine\/gears\/\d+$/, [TURNS_OF_GEAR]],
  [/^\/brief\/reference\/overall\/\d+$/, [TURNS_OVERALL]],
  [/^\/brief\/(?:wheel\/rollOut|reference\/rollOut|speedometer\/madeRollOut)$/, [ROLL]],
  [
    /^\/brief\/vehicle\/mass$/,
    scales('all', 'Empty the vehicle, tank full as for driving.', 'each wheel', '96 kg; 101 kg; 124 kg'),
  ],
  [
    /^\/brief\/vehicle\/drivenLoad$/,
    scales('driven', 'Load the vehicle and put the rider on.', 'each driven wheel', '112 kg'),
  ],
  [/^\/brief\/vehicle\/wheelInertia$/, SWING],
  [/^\/brief\/mounts\/[^/]+\/stiffness$/, [MOUNT]],
];

const ALL: readonly Measure[] = AT.flatMap(([, measures]) => measures);

/** The ways to measure what stands at an address; empty where there is no sum to do. */
export function measuresFor(address: string): readonly Measure[] {
  return AT.find(([at]) => at.test(address))?.[1] ?? [];
}

/** The measure of an id; undefined when there is none. */
export const measureById = (id: string): Measure | undefined => ALL.find((measure) => measure.id === id);
