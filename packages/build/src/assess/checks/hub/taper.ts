import { taperGrip } from '@oddwheel/mechanics/joint/taper-grip';
import type { Hub } from '../../../model/hub.ts';
import type { Outcome, Scene } from '../check.ts';
import { THROUGH } from './flanks.ts';
import { torque as torqueAmount, worstOf } from './modes.ts';
import { type TorqueSeat, unknown } from './seats.ts';
import { frictionOf, preloadOf } from './tightened.ts';

/** A taper passes what the friction of its draw does; a key in it only finds the place. */
export function taperPasses(
  { hub, seat }: TorqueSeat & { readonly hub: Hub },
  torque: number,
  { show }: Scene,
): Outcome {
  const { taper } = hub;
  const at = `${hub.address}/taper`;
  if (!taper) return unknown({ address: at, says: `the taper of ${seat.name}: its slope, length and nut` });
  if (seat.diameter === null)
    return unknown({ address: `${seat.address}/diameter`, says: `the large diameter of the taper in ${seat.name}` });
  if (taper.thread === null)
    return unknown({ address: `${at}/thread`, says: `the thread of the nut that draws ${seat.name} on` });
  if (taper.tightening === null)
    return unknown({ address: `${at}/tightening`, says: `the tightening torque of the nut of ${seat.name}` });
  const preload = preloadOf(taper.thread, taper, taper.tightening, at);
  const friction = frictionOf(taper);
  const input = {
    draw: preload.least,
    diameter: seat.diameter,
    length: taper.length,
    ratio: taper.ratio,
    friction: friction.value,
  };
  const output = taperGrip.run(input);
  return worstOf(
    [
      {
        name: 'slip',
        demand: torqueAmount('torque', torque),
        capacity: torqueAmount('slips at', output.torque),
        uses: [],
        origins: { capacity: 'above', demand: THROUGH },
      },
    ],
    () =>
      `Drawn on with at least ${show('force', preload.least)} the taper slips at ${show('torque', output.torque)}; ${show('torque', torque)} is asked.`,
    () => [
      preload.used,
      {
        method: taperGrip,
        input,
        output,
        origins: {
          draw: 'least preload, above',
          diameter: `${seat.address}/diameter`,
          length: `${at}/length`,
          ratio: `${at}/ratio`,
          friction: friction.from,
        },
      },
    ],
  );
}
