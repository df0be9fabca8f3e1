import type { Model } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import type { Scene } from '../checks/check.ts';
import type { Assumed, Missing } from '../types.ts';
import { type ArmChain, onArmChain, placeName } from './arm.ts';
import { riseOf } from './rise.ts';
import { spanGaps, spanRooms } from './room.ts';
import { axleSlot, slackSetting } from './slack.ts';
import type { ChainOverStroke, Stroke, StrokePlace, Tightest } from './types.ts';

/** Wrap of the smaller sprocket at a centre distance. */
function wrapAt({ chain }: ArmChain, centreDistance: number): number {
  const lean = Math.asin(Math.abs(chain.pitchRadiusDriven - chain.pitchRadiusDriver) / centreDistance);
  return Math.PI - 2 * lean;
}

function placesOf(arm: ArmChain, links: number | null): readonly StrokePlace[] {
  const { input, output } = arm.travel;
  return arm.steps.map((angle): StrokePlace => {
    const k = input.armAngles.indexOf(angle);
    const centreDistance = output.centres[k] ?? Number.NaN;
    const { pitchRadiusDriver, pitchRadiusDriven } = arm.chain;
    const span = Math.sqrt(centreDistance ** 2 - (pitchRadiusDriven - pitchRadiusDriver) ** 2);
    const movement = links === null ? null : (output.movements[k] ?? Number.NaN);
    return {
      name: placeName(arm, angle),
      angle: angle - arm.drawn,
      centreDistance,
      linksNeeded: output.linksNeeded[k] ?? Number.NaN,
      movement,
      movementOverSpan: movement === null ? null : movement / span,
      wrapSmall: wrapAt(arm, centreDistance),
    };
  });
}

const AT: Readonly<Record<Tightest['at'], string>> = {
  'in line': 'with sprocket, pivot and axle in line',
  'full rebound': 'at full rebound',
  'full bump': 'at full bump',
  'everywhere alike': 'the same at every place, since the sprocket turns about the pivot',
};

function tightestOf(arm: ArmChain, links: number | null, show: Scene['show']): Tightest {
  const { output } = arm.travel;
  const { tightestAt, linksTightest, centreTightest } = output;
  const angle = output.tightestAngle - arm.drawn;
  const side = angle < 0 ? 'below' : 'above';
  const off = tightestAt === 'in line' ? `, ${show('angle', Math.abs(angle))} ${side} where it is drawn,` : '';
  const lead = tightestAt === 'everywhere alike' ? 'is' : 'is tightest';
  return {
    at: tightestAt,
    angle,
    centreDistance: centreTightest,
    linksNeeded: linksTightest,
    text: `Over the stroke ${arm.stage.name} ${lead} ${AT[tightestAt]}${off}${tightestAt === 'everywhere alike' ? ':' : ' and'} ${tightestAt === 'everywhere alike' ? 'it' : 'then'} needs ${linksTightest.toFixed(3)} links${links === null ? '' : ` of its ${links}`}.`,
  };
}

const ARM_HEIGHT =
  'height of the arm where the chain passes, with its rubbing strip; 0 where the chain runs clear beside it';

/** What is missing to count the room between the chain and the arm. */
export const armHeightMissing = ({ suspension }: ArmChain): Missing => ({
  address: `${suspension.address}/armHeight`,
  says: ARM_HEIGHT,
});

const WITHOUT_PULL: Within<Omit<ChainOverStroke, 'rise'>> = new WeakMap();

function overStroke(scene: Scene, index: number, arm: ArmChain): ChainOverStroke {
  const { adjusters, units } = scene.model;
  const found = within(WITHOUT_PULL, [arm, adjusters, units], () => withoutPull(scene.model, scene.show, arm));
  return { ...found, rise: riseOf(scene, index, arm) };
}

/** What hangs on no load. */
function withoutPull(
  model: Pick<Model, 'adjusters' | 'units'>,
  show: Scene['show'],
  arm: ArmChain,
): Omit<ChainOverStroke, 'rise'> {
  const { stage, suspension } = arm;
  const { links } = stage;
  const { armHeight } = suspension;
  const gaps = armHeight !== null && armHeight > 0 ? spanGaps(arm) : null;
  const beyond = (suspension.stand ?? 0) > suspension.rebound;
  const handSet = stage.tensioner !== true && links !== null;
  return {
    address: stage.address,
    name: stage.name,
    places: placesOf(arm, links),
    tightest: tightestOf(arm, links, show),
    slack: handSet && !beyond ? slackSetting(arm, links, show) : null,
    slot: handSet ? axleSlot(model, arm, show) : null,
    room: gaps === null || armHeight === null ? [] : spanRooms(arm, gaps, armHeight),
    missing: [
      ...(armHeight === null ? [armHeightMissing(arm)] : []),
      ...(links === null ? [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] : []),
      ...(beyond
        ? [{ address: `${suspension.address}/stand`, says: 'an angle on the stand no larger than the rebound' }]
        : []),
    ],
  };
}

/** Chains over the stroke of the swinging arm; null where the wheel is rigid or no chain leads to the arm. */
export function strokeOf(scene: Scene): Stroke | null {
  const { suspension, stages } = scene.model;
  const chains = stages.flatMap(({ address, name }, index): ChainOverStroke[] => {
    const found = onArmChain<ChainOverStroke>(scene, index, {
      arm: (arm) => overStroke(scene, index, arm),
      missing: (missing) => ({
        address,
        name,
        places: [],
        tightest: null,
        slack: null,
        slot: null,
        room: [],
        rise: null,
        missing,
      }),
    });
    return found ? [found] : [];
  });
  return chains.length === 0 ? null : { bump: suspension?.bump ?? 0, rebound: suspension?.rebound ?? 0, chains };
}

/** The blank angle on the stand, where a slack to set stands on it. */
export function standAssumed(stroke: Stroke | null, show: Scene['show']): readonly Assumed[] {
  const on = stroke?.chains.some(({ slack }) => slack?.standAssumed === true);
  if (!stroke || on !== true) return [];
  return [
    {
      address: '/brief/suspension/stand',
      name: 'Arm on the stand',
      text: `full rebound, ${show('angle', stroke.rebound)}`,
      source: 'common practice: on the stand the wheel hangs free, at full rebound',
    },
  ];
}
