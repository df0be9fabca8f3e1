import { MethodError } from '@oddwheel/mechanics/method/method';
import { chainOnArm } from '@oddwheel/mechanics/suspension/chain-on-arm';
import type { Scene } from '../checks/check.ts';
import { turnsForward } from '../scene.ts';
import { type ArmChain, placeName } from './arm.ts';
import { onArmInput } from './room.ts';
import type { Rise } from './types.ts';

/** Which way the wheel rolls, and the span that pulls while the engine drives; null where the sense of the wheel is not known. */
function rolling({ senses }: Scene, index: number, arm: ArmChain) {
  const sense = senses[index + 1] ?? null;
  if (sense === null) return null;
  const forward = turnsForward(arm.onArm.direction, sense);
  // The upper side of a wheel that rolls forward runs forward: the upper span pulls when the driver lies ahead.
  const span = forward === arm.fixed.at[0] > arm.moving.at[0] ? ('upper' as const) : ('lower' as const);
  return { forward, span };
}

/** The case in which the chain of a stage pulls hardest. */
function hardest({ cases }: Scene, index: number) {
  return cases.reduce<(typeof cases)[number] | null>((best, load) => {
    const [torque, most] = [load.stages[index]?.torqueIn, best?.stages[index]?.torqueIn];
    return torque !== undefined && (most === undefined || torque > most) ? load : best;
  }, null);
}

/**
 * What the hardest pull of the chain and the thrust it makes at the tyre do to the arm, at the middle of the uncertain inputs; null where the
 * arm does not carry the wheel with the driven sprocket, or pull, tyre or sense are not known.
 */
export function riseOf(scene: Scene, index: number, arm: ArmChain): Rise | null {
  const load = hardest(scene, index);
  const rolls = rolling(scene, index, arm);
  const torqueIn = load?.stages[index]?.torqueIn;
  const { rollOut, show } = scene;
  if (!arm.drivesWheel || !load || torqueIn === undefined || !rolls || rollOut === null) return null;
  const { forward, span } = rolls;
  const pull = torqueIn / arm.chain.pitchRadiusDriver;
  const more = { tightSpan: span, pull, tyreRadius: rollOut / (2 * Math.PI) };
  try {
    const places = arm.steps.flatMap((angle): Rise['places'] => {
      const place = placeName(arm, angle);
      if (place === null) return [];
      const { torqueChain, torqueThrust, torque, sense } = chainOnArm.run(onArmInput(arm, angle, more));
      return [{ place, torqueChain, torqueThrust, torque, sense }];
    });
    const drawn = places.find(({ place }) => place === 'as drawn');
    if (!drawn) return null;
    const onAxle = Math.abs(drawn.torque) / (arm.armLength * Math.cos(arm.drawn));
    const does = {
      rises: `press the wheel down with ${show('torque', Math.abs(drawn.torque))} about the pivot, as ${show('force', onAxle)} at the axle would: the vehicle rises there`,
      squats: `lift the wheel with ${show('torque', Math.abs(drawn.torque))} about the pivot, as ${show('force', onAxle)} at the axle would: the vehicle squats there`,
      neither: 'leave the arm where it is',
    }[drawn.sense];
    return {
      case: load.point.id,
      pull,
      tightSpan: span,
      places,
      text: `At ${load.point.name} ${arm.stage.name} pulls with ${show('force', pull)}, its ${span} span${forward ? '' : ', as the wheel turns now, backward'}. Pull and thrust at the tyre together ${does}. That is for as long as the tyre grips; weight that goes from axle to axle as the vehicle speeds up comes on top.`,
    };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}
