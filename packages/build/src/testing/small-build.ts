/** The smallest build that drives: engine, one chain, wheel. Invented. */
export const SMALL_BUILD = {
  format: 4,
  name: 'small',
  about: 'one chain from engine to wheel, for tests',
  brief: {
    engine: {
      name: 'single',
      peaks: { torque: '30 N.m', torqueAt: '4000 rpm', power: '18 kW', powerAt: '7000 rpm' },
      idle: '1200 rpm',
      redline: '7500 rpm',
      gears: ['8', '5'],
      output: {
        name: 'Output',
        origin: { x: '600 mm', y: '0 mm', z: '50 mm' },
        direction: [0, 1, 0],
        sense: 'positive',
        madeFor: 'side pull',
        seats: { sprocket: { kind: 'sprocket', name: 'sprocket 15', station: '3 1/2 in' } },
      },
    },
    vehicle: { mass: '310 kg', payload: '80 kg' },
    wheel: { rollOut: '2 m' },
  },
  path: {
    shafts: {
      axle: {
        name: 'Axle',
        origin: { x: '0 mm', y: '0 mm', z: '0 mm' },
        direction: [0, 1, 0],
        seats: {
          wheel: { kind: 'wheel', name: 'wheel', station: '0 mm' },
          sprocket: { kind: 'sprocket', name: 'sprocket 45', station: '3 1/2 in' },
        },
      },
    },
    stages: {
      'chain-1': {
        kind: 'chain',
        name: 'Chain 1',
        from: 'output/sprocket',
        to: 'axle/sprocket',
        chain: '520',
        teeth: { driver: 15, driven: 45 },
        links: 106,
      },
    },
  },
} as const;
