import { shaftCriticalSpeed } from '@oddwheel/mechanics/shaft/critical-speed';
import { SHAFT_LIMITS } from '@oddwheel/tables/shaft-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import { massesOn } from '../../strength/rotor-masses.ts';
import type { Check } from '../check.ts';
import { measured } from '../measured.ts';
import { shaftIndex, shaftUses } from './shafts.ts';

/**
 * The first speed at which a shaft whirls against the greatest speed it turns at. Left out are the engine’s output, whose gears are not known, and the wheel’s
 * shaft, which turns slowly and whose wheel the ground holds.
 */
export const shaftWhirls: Check = {
  id: 'shaft.critical',
  title: 'critical speed of the shaft',
  consequence: 'throws parts',
  wanted: {
    reserve: rowInSi(SHAFT_LIMITS, 'critical-speed').apart ?? Number.NaN,
    from: sourceOf(SHAFT_LIMITS, 'critical-speed'),
  },
  atWorst: 'fails',
  perCase: false,
  subjects: ({ shafts }) => shafts.slice(1, -1).map(({ address, name }) => ({ address, element: name, stage: null })),
  run: (scene, subject) => {
    const k = shaftIndex(scene.model, subject);
    const structure = scene.strength.shafts[k];
    if (!structure) return null;
    const found = massesOn(scene, k);
    const { engine } = scene;
    if (!found.ok || !engine)
      return {
        kind: 'unknown',
        missing: [
          ...(found.ok ? [] : found.missing),
          ...(engine ? [] : [{ address: '/brief/engine/redline', says: 'the redline of the engine' }]),
        ],
      };
    const before = scene.stages.slice(0, k).reduce((product, { ratio }) => product * ratio, 1);
    const speed = engine.redline / (Math.min(...scene.boxRatios) * before);
    const input = { masses: found.masses, stiffnesses: found.stiffnesses };
    const output = shaftCriticalSpeed.run(input);
    const { show } = scene;
    const { gears, primary } = scene.model.engine;
    return measured(
      { name: 'greatest speed', value: speed, kind: 'angularSpeed', use: 'angularSpeed' },
      { name: 'critical speed', value: output.speed, kind: 'angularSpeed', use: 'angularSpeed' },
      () =>
        `It turns at up to ${show('angularSpeed', speed)}, and with its wheels on it would whirl at ${show('angularSpeed', output.speed)}.`,
      [...shaftUses(structure), primary, ...gears],
      () => [
        {
          method: shaftCriticalSpeed,
          input,
          output,
          origins: {
            masses: 'the shaft in pieces, its sprockets and gears as steel discs',
            stiffnesses: 'shaft on its bearings, pushed at each of them',
          },
        },
      ],
      { capacity: 'above', demand: 'redline in the highest gear' },
    );
  },
};
