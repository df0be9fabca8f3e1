import { chainArticulation } from '@oddwheel/mechanics/chain/articulation';
import { chainJointPressure } from '@oddwheel/mechanics/chain/joint-pressure';
import type { Kind } from '@oddwheel/quantity/kinds';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import type { CornerResult, Evaluation } from './evaluation.ts';
import { outputOf } from './road/drive.ts';
import { spreadOf } from './spread.ts';
import type { Fact, Use } from './types.ts';

type Read = (result: CornerResult) => number | null | undefined;

function fact(
  evaluation: Evaluation,
  key: string,
  name: string,
  kind: Kind,
  use: Use,
  method: string,
  read: Read,
): Fact[] {
  const spread = spreadOf(evaluation, read);
  return spread
    ? [{ key, name, kind, use, spread, text: evaluation.middle.scene.show(use, spread.value), method }]
    : [];
}

/** Derived facts of one stage. */
export function stageFacts(evaluation: Evaluation, k: number): readonly Fact[] {
  const kind = evaluation.middle.scene.stages[k]?.stage.kind;
  const one = (key: string, name: string, of: Kind, use: Use, method: string, read: Read) =>
    fact(evaluation, key, name, of, use, method, read);
  const efficiency = one(
    'efficiency',
    'Efficiency',
    'fraction',
    'percent',
    'ratio.trainPower',
    (r) => r.scene.stages[k]?.efficiency,
  );
  if (kind === 'chain') {
    const chain = (r: CornerResult) => r.scene.stages[k]?.chain;
    return [
      ...one('centres', 'Centre distance', 'length', 'length', 'chain.length', (r) => chain(r)?.centreDistance),
      ...one(
        'links',
        'Links that the centres ask for',
        'number',
        'number',
        'chain.length',
        (r) => chain(r)?.linksNeeded,
      ),
      ...one('span', 'Straight span', 'length', 'length', 'chain.length', (r) => chain(r)?.span),
      ...one('wrap', 'Wrap, smaller sprocket', 'angle', 'angle', 'chain.length', (r) => chain(r)?.wrapSmall),
      ...one('slope', 'Slope of the line of centres', 'angle', 'angle', 'chain.length', (r) => chain(r)?.slope),
      ...one('offset', 'Sprocket planes apart', 'length', 'length', 'chain.length', (r) => chain(r)?.planeOffset),
      ...one('pitch-driver', 'Pitch diameter, driver', 'length', 'length', 'chain.sprocketDiameters', (r) =>
        twice(chain(r)?.pitchRadiusDriver),
      ),
      ...one('pitch-driven', 'Pitch diameter, driven', 'length', 'length', 'chain.sprocketDiameters', (r) =>
        twice(chain(r)?.pitchRadiusDriven),
      ),
      ...one(
        'chordal',
        'Surge from the smaller sprocket',
        'fraction',
        'percent',
        'chain.chordalVariation',
        (r) => chain(r)?.chordal,
      ),
      ...one('bend', 'A joint bends by', 'angle', 'angle', 'chain.articulation', (r) => bendOf(r, k)),
      ...one('pressure', 'Pressure in the joints, here', 'pressure', 'pressure', 'chain.jointPressure', (r) =>
        jointPressure(r, k),
      ),
      ...one(
        'idler',
        'Teeth of the idler in mesh',
        'number',
        'number',
        'chain.idlerLength',
        (r) => chain(r)?.idler?.teethInMesh,
      ),
      ...efficiency,
    ];
  }
  if (kind === 'bevel') {
    const bevel = (r: CornerResult) => r.scene.stages[k]?.bevel;
    return [
      ...one('angle', 'Shaft angle', 'angle', 'angle', 'bevel.apex', (r) => bevel(r)?.shaftAngle),
      ...one('apart', 'Axes miss each other by', 'length', 'length', 'bevel.apex', (r) => bevel(r)?.axisDistance),
      ...one('cone', 'Outer cone distance', 'length', 'length', 'bevel.geometry', (r) => bevel(r)?.coneDistance),
      ...one('mean-driver', 'Mean diameter, driver', 'length', 'length', 'bevel.geometry', (r) => bevel(r)?.meanDriver),
      ...one('mean-driven', 'Mean diameter, driven', 'length', 'length', 'bevel.geometry', (r) => bevel(r)?.meanDriven),
      ...efficiency,
    ];
  }
  if (kind === 'coupling') {
    const coupling = (r: CornerResult) => r.scene.stages[k]?.coupling;
    const first = coupling(evaluation.middle);
    const uneven = first && first.joints.length > 0;
    const method = first?.joints.length === 2 ? 'coupling.universalPair' : 'coupling.universalRatio';
    return [
      ...one('angle', 'Angle between the shafts', 'angle', 'angle', '', (r) => coupling(r)?.angle),
      ...one('offset', 'Shafts off each other by', 'length', 'length', '', (r) => coupling(r)?.offset),
      ...(uneven
        ? one('unevenness', 'Speed varies by', 'fraction', 'percent', method, (r) => coupling(r)?.unevenness)
        : []),
      ...efficiency,
    ];
  }
  return efficiency;
}

