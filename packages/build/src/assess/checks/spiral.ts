import { bevelSpiralForces } from '@oddwheel/mechanics/bevel/spiral-forces';
import { minus } from '@oddwheel/mechanics/numerics/vector';
import { seenFromBack } from '../geometry/bevel.ts';
import { seatOf, turning } from '../geometry/place.ts';
import { type Check, stagesOfKind } from './check.ts';

/** The spiral of the driver pushes the pair apart, not into mesh, while it drives. */
export const hand: Check = {
  id: 'bevel.hand',
  title: 'hand of the spiral',
  consequence: 'wears out',
  wanted: {
    reserve: 1,
    from: 'Gear makers’ rule, from memory: choose the hand that pushes the pinion away from the apex while it drives',
  },
  atWorst: 'thin',
  perCase: false,
  subjects: (model) =>
    stagesOfKind('bevel')(model).filter(({ stage }) => {
      const found = stage === null ? undefined : model.stages[stage];
      return found?.kind === 'bevel' && (found.spiral !== null || found.hand !== null);
    }),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'bevel' || subject.stage === null) return null;
    const { stage, bevel, from } = geometry;
    const missing = [
      ...(stage.spiral ? [] : [{ address: `${stage.address}/spiral`, says: 'the mean spiral angle of the pair' }]),
      ...(stage.hand ? [] : [{ address: `${stage.address}/hand`, says: 'the hand of the driver’s spiral' }]),
      ...(stage.module ? [] : [{ address: `${stage.address}/module`, says: 'the module of the pair' }]),
      ...(stage.faceWidth ? [] : [{ address: `${stage.address}/faceWidth`, says: 'the face width of the pair' }]),
    ];
    if (!stage.spiral || !stage.hand || missing.length > 0) return { kind: 'unknown', missing };
    const sized = geometry.used.find(({ method }) => method.id === 'bevel.geometry');
    const sense = scene.senses[subject.stage] ?? null;
    if (!bevel || !sized || sense === null)
      return {
        kind: 'unknown',
        missing: scene.stages.flatMap(({ relation, trouble }) => (relation === null ? trouble : [])),
      };
    const out = minus(seatOf(from, stage.from).at, bevel.apex);
    const input = {
      torqueDriver: 100,
      meanDiameterDriver: Number(sized.output.meanDiameterDriver),
      pitchAngleDriver: Number(sized.output.pitchAngleDriver),
      pitchAngleDriven: Number(sized.output.pitchAngleDriven),
      pressureAngle: Math.PI / 9,
      spiralAngle: scene.at(stage.spiral),
      hand: stage.hand,
      turning: seenFromBack(turning(from, sense), out),
      flow: 'drive',
    } as const;
    const output = bevelSpiralForces.run(input);
    const coast = bevelSpiralForces.run({ ...input, flow: 'coast' });
    const { show } = scene;
    const way = (force: number): string =>
      `${force < 0 ? 'draws it into mesh' : 'pushes it away from the apex'} with ${show('force', Math.abs(force))}`;
    const holds = output.axialDriver >= 0;
    return {
      kind: 'plain',
      holds,
      says: () =>
        `At 100 N·m on the driver the spiral ${way(output.axialDriver)}; when the engine brakes it ${way(coast.axialDriver)}.${holds ? '' : ' Take the other hand, or a bearing that holds the driver back.'}`,
      uses: [stage.spiral, stage.module, stage.faceWidth].filter((v) => v !== null),
      used: () => [
        sized,
        {
          method: bevelSpiralForces,
          input,
          output,
          origins: {
            torqueDriver: '100 N·m, to compare',
            meanDiameterDriver: 'above',
            pitchAngleDriver: 'above',
            pitchAngleDriven: 'above',
            pressureAngle: '20 degrees',
            spiralAngle: stage.spiral?.address ?? '',
            hand: `${stage.address}/hand`,
            turning: 'sense of the driver, seen from its large end',
            flow: 'driving',
          },
        },
      ],
    };
  },
};
