import { chainAlignment } from '@oddwheel/mechanics/chain/alignment';
import { dot, minus } from '@oddwheel/mechanics/numerics/vector';
import type { SeatRef, Shaft } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import { seatOf } from '../geometry/place.ts';
import { parallelPlace } from '../geometry/tangent.ts';
import { type Check, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

/** Both sprockets of a chain run in one plane. */
export const plane: Check = {
  id: 'chain.plane',
  title: 'sprockets in one plane',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: CHAIN_LIMITS.faceOffset.source },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('chain'),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'chain') return null;
    if (!geometry.chain) return { kind: 'unknown', missing: geometry.trouble };
    const { stage, from, to } = geometry;
    const input = {
      seatDriver: seatOf(from, stage.from).at,
      directionDriver: from.direction,
      seatDriven: seatOf(to, stage.to).at,
      directionDriven: to.direction,
    };
    const output = chainAlignment.run(input);
    const { show } = scene;
    // Places are sums of figures: what is left below a nanometre is rounding.
    const offset = Math.abs(output.offset) < 1e-9 ? 0 : Math.abs(output.offset);
    return measured(
      { name: 'planes apart', value: offset, kind: 'length', use: 'length' },
      { name: 'limit', value: output.offsetLimit, kind: 'length', use: 'length' },
      () =>
        offset === 0
          ? 'The two sprockets are drawn in one plane.'
          : `The planes of the two sprockets stand ${show('length', offset)} apart; ${show('length', output.offsetLimit)} is the limit at these centres.`,
      [],
      () => [
        {
          method: chainAlignment,
          input,
          output,
          origins: {
            seatDriver: seatOf(from, stage.from).address,
            directionDriver: `${from.address}/direction`,
            seatDriven: seatOf(to, stage.to).address,
            directionDriven: `${to.address}/direction`,
          },
        },
      ],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** Angle of the shafts and angle of the offset of a toothed belt together. */
export const beltAngle: Check = {
  id: 'belt.angle',
  title: 'pulleys in line',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.beltAngle.source },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('belt'),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'belt') return null;
    const { stage, from, to, skew } = geometry;
    const spot = parallelPlace(seatOf(from, stage.from).at, seatOf(to, stage.to).at, from.direction);
    const ofOffset = Math.atan2(spot.planeOffset, spot.centreDistance);
    const { value, row } = CHAIN_LIMITS.beltAngle;
    const { show } = scene;
    return measured(
      { name: 'as drawn', value: skew + ofOffset, kind: 'angle', use: 'angle' },
      { name: 'limit', value, kind: 'angle', use: 'angle' },
      () =>
        skew + ofOffset === 0
          ? 'The two pulleys are drawn in one plane.'
          : `The shafts stand ${show('angle', skew)} to each other and the pulleys ${show('length', spot.planeOffset)} apart, ${show('angle', skew + ofOffset)} together; ${show('angle', value)} is the limit.`,
      [],
      () => [],
      { capacity: row, demand: 'places of the two seats and directions of the two shafts' },
    );
  },
};

/** How far a gear's seat lies from the stretch of its axis between its mean cone and its outer cone. */
function offCone(shaft: Shaft, ref: SeatRef, apex: readonly [number, number, number], mean: number, outer: number) {
  const seat = seatOf(shaft, ref);
  const stands = Math.abs(dot(minus(seat.at, apex), shaft.direction));
  return { seat, stands, mean, off: Math.max(mean - stands, stands - outer, 0) };
}

/** Both gears of a bevel pair sit where their cones reach the apex. */
export const seat: Check = {
  id: 'bevel.seat',
  title: 'gears at their distance from the apex',
  consequence: 'loses drive',
  wanted: {
    reserve: 1,
    from: 'common practice: a gear is drawn at the middle of its teeth or at their large end, within half the face width',
  },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('bevel'),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'bevel') return null;
    const { bevel, stage, from, to } = geometry;
    if (!bevel) return { kind: 'unknown', missing: geometry.trouble };
    const used = geometry.used.find(({ method }) => method.id === 'bevel.geometry');
    if (!used || !stage.module || !stage.faceWidth)
      return {
        kind: 'unknown',
        missing: [
          ...(stage.module ? [] : [{ address: `${stage.address}/module`, says: 'the module of the pair' }]),
          ...(stage.faceWidth ? [] : [{ address: `${stage.address}/faceWidth`, says: 'the face width of the pair' }]),
        ],
      };
    const read = (key: string): number => Number(used.output[key]);
    const gears = (['Driver', 'Driven'] as const).map((end) => {
      const cosine = Math.cos(read(`pitchAngle${end}`));
      const [shaft, ref] = end === 'Driver' ? [from, stage.from] : [to, stage.to];
      return offCone(shaft, ref, bevel.apex, read('meanConeDistance') * cosine, read('outerConeDistance') * cosine);
    });
    const worst = gears.reduce((a, b) => (b.off > a.off ? b : a));
    const room = scene.at(stage.faceWidth) / 2;
    const { show } = scene;
    return measured(
      { name: 'off by', value: worst.off, kind: 'length', use: 'length' },
      { name: 'half the face width', value: room, kind: 'length', use: 'length' },
      () =>
        gears
          .map(
            (gear) =>
              `${gear.seat.name} sits ${show('length', gear.stands)} from the apex, and the middle of its teeth belongs at ${show('length', gear.mean)}`,
          )
          .join('; ')
          .concat('.'),
      [stage.module, stage.faceWidth],
      () => [used],
      { capacity: stage.faceWidth.address, demand: 'places of the two gears, and above' },
    );
  },
};