/** Angle that a joint bends by at the smaller sprocket. */
function bendOf({ scene }: CornerResult, k: number): number | null {
  const stage = scene.stages[k]?.stage;
  if (stage?.kind !== 'chain') return null;
  const teeth = Math.min(stage.teeth.driver, stage.teeth.driven);
  return chainArticulation.run({ teeth, links: stage.links ?? teeth, speed: 0 }).angle;
}

/** Pressure in the joints of a chain at the slider. */
function jointPressure({ scene, atSlider }: CornerResult, k: number): number | null {
  const geometry = scene.stages[k];
  const torque = atSlider?.stages[k]?.torqueIn;
  if (geometry?.stage.kind !== 'chain' || !geometry.chain || torque === undefined) return null;
  const { bearingArea } = rowInSi(CHAIN_SIZES, geometry.stage.size.key);
  if (bearingArea === undefined) return null;
  const pull = Math.abs(torque) / geometry.chain.pitchRadiusDriver;
  return chainJointPressure.run({ pull, bearingArea, strands: scene.at(geometry.stage.strands) }).pressure;
}

const twice = (radius: number | undefined): number | undefined => (radius === undefined ? undefined : 2 * radius);

/** Derived facts of the driven wheel and what it carries. */
export function wheelFacts(evaluation: Evaluation): readonly Fact[] {
  const { wheel, vehicle } = evaluation.model;
  const { mass, payload } = vehicle;
  const one = (key: string, name: string, of: Kind, use: Use, method: string, read: Read) =>
    fact(evaluation, key, name, of, use, method, read);
  return [
    ...one('roll-out', 'Roll-out', 'length', 'length', 'vehicle.rollingCircumference', (r) => r.scene.rollOut),
    ...one('diameter', 'Diameter of the tyre, new', 'length', 'length', 'vehicle.tyreDiameter', () => wheel.diameter),
    ...one('laden', 'Laden mass', 'mass', 'mass', '', (r) => r.scene.at(mass) + r.scene.at(payload)),
    ...one(
      'top-speed',
      'Top speed on the level',
      'speed',
      'speed',
      'vehicle.topSpeed',
      (r) => outputOf(r.scene.road.top())?.speed,
    ),
    ...one(
      'grip',
      'Greatest pull before slip or lift',
      'force',
      'force',
      'vehicle.gripLimit',
      (r) => outputOf(r.scene.road.grip())?.force,
    ),
    ...one('grade', 'Steepest slope in first gear', 'fraction', 'percent', 'vehicle.gradeability', (r) =>
      r.scene.road.steepest(0),
    ),
  ];
}
