import { firingFrequency } from '@oddwheel/mechanics/torsion/firing-frequency';
import { isolation } from '@oddwheel/mechanics/torsion/isolation';
import { naturalFrequency } from '@oddwheel/mechanics/torsion/natural-frequency';
import { formatQuantity } from '@oddwheel/quantity/format';
import type { Value } from '../../model/model.ts';
import { ordinal } from '../cases.ts';
import { cushPlaces, swingsOf, type TrainSwing } from '../strength/train-swing.ts';
import { type Check, oneSubject, type Scene } from './check.ts';

const ENGINE = '/brief/engine';
const hertz = (f: number): string => formatQuantity(f, 'frequency', 'Hz', { digits: 3 });

/** Gear whose slowest swing comes nearest to the firing at idle. */
const fastest = (gears: readonly TrainSwing[]): TrainSwing | undefined =>
  gears.reduce<TrainSwing | undefined>(
    (worst, one) => (worst && (worst.modes[0] ?? 0) >= (one.modes[0] ?? 0) ? worst : one),
    undefined,
  );

/** The next swing that some gear meets between idle and redline. */
function meets(gears: readonly TrainSwing[], low: number, high: number, perTurn: number, scene: Scene): string {
  for (const { gear, modes } of gears)
    for (const f of modes.slice(1)) {
      const speed = (2 * Math.PI * f) / perTurn;
      if (speed >= low && speed <= high)
        return ` A faster swing, ${hertz(f)} in ${ordinal(gear + 1)} gear, meets the firing at ${scene.show('angularSpeed', speed)}: do not stay there.`;
    }
  return '';
}

/** The engine’s firing, down to idle, against the slowest swing of the whole drive. */
export const firing: Check = {
  id: 'torsion.firing',
  title: 'engine beating on the drive',
  consequence: 'wears out',
  wanted: {
    reserve: 1,
    from: 'S. S. Rao, Mechanical Vibrations: shaking fades above √2 times the natural frequency; from memory',
  },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: oneSubject(ENGINE, 'Engine'),
  run: (scene) => {
    const { engine, cush } = scene.model;
    const swings = swingsOf(scene);
    const missing = [
      ...(engine.cylinders === null ? [{ address: `${ENGINE}/cylinders`, says: 'the number of cylinders' }] : []),
      ...(engine.strokes === null ? [{ address: `${ENGINE}/strokes`, says: 'two-stroke or four-stroke' }] : []),
      ...(swings.ok ? [] : swings.missing),
    ];
    const { cylinders, strokes } = engine;
    if (missing.length > 0 || cylinders === null || strokes === null || !swings.ok) return { kind: 'unknown', missing };
    const worst = fastest(swings.gears);
    if (!worst) return null;
    const turns = strokes === 4 ? 2 : 1;
    const idle = scene.at(engine.idle);
    const row = { inertias: worst.inertias, stiffnesses: worst.stiffnesses };
    const natural = naturalFrequency.run(row);
    const beat = { speed: idle, cylinders, turns };
    const fired = firingFrequency.run(beat);
    const input = { forced: fired.frequency, natural: natural.frequency };
    const output = isolation.run(input);
    const perTurn = cylinders / turns;
    const crank = (2 * Math.PI * natural.frequency) / perTurn;
    const vehicle = scene.model.vehicle;
    const used: (Value | null)[] = [
      engine.idle,
      vehicle.engineInertia,
      vehicle.wheelInertia,
      vehicle.mass,
      ...engine.gears,
    ];
    if (cush?.stiffness) used.push(cush.stiffness);
    for (const stage of scene.model.stages) if (stage.kind === 'chain') used.push(stage.stretch);
    return {
      kind: 'measured',
      demand: {
        name: 'beat of the drive, times √2',
        value: crank * Math.SQRT2,
        kind: 'angularSpeed',
        use: 'angularSpeed',
      },
      capacity: { name: 'idle', value: idle, kind: 'angularSpeed', use: 'angularSpeed' },
      reserve: output.reserve,
      says: () =>
        `In ${ordinal(worst.gear + 1)} gear engine and vehicle swing against each other at ${hertz(natural.frequency)}, the beat of the engine at ${scene.show('angularSpeed', crank)}. At idle it fires ${formatQuantity(fired.frequency / natural.frequency, 'number', '', { digits: 2 })} times as often; above 1.41 the swing fades.${meets(swings.gears, idle, scene.engine?.redline ?? idle, perTurn, scene)}`,
      uses: used.filter((value) => value !== null),
      used: () => [
        {
          method: naturalFrequency,
          input: row,
          output: natural,
          origins: {
            inertias: 'crank, sprockets and gears as solid discs, wheel and vehicle',
            stiffnesses: 'chains, shafts and cush',
          },
        },
        {
          method: firingFrequency,
          input: beat,
          output: fired,
          origins: { speed: engine.idle.address, cylinders: `${ENGINE}/cylinders`, turns: `${ENGINE}/strokes` },
        },
        { method: isolation, input, output, origins: { forced: 'above', natural: 'above' } },
      ],
    };
  },
};

/** Something soft between engine and wheel takes the knocks; a drive without it hammers chains and teeth. */
export const cushion: Check = {
  id: 'torsion.cush',
  title: 'cush or damper',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: one soft place between crank and wheel' },
  atWorst: 'thin',
  perCase: false,
  subjects: oneSubject('/path/cush', 'Cush or damper'),
  run: ({ model }) => {
    const { cush, shafts, stages } = model;
    const [id = '', seat = ''] = cush?.at.split('/') ?? [];
    const shaft = shafts.find((one) => one.id === id);
    const name = shaft?.seats.find((one) => one.id === seat)?.name ?? seat;
    return {
      kind: 'plain',
      holds: cush !== null,
      says: () =>
        cush
          ? `A cush or damper sits at ${name} of ${shaft?.name ?? id}.`
          : `Nothing soft lies between crank and wheel, so every knock goes through chains and teeth. Places for a cush or damper: ${cushPlaces(shafts, stages).join('; ')}.`,
      uses: [],
      used: () => [],
    };
  },
};
