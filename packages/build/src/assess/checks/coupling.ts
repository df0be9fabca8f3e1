import { couplingMisalignment } from '@oddwheel/mechanics/coupling/misalignment';
import type { Stage } from '../../model/model.ts';
import { JOINT_LIMITS } from '../../model/rows.ts';
import { seatOf } from '../geometry/place.ts';
import type { CouplingGeometry, StageGeometry } from '../geometry/types.ts';
import { lineOf, linesOf } from '../layout/lines.ts';
import { type Movement, movementBetween, playBetween, swingMissing } from '../layout/movement.ts';
import type { Missing } from '../types.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

type CouplingStage = Extract<Stage, { readonly kind: 'coupling' }>;

interface OnCoupling {
  readonly stage: CouplingStage;
  readonly geometry: StageGeometry;
  readonly coupling: CouplingGeometry;
}

const onCoupling =
  (run: (found: OnCoupling, scene: Scene, subject: Subject) => Outcome | null): Check['run'] =>
  (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'coupling') return null;
    if (!geometry.coupling) return { kind: 'unknown', missing: geometry.trouble };
    return run({ stage: geometry.stage, geometry, coupling: geometry.coupling }, scene, subject);
  };

const couplings = stagesOfKind('coupling');

const joints: Check['subjects'] = (model) =>
  couplings(model).filter(({ stage }) => {
    const found = stage === null ? undefined : model.stages[stage];
    return found?.kind === 'coupling' && found.joint.includes('universal');
  });

/** Angle of each universal joint against the one at which its forks touch. */
export const jointAngle: Check = {
  id: 'coupling.angle',
  title: 'angle of the universal joint',
  consequence: 'throws parts',
  wanted: {
    reserve: JOINT_LIMITS.most.angle / JOINT_LIMITS.good.angle,
    from: `${JOINT_LIMITS.good.source}: below 25° is good practice, and the forks of a plain cross touch near 37.5°`,
  },
  atWorst: 'fails',
  perCase: false,
  subjects: joints,
  run: onCoupling(({ coupling, geometry }, { show }) => {
    const worst = Math.max(...coupling.joints);
    const { angle, row } = JOINT_LIMITS.most;
    return measured(
      { name: 'as drawn', value: worst, kind: 'angle', use: 'angle' },
      { name: 'forks touch at', value: angle, kind: 'angle', use: 'angle' },
      () =>
        `The joint${coupling.joints.length > 1 ? 's work' : ' works'} at ${coupling.joints.map((x) => show('angle', x)).join(' and ')}; the forks of a plain cross touch near ${show('angle', angle)}.`,
      [],
      () => geometry.used,
      { capacity: row, demand: 'above' },
    );
  }),
};

/** How unevenly the output turns: two joints at equal angles cancel, one alone never does. */
export const even: Check = {
  id: 'coupling.even',
  title: 'evenness behind the universal joint',
  consequence: 'wears out',
  wanted: { reserve: 1, from: JOINT_LIMITS.residual.source },
  atWorst: 'thin',
  perCase: false,
  subjects: joints,
  run: onCoupling(({ coupling, geometry }, { show }) => {
    const { angle, row } = JOINT_LIMITS.residual;
    const [first = 0, second] = coupling.joints;
    const speeds = `its speed varies by ${show('percent', coupling.unevenness)} twice in every turn`;
    return measured(
      { name: 'like one joint at', value: coupling.residual, kind: 'angle', use: 'angle' },
      { name: 'limit', value: angle, kind: 'angle', use: 'angle' },
      () =>
        second === undefined
          ? `One joint at ${show('angle', first)} never turns its output evenly: ${speeds}; up to ${show('angle', angle)} is smooth. Two joints at equal angles cancel.`
          : `Joints at ${show('angle', first)} and ${show('angle', second)} turn the output like one at ${show('angle', coupling.residual)}: ${speeds}; up to ${show('angle', angle)} is smooth. Equal angles in one plane, inner forks in line, cancel.`,
      [],
      () => geometry.used,
      { capacity: row, demand: 'above' },
    );
  }),
};

interface ToTake {
  readonly radial: number;
  readonly angular: number;
  readonly axial: number;
}

