import { armChainTravel } from '@oddwheel/mechanics/suspension/chain-travel';
import type { Shaft } from '../../model/model.ts';
import { seatOf } from '../geometry/place.ts';
import { type Check, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

const onArm = (shaft: Shaft): boolean => shaft.seats.some((seat) => seat.body === 'swinging arm');

/** A chain to a wheel on a swinging arm reaches round over the whole stroke. */
export const stroke: Check = {
  id: 'chain.stroke',
  title: 'links over the stroke of the arm',
  consequence: 'locks the wheel',
  wanted: { reserve: 1, from: 'a chain reaches round at every place of the arm or not' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('chain'),
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'chain' || onArm(geometry.from) === onArm(geometry.to)) return null;
    const { stage, from, to } = geometry;
    const { suspension } = scene.model;
    if (!suspension)
      return {
        kind: 'unknown',
        missing: [{ address: '/brief/suspension', says: 'pivot, bump and rebound of the swinging arm' }],
      };
    if (stage.links === null)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }] };
    if (!geometry.chain || stage.idler) return geometry.chain ? null : { kind: 'unknown', missing: geometry.trouble };
    const [fixed, moving] = onArm(to)
      ? [seatOf(from, stage.from), seatOf(to, stage.to)]
      : [seatOf(to, stage.to), seatOf(from, stage.from)];
    const { pivot, bump, rebound } = suspension;
    const [back, up] = [pivot[0] - moving.at[0], moving.at[2] - pivot[2]];
    const drawn = Math.atan2(up, back);
    // An arm that leads lifts its wheel as its angle falls.
    const lift = back >= 0 ? 1 : -1;
    const ends = [drawn - lift * rebound, drawn, drawn + lift * bump].sort((a, b) => a - b);
    const input = {
      pivot,
      sprocket: fixed.at,
      armLength: Math.hypot(back, up),
      pitch: stage.size.pitch,
      teethDriver: stage.teeth.driver,
      teethDriven: stage.teeth.driven,
      linksFitted: stage.links,
      armAngles: ends,
    };
    const output = armChainTravel.run(input);
    const { show } = scene;
    return measured(
      { name: 'needed where tightest', value: output.linksTightest, kind: 'number', use: 'number' },
      { name: 'fitted', value: stage.links, kind: 'number', use: 'number' },
      () =>
        `Over the stroke the chain is tightest ${output.tightestAt === 'everywhere alike' ? 'everywhere alike' : `at ${output.tightestAt}`} and then needs ${output.linksTightest.toFixed(3)} of its ${stage.links} links; its slack swings by ${show('length', output.slackSwing)}.`,
      [],
      () => [
        {
          method: armChainTravel,
          input,
          output,
          origins: {
            pivot: `${suspension.address}/pivot`,
            sprocket: fixed.address,
            armLength: 'places of pivot and axle',
            pitch: `chain-sizes/${stage.size.key}`,
            teethDriver: `${stage.address}/teeth/driver`,
            teethDriven: `${stage.address}/teeth/driven`,
            linksFitted: `${stage.address}/links`,
            armAngles: `${suspension.address}/bump and ${suspension.address}/rebound`,
          },
        },
      ],
      { capacity: `${stage.address}/links`, demand: 'above' },
    );
  },
};
