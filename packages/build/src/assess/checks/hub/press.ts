import { pressStress } from '@oddwheel/mechanics/fit/press-stress';
import type { Hub } from '../../../model/hub.ts';
import type { CaseLoads } from '../../loads.ts';
import { pressHolds, pressSizes, type Tightness, temperaturesOf, tightness } from '../../strength/press-joint.ts';
import type { Outcome, Scene } from '../check.ts';
import { fine } from '../seating/common.ts';
import { THROUGH } from './flanks.ts';
import { force, type Mode, pressure, torque as torqueAmount, worstOf } from './modes.ts';
import { NOTHING, pushOn, type TorqueSeat, unknown } from './seats.ts';

/**
 * A press fit passes what its friction does at the least interference, while neither part gives for good at the most: each at the worst of
 * the shop's temperature and the build's cold and hot. Null where neither torque nor push comes.
 */
export function pressPasses(
  found: TorqueSeat & { readonly hub: Hub },
  torque: number,
  load: CaseLoads,
  scene: Scene,
): Outcome | null {
  const { at, show } = scene;
  const { hub, seat, shaft } = found;
  const { press } = hub;
  const push = pushOn(found, load, scene);
  if (torque < NOTHING && push.missing.length === 0 && push.along < NOTHING) return null;
  if (!press)
    return unknown({
      address: `${hub.address}/press`,
      says: `the press fit of ${seat.name}: its interference, the length and the outside diameter of the hub`,
    });
  if (seat.diameter === null)
    return unknown({ address: `${seat.address}/diameter`, says: `the diameter of the shaft in ${seat.name}` });
  if (push.missing.length > 0) return unknown(...push.missing);
  const { loads } = scene.model;
  const joint = { press, hub, diameter: seat.diameter, seat: seat.address };
  const least = tightness(joint, 'least', loads, at);
  const most = tightness(joint, 'most', loads, at);
  const axial = push.along;
  const hold = pressHolds(joint, least.interference, {
    value: axial,
    from: 'what the part brings along the shaft under this case',
  });
  const { sizes, origins } = pressSizes(joint);
  const hubYield = at(hub.metal.yield);
  const shaftYield = at(shaft.steel.yield);
  const stressInput = { ...sizes, interference: most.interference, hubYield, shaftYield };
  const stress = pressStress.run(stressInput);
  const heat = temperaturesOf(hub, loads);
  const turned = torque >= NOTHING;
  const modes: Mode[] = [
    turned
      ? {
          name: 'slip',
          demand: torqueAmount('torque', torque),
          capacity: torqueAmount('slips at', hold.torque),
          uses: heat,
          origins: { capacity: 'above', demand: THROUGH },
        }
      : {
          name: 'slip',
          demand: force('push along the shaft', axial),
          capacity: force('slips at', hold.force),
          uses: heat,
          origins: { capacity: 'above', demand: 'what the part brings along the shaft under this case' },
        },
  ];
  if (stress.pressure > 0)
    modes.push(
      {
        name: 'stress in the hub',
        demand: pressure('stress in the hub', stress.hubStress),
        capacity: pressure('yield strength', hubYield),
        uses: [hub.metal.yield],
        origins: { capacity: hub.metal.yield.address, demand: 'above' },
      },
      {
        name: 'stress in the shaft',
        demand: pressure('stress in the shaft', stress.shaftStress),
        capacity: pressure('yield strength', shaftYield),
        uses: [shaft.steel.yield],
        origins: { capacity: shaft.steel.yield.address, demand: 'above' },
      },
    );
  const warm = ({ worst, change }: Tightness, does: string): string =>
    worst
      ? `, at ${show('temperature', at(worst))} where the ${hub.metal.elastic} hub ${does} by ${fine(scene, change)},`
      : '';
  const holds = (): string =>
    `At the least interference${warm(least, 'loosens')} the press fit slips at ${
      turned
        ? `${show('torque', hold.torque)} beside ${show('force', axial)} along the shaft, and at ${show('force', hold.force)} along it without torque; ${show('torque', torque)} is asked.`
        : `${show('force', hold.force)} along the shaft; ${show('force', axial)} is asked.`
    }`;
  return worstOf(
    modes,
    ({ name, demand, capacity }) =>
      name === 'slip'
        ? holds()
        : `${holds()} At the most${warm(most, 'tightens')} the ${name} is ${show('pressure', demand.value)} of ${show('pressure', capacity.value)}.`,
    () => [
      ...least.used,
      hold.used,
      ...most.used,
      {
        method: pressStress,
        input: stressInput,
        output: stress,
        origins: { ...origins, hubYield: hub.metal.yield.address, shaftYield: shaft.steel.yield.address },
      },
    ],
  );
}
