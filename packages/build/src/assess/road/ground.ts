import type { Model, Vehicle } from '../../model/model.ts';
import type { EngineCurve } from '../cases.ts';
import type { At } from '../geometry/types.ts';
import type { Missing } from '../types.ts';

/** The build at one corner, as far as the road asks. */
export interface Ground {
  readonly model: Model;
  readonly at: At;
  readonly engine: EngineCurve | null;
  readonly overall: readonly number[];
  readonly rollOut: number | null;
  readonly stages: readonly { readonly ratio: number; readonly efficiency: number }[];
}

/** Density of the air, kg/m³, at about 20 °C, and free fall, m/s² (standard acceleration, exact). */
const AIR_DENSITY = 1.2;
export const GRAVITY = 9.80665;

export const NEEDS = {
  curve: { address: '/brief/engine/curve', says: 'the torque curve, or peak torque and peak power with their speeds' },
  rollOut: { address: '/brief/wheel/rollOut', says: 'the measured roll-out of the driven wheel, or its tyre size' },
  contact: { address: '/brief/vehicle/contact', says: 'which wheels stand on the ground' },
  wheelbase: { address: '/brief/vehicle/wheelbase', says: 'the wheelbase' },
  drivenLoad: { address: '/brief/vehicle/drivenLoad', says: 'the laden mass on the driven axle' },
  centreHeight: { address: '/brief/vehicle/centreHeight', says: 'the height of the centre of mass' },
  track: { address: '/brief/vehicle/track', says: 'the track of the pair of wheels' },
  referenceMass: { address: '/brief/reference/mass', says: 'the mass of the reference vehicle with its rider' },
} as const satisfies Readonly<Record<string, Missing>>;

/** Mass of the loaded vehicle. */
export const ladenMass = ({ model, at }: Ground): number => at(model.vehicle.mass) + at(model.vehicle.payload);

/** Efficiency from crank to wheel. */
export const wholeEfficiency = ({ model, at, stages }: Ground): number =>
  stages.reduce((product, stage) => product * stage.efficiency, at(model.engine.boxEfficiency));

/** What resists on a road of this slope, as the methods take it. */
export const loadOf = (ground: Ground, slope = 0) => ({
  mass: ladenMass(ground),
  rollingCoefficient: ground.at(ground.model.vehicle.rolling),
  dragArea: ground.at(ground.model.vehicle.dragArea),
  airDensity: AIR_DENSITY,
  headWind: 0,
  slope,
  gravity: GRAVITY,
});

/** Places on a curve that is known by its peaks. */
const PLACES = 16;

/**
 * Full-throttle rows from the lowest speed of the curve to the redline or its end, whichever comes first; the methods hold the engine back there.
 */
export function rowsOf(engine: EngineCurve, curve: Model['engine']['curve']): { speeds: number[]; torques: number[] } {
  const { redline, idle, peakTorque, peakPower } = engine;
  const wanted = curve
    ? [...curve.speeds.filter((speed) => speed < redline), Math.min(redline, curve.speeds.at(-1) ?? redline)]
    : [
        ...Array.from({ length: PLACES + 1 }, (_, k) => idle + ((redline - idle) * k) / PLACES),
        ...[peakTorque.speed, peakPower.speed].filter((speed) => speed > idle && speed < redline),
      ];
  const rows = [...new Set(wanted)]
    .sort((a, b) => a - b)
    .flatMap((speed) => {
      const torque = engine.torqueAt(speed);
      return torque === null ? [] : [{ speed, torque }];
    });
  return { speeds: rows.map(({ speed }) => speed), torques: rows.map(({ torque }) => torque) };
}

/** How the wheels stand: which axle drives, how many there are, and where the single one of three is; null where the words do not say. */
export interface Stand {
  readonly driven: 'rear' | 'front';
  readonly wheels: 2 | 3 | 4 | null;
  readonly single: 'rear' | 'front' | null;
}

const STANDS: Readonly<Record<NonNullable<Vehicle['contact']>, Stand>> = {
  'two, rear driven': { driven: 'rear', wheels: 2, single: null },
  'three, single rear driven': { driven: 'rear', wheels: 3, single: 'rear' },
  'three, pair of rears driven': { driven: 'rear', wheels: 3, single: 'front' },
  'four, rears driven': { driven: 'rear', wheels: 4, single: null },
  'front driven': { driven: 'front', wheels: null, single: null },
};

/** Which axle drives, how many wheels there are, and where a single one of three is. */
export const standOf = (contact: NonNullable<Vehicle['contact']>): Stand => STANDS[contact];
