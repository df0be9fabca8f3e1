import type { Shaft, Stage } from '../../model/model.ts';
import { beltGeometry } from './belt.ts';
import { bevelGeometry } from './bevel.ts';
import { chainGeometry } from './chain.ts';
import { couplingGeometry } from './coupling.ts';
import { lineAngle, onlyTorque } from './place.ts';
import { spurGeometry } from './spur.ts';
import type { At, StageGeometry } from './types.ts';

/** Shape, ratio, sense and actions of one stage at one corner of its uncertain inputs. */
export function stageGeometry(stage: Stage, from: Shaft, to: Shaft, at: At): StageGeometry {
  switch (stage.kind) {
    case 'chain':
      return chainGeometry(stage, from, to, at);
    case 'belt':
      return beltGeometry(stage, from, to, at);
    case 'bevel':
      return bevelGeometry(stage, from, to, at);
    case 'spur':
      return spurGeometry(stage, from, to, at);
    case 'coupling':
      return couplingGeometry(stage, from, to, at);
    case 'unit':
      return {
        stage,
        from,
        to,
        ratio: at(stage.ratio),
        efficiency: at(stage.efficiency),
        relation: stage.sense,
        trouble: [],
        actions: onlyTorque(from, to, stage.sense),
        skew: lineAngle(from.direction, to.direction),
        pitchRadiusDriver: null,
        chain: null,
        bevel: null,
        coupling: null,
        used: [],
      };
  }
}