/** Movement between what carries the two ends; missing where a bearing or the swinging arm is not named; null where other checks have the word. */
function movementAt(scene: Scene, subject: Subject, geometry: StageGeometry): Movement | readonly Missing[] | null {
  if (subject.stage === null || geometry.stage.kind !== 'coupling') return null;
  // A rigid coupling makes one shaft of two, and where its bearings stand is the business of that line.
  if (geometry.stage.joint === 'rigid')
    return { ...playBetween('subframe', 'subframe'), offset: 0, angle: 0, axial: 0 };
  const lines = linesOf(scene.model);
  const ends = [lineOf(lines, subject.stage), lineOf(lines, subject.stage + 1)];
  const bare = ends.flatMap((line): Missing[] =>
    line && line.bodies.length === 0
      ? [
          {
            address: `${line.shafts[0]?.address}/seats`,
            says: `the bearings of ${line.shafts[0]?.name}, each with its body`,
          },
        ]
      : [],
  );
  if (bare.length > 0) return bare;
  const [from, to] = ends.map((line) => (line?.bodies.length === 1 ? line.bodies[0] : undefined));
  if (from === undefined || to === undefined) return null;
  const at = seatOf(geometry.to, geometry.stage.to).at;
  return movementBetween(scene.model, from, to, at, geometry.to.direction) ?? swingMissing(scene.model, from, to);
}

/** What the coupling has to take up: what is drawn, and what the bodies move. */
function toTake({ stage, coupling }: OnCoupling, movement: Movement): ToTake {
  const { offset, angle, axial } = movement;
  if (stage.joint !== 'two universal joints')
    return { radial: coupling.offset + offset, angular: coupling.angle + angle, axial };
  // A middle shaft between two joints is there to bridge the offset that is drawn.
  return { radial: offset, angular: Math.max(...coupling.joints) + angle, axial };
}

const isMissing = (x: Movement | readonly Missing[]): x is readonly Missing[] => Array.isArray(x);

/** Offset, angle and axial movement together, against what the coupling takes up. */
export const takes: Check = {
  id: 'coupling.takes',
  title: 'what the coupling takes up',
  consequence: 'loses drive',
  wanted: {
    reserve: 1,
    from: 'coupling makers’ rule: used parts of all three limits add up to 1 at most (from memory); movement as stated in body-movements',
  },
  atWorst: 'fails',
  perCase: false,
  subjects: couplings,
  run: onCoupling((found, scene, subject) => {
    const { stage, geometry } = found;
    const movement = movementAt(scene, subject, geometry);
    if (movement === null) return null;
    if (isMissing(movement)) return { kind: 'unknown', missing: movement };
    const rigid = stage.joint === 'rigid' ? JOINT_LIMITS.rigid : null;
    const limits = {
      angle: stage.takes.angle ?? rigid?.angle ?? null,
      offset: stage.takes.offset ?? rigid?.offset ?? null,
      axial: stage.takes.axial ?? rigid?.axial ?? null,
    };
    const { angle, offset, axial } = limits;
    if (angle === null || offset === null || axial === null) {
      const words = { angle: 'angle', offset: 'parallel offset', axial: 'axial movement' } as const;
      const missing = (['angle', 'offset', 'axial'] as const)
        .filter((key) => limits[key] === null)
        .map((key) => ({
          address: `${stage.address}/takes/${key}`,
          says: `the ${words[key]} that ${stage.name} takes`,
        }));
      return { kind: 'unknown', missing };
    }
    const demand = toTake(found, movement);
    const { show } = scene;
    const says = () =>
      `To take up: ${show('length', demand.radial)} offset of ${show('length', offset)}, ${show('angle', demand.angular)} of ${show('angle', angle)}, ${show('length', demand.axial)} along the shaft of ${show('length', axial)}.${rigid ? ' A rigid coupling takes nothing: bring the shafts into line, or fit an elastic one.' : ''}`;
    const none = (need: number, limit: number) => need > 0 && limit === 0;
    if (none(demand.radial, offset) || none(demand.angular, angle) || none(demand.axial, axial))
      return { kind: 'plain', holds: false, says, uses: [], used: () => geometry.used };
    // Where nothing is to be taken a limit of zero is as good as any.
    const limit = (x: number): number => (x > 0 ? x : 1);
    const input = { ...demand, radialLimit: limit(offset), angularLimit: limit(angle), axialLimit: limit(axial) };
    const output = couplingMisalignment.run(input);
    return measured(
      { name: 'used in all', value: output.used, kind: 'number', use: 'percent' },
      { name: 'room', value: 1, kind: 'number', use: 'percent' },
      says,
      [],
      () => [
        ...geometry.used,
        {
          method: couplingMisalignment,
          input,
          output,
          origins: {
            radial: `as drawn, and ${movement.row}`,
            angular: `as drawn, and ${movement.row}`,
            axial: movement.row,
            radialLimit: stage.takes.offset === null ? (rigid?.row ?? '') : `${stage.address}/takes/offset`,
            angularLimit: stage.takes.angle === null ? (rigid?.row ?? '') : `${stage.address}/takes/angle`,
            axialLimit: stage.takes.axial === null ? (rigid?.row ?? '') : `${stage.address}/takes/axial`,
          },
        },
      ],
      { capacity: 'the whole of it', demand: 'above' },
    );
  }),
};
