import { armChainTravel } from '@oddwheel/mechanics/suspension/chain-travel';
import { type ArmChain, armOrigins, onArmChain } from '../stroke/arm.ts';
import { type Check, type Outcome, type Scene, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';
import { perModel } from './per-model.ts';

function reaches(arm: ArmChain, { show }: Scene): Outcome {
  const { stage, suspension } = arm;
  const { links } = stage;
  if (links === null)
    return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] };
  const { input, output } = arm.travel;
  const where: Readonly<Record<typeof output.tightestAt, string>> = {
    'in line': 'tightest with sprocket, pivot and axle in line',
    'full rebound': 'tightest at full rebound',
    'full bump': 'tightest at full bump',
    'everywhere alike': 'everywhere alike',
  };
  return measured(
    { name: 'needed where tightest', value: output.linksTightest, kind: 'number', use: 'number' },
    { name: 'fitted', value: links, kind: 'number', use: 'number' },
    () =>
      `Over the stroke the chain is ${where[output.tightestAt]}, and needs ${output.linksTightest.toFixed(3)} of its ${links} links there; its slack swings by ${show('length', output.slackSwing)}.`,
    [],
    () => [
      {
        method: armChainTravel,
        input,
        output,
        origins: {
          ...armOrigins(arm),
          linksFitted: `${stage.address}/links`,
          armAngles: `${suspension.address}/bump and ${suspension.address}/rebound`,
        },
      },
    ],
    { capacity: `${stage.address}/links`, demand: 'above' },
  );
}

/** A chain to a wheel on a swinging arm reaches round over the whole stroke. */
export const stroke: Check = {
  id: 'chain.stroke',
  title: 'links over the stroke of the arm',
  consequence: 'locks the wheel',
  wanted: { reserve: 1, from: 'a chain reaches round at every place of the arm or not' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('chain'),
  run: perModel((scene, subject) =>
    onArmChain<Outcome | null>(scene, subject.stage, {
      arm: (arm) => reaches(arm, scene),
      missing: (missing) => ({ kind: 'unknown', missing }),
    }),
  ),
};
