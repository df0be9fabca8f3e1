/** Builds made for measuring: as many gears, seats on a shaft and stages as asked for. Invented. */

/**
 * A build of chain stages one behind the other.
 * @param shape.stages chain stages, at least 1
 * @param shape.seats seats on each shaft, at least 3: a sprocket at either end, or sprocket and wheel, and bearings between them
 * @param shape.gears gears of the box, 1 to 12
 */
export function trainOf(shape: { readonly stages: number; readonly seats: number; readonly gears: number }) {
  const { stages, seats, gears } = shape;
  const shafts: Record<string, unknown> = {};
  const chains: Record<string, unknown> = {};
  for (let k = 1; k <= stages; k++) {
    // Chains lie in two planes by turns, so that each runs in line from shaft to shaft.
    const [near, far] = k % 2 === 1 ? ['0 mm', '160 mm'] : ['160 mm', '0 mm'];
    const bearings = Array.from({ length: seats - 2 }, (_, j) => [
      `bearing-${j + 1}`,
      {
        kind: 'bearing',
        name: `bearing ${j + 1}`,
        station: `${(((j + 1) * 160) / (seats - 1)).toFixed(1)} mm`,
        body: 'subframe',
        row: '6207',
        diameter: '35 mm',
      },
    ]);
    shafts[`shaft-${k}`] = {
      name: `Shaft ${k}`,
      origin: { x: `${(600 - 600 * k) / 20} mm`, y: '0 mm', z: k % 2 === 1 ? '50 mm' : '650 mm' },
      direction: [0, 1, 0],
      material: '42CrMo4-tempered-to-40',
      seats: {
        in: { kind: 'sprocket', name: 'sprocket 17', station: near, diameter: '30 mm' },
        ...Object.fromEntries(bearings),
        out:
          k === stages
            ? { kind: 'wheel', name: 'wheel', station: far }
            : { kind: 'sprocket', name: 'sprocket 15', station: far, diameter: '30 mm' },
      },
    };
    chains[`chain-${k}`] = {
      kind: 'chain',
      name: `Chain ${k}`,
      from: k === 1 ? 'output/sprocket' : `shaft-${k - 1}/out`,
      to: `shaft-${k}/in`,
      chain: '520',
      teeth: { driver: 15, driven: 17 },
      links: 92,
    };
  }
  return {
    format: 4,
    name: 'train',
    about: 'a train of chains for measuring (invented)',
    brief: {
      engine: {
        name: 'single',
        peaks: { torque: '30 N.m', torqueAt: '4000 rpm', power: '18 kW', powerAt: '7000 rpm' },
        idle: '1200 rpm',
        redline: '7500 rpm',
        gears: Array.from({ length: gears }, (_, k) => (8 * 0.8 ** k).toFixed(3)),
        output: {
          name: 'Output',
          origin: { x: '0 mm', y: '0 mm', z: '650 mm' },
          direction: [0, 1, 0],
          sense: 'positive',
          madeFor: 'side pull',
          seats: { sprocket: { kind: 'sprocket', name: 'sprocket 15', station: '0 mm' } },
        },
      },
      vehicle: { mass: '310 kg', payload: '80 kg' },
      wheel: { rollOut: '2 m' },
    },
    path: { shafts, stages: chains },
  };
}
