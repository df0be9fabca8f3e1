import { assess } from '../assess/assess.ts';
import type { CheckId } from '../assess/check-ids.ts';
import type { Finding, Here } from '../assess/types.ts';
import type { Model } from '../model/model.ts';
import type { TrainStrength } from './types.ts';

/** Checks of what breaks or wears out under load. How far shafts move is told by the build's own findings: teeth hardly change it. */
const BREAKS: ReadonlySet<string> = new Set<CheckId>([
  'output.side-pull',
  'chain.pull',
  'unit.torque',
  'unit.speed',
  'shaft.yield',
  'shaft.fatigue',
  'shaft.life',
  'join.torque',
  'join.bending',
  'bearing.life',
  'bearing.static',
]);

/** What a build's strength comes to, by assessing all of it at the middle of its ranges: nothing is taken over from another train. */
export function strengthOf(model: Model, here: Here): TrainStrength {
  const found = assess(model, here, null, 'not yet').assessment.findings.filter(({ check }) => BREAKS.has(check));
  const lowest = found.reduce<Finding | null>((least, one) => {
    if (one.reserve === null || Number.isNaN(one.reserve.value)) return least;
    return least?.reserve && least.reserve.value <= one.reserve.value ? least : one;
  }, null);
  return {
    weakest: lowest?.reserve
      ? {
          finding: lowest.id,
          title: lowest.title,
          element: lowest.element,
          severity: lowest.severity,
          reserve: lowest.reserve.value,
        }
      : null,
    fails: found.filter(({ severity }) => severity === 'fails').length,
    unknown: found.filter(({ severity }) => severity === 'unknown').length,
  };
}
