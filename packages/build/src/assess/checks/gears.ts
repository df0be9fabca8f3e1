import { BEVEL_TEETH } from '@oddwheel/tables/bevel-teeth';
import { rowInSi } from '@oddwheel/tables/table';
import type { Stage, Value } from '../../model/model.ts';
import { seatOf } from '../geometry/place.ts';
import { parallelPlace } from '../geometry/tangent.ts';
import type { StageGeometry, Used } from '../geometry/types.ts';
import { type Check, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

const gearOf = (
  scene: Scene,
  subject: Subject,
): { readonly stage: GearStage; readonly geometry: StageGeometry } | null => {
  const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
  return geometry && (geometry.stage.kind === 'bevel' || geometry.stage.kind === 'spur')
    ? { stage: geometry.stage, geometry }
    : null;
};

const usedOf = (geometry: StageGeometry, id: string) => (): readonly Used[] =>
  geometry.used.filter((used) => used.method.id === id);

const missingSize = (stage: GearStage, key: 'module' | 'faceWidth', says: string) =>
  ({ kind: 'unknown', missing: [{ address: `${stage.address}/${key}`, says }] }) as const;

const typed = (...values: readonly (Value | null)[]): Value[] => values.filter((v) => v !== null);

/** As drawn, the places of two shafts are exact figures: what is left over is a slip of the pencil. */
const DRAWN = 0.0001;

/** Both axes of a bevel pair meet in one point, the apex of both cones. */
export const meet: Check = {
  id: 'bevel.meet',
  title: 'axes meet at the apex',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'common practice: a tenth of a millimetre on the drawing' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('bevel'),
  run: (scene, subject) => {
    const found = gearOf(scene, subject);
    if (!found) return null;
    const { geometry } = found;
    if (!geometry.bevel) return { kind: 'unknown', missing: geometry.trouble };
    const distance = geometry.bevel.axisDistance;
    return measured(
      { name: 'axes apart', value: distance, kind: 'length', use: 'length' },
      { name: 'limit', value: DRAWN, kind: 'length', use: 'length' },
      () =>
        distance === 0
          ? `The axes meet, at ${scene.show('angle', geometry.bevel?.shaftAngle ?? 0)}.`
          : `The axes pass ${scene.show('length', distance)} apart; they must meet.`,
      [],
      usedOf(geometry, 'bevel.apex'),
      { capacity: 'common practice', demand: 'above' },
    );
  },
};

/** Face width of a bevel pair against the guide for its cone distance and module. */
export const face: Check = {
  id: 'bevel.face',
  title: 'face width',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'Mott, Machine Elements in Mechanical Design, 4th ed., Example Problem 8-6' },
  atWorst: 'thin',
  perCase: false,
  subjects: stagesOfKind('bevel'),
  run: (scene, subject) => {
    const found = gearOf(scene, subject);
    if (!found) return null;
    const { stage, geometry } = found;
    if (!geometry.bevel) return { kind: 'unknown', missing: geometry.trouble };
    if (!stage.module) return missingSize(stage, 'module', 'the module of the pair');
    if (!stage.faceWidth) return missingSize(stage, 'faceWidth', 'the face width of the pair');
    const used = geometry.used.find((x) => x.method.id === 'bevel.geometry');
    const guide = Number(used?.output.faceWidthGuide);
    const width = scene.at(stage.faceWidth);
    return measured(
      { name: 'face width', value: width, kind: 'length', use: 'length' },
      { name: 'guide', value: guide, kind: 'length', use: 'length' },
      () => `Face width ${scene.show('length', width)}; the guide is at most ${scene.show('length', guide)}.`,
      typed(stage.module, stage.faceWidth),
      usedOf(geometry, 'bevel.geometry'),
      { capacity: 'above', demand: stage.faceWidth.address },
    );
  },
};

/** Tooth numbers of a straight bevel pair that cut without undercut. */
export const undercut: Check = {
  id: 'bevel.undercut',
  title: 'tooth numbers without undercut',
  consequence: 'wears out',
  wanted: { reserve: 1, from: `${BEVEL_TEETH.source}; from memory` },
  atWorst: 'thin',
  perCase: false,
  subjects: stagesOfKind('bevel'),
  run: (scene, subject) => {
    const found = gearOf(scene, subject);
    if (!found) return null;
    // The table is for straight teeth.
    if (found.stage.kind === 'bevel' && (found.stage.spiral || found.stage.hand)) return null;
    const { driver, driven } = found.stage.teeth;
    const [pinion, gear] = [Math.min(driver, driven), Math.max(driver, driven)];
    const keys = Object.keys(BEVEL_TEETH.rows).map(Number);
    const [first, last] = [Math.min(...keys), Math.max(...keys)];
    const least = pinion > last ? last : pinion < first ? null : (rowInSi(BEVEL_TEETH, String(pinion)).mate ?? null);
    return {
      kind: 'plain',
      holds: least !== null && gear >= least,
      says: () =>
        least === null
          ? `A pinion of ${pinion} teeth is cut with undercut or with a special addendum.`
          : `A pinion of ${pinion} teeth wants a mate of at least ${least} at 20°; it has ${gear}.`,
      uses: [],
      used: () => [],
    };
  },
};

/** Centre distance of a spur pair against its tooth numbers and module. */
export const centres: Check = {
  id: 'spur.centres',
  title: 'centre distance of the pair',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'common practice: a tenth of a millimetre on the drawing' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('spur'),
  run: (scene, subject) => {
    const found = gearOf(scene, subject);
    if (!found) return null;
    const { stage, geometry } = found;
    if (geometry.relation === null) return { kind: 'unknown', missing: geometry.trouble };
    if (!stage.module) return missingSize(stage, 'module', 'the module of the pair');
    const place = parallelPlace(
      seatOf(geometry.from, stage.from).at,
      seatOf(geometry.to, stage.to).at,
      geometry.from.direction,
    );
    const wanted = Number(geometry.used[0]?.output.centreDistance);
    const off = Math.abs(place.centreDistance - wanted);
    return measured(
      { name: 'off by', value: off, kind: 'length', use: 'length' },
      { name: 'limit', value: DRAWN, kind: 'length', use: 'length' },
      () =>
        `Centres ${scene.show('length', place.centreDistance)} as drawn; the teeth ask for ${scene.show('length', wanted)}.`,
      typed(stage.module),
      usedOf(geometry, 'spur.geometry'),
      { capacity: 'common practice', demand: 'places of the two seats, and above' },
    );
  },
};

/** The belt fitted reaches round both pulleys. */
export const beltFit: Check = {
  id: 'belt.fit',
  title: 'belt against centres',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'a belt reaches round or not' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('belt'),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'belt') return null;
    const used = geometry.used[0];
    if (!used) return { kind: 'unknown', missing: geometry.trouble };
    const fitted = geometry.stage.beltTeeth;
    if (fitted === null)
      return {
        kind: 'unknown',
        missing: [{ address: `${geometry.stage.address}/length`, says: 'the number of teeth of the belt' }],
      };
    const needed = Number(used.output.beltTeeth);
    return measured(
      { name: 'needed', value: needed, kind: 'number', use: 'number' },
      { name: 'fitted', value: fitted, kind: 'number', use: 'number' },
      () => `The belt has ${fitted} teeth, and the centres ask for ${needed.toFixed(3)}.`,
      [],
      () => [used],
      { capacity: `${geometry.stage.address}/length`, demand: 'places of the two seats' },
    );
  },
};
