import { effectiveInterference } from '@oddwheel/mechanics/fit/effective-interference';
import { pressFitHold } from '@oddwheel/mechanics/fit/press-fit-hold';
import { pressStress } from '@oddwheel/mechanics/fit/press-stress';
import { FIT_FRICTION } from '@oddwheel/tables/fit-friction';
import { FIT_METALS } from '@oddwheel/tables/fit-metals';
import { rowInSi } from '@oddwheel/tables/table';
import type { Hub, HubPress } from '../../../model/hub.ts';
import type { Used } from '../../geometry/types.ts';
import type { CaseLoads } from '../../loads.ts';
import type { Outcome, Scene } from '../check.ts';
import { THROUGH } from './flanks.ts';
import { type Mode, pressure, torque as torqueAmount, worstOf } from './modes.ts';
import { pushAlong, type TorqueSeat, unknown } from './seats.ts';

/** m: roughness Rz of a seat that is turned with care (common practice). */
const TURNED = 10e-6;
/** Pressed fits of other metals than steel have one row each. */
const FRICTION = { 'grey cast iron': 'steel in cast iron', aluminium: 'steel in aluminium' } as const;

const elastic = (metal: string) => {
  const { youngs = Number.NaN, poisson = Number.NaN } = rowInSi(FIT_METALS, metal);
  return { youngs, poisson };
};

const STEEL = elastic('steel');

/** Interference that presses, once the peaks of both seats are flat. */
function pressing(press: HubPress, interference: number, address: string): { effective: number; used: Used } {
  const rough = press.roughness ?? TURNED;
  const input = { interference, shaftRoughness: rough, holeRoughness: rough, factor: 0.8 };
  const output = effectiveInterference.run(input);
  const from = press.roughness === null ? 'turned with care: Rz 10 µm (common practice)' : `${address}/roughness`;
  const origins = {
    interference: `${address}/interference`,
    shaftRoughness: from,
    holeRoughness: from,
    factor: 'DIN 7190 (from memory)',
  };
  return { effective: output.effective, used: { method: effectiveInterference, input, output, origins } };
}

/** A press fit passes what its friction does at the least interference, while neither part gives for good at the most. */
export function pressPasses(
  found: TorqueSeat & { readonly hub: Hub },
  torque: number,
  load: CaseLoads,
  { at, show }: Scene,
): Outcome {
  const { hub, seat, shaft } = found;
  const { press } = hub;
  const address = `${hub.address}/press`;
  if (!press)
    return unknown({
      address,
      says: `the press fit of ${seat.name}: its interference, the length and the outside diameter of the hub`,
    });
  if (seat.diameter === null)
    return unknown({ address: `${seat.address}/diameter`, says: `the diameter of the shaft in ${seat.name}` });
  const least = pressing(press, press.least, address);
  const most = pressing(press, press.most, address);
  const metal = elastic(hub.metal.elastic);
  const sizes = {
    diameter: seat.diameter,
    outside: press.outside,
    bore: press.bore,
    hubYoungs: metal.youngs,
    shaftYoungs: STEEL.youngs,
    hubPoisson: metal.poisson,
    shaftPoisson: STEEL.poisson,
  };
  const row = hub.metal.elastic === 'steel' ? press.joined : FRICTION[hub.metal.elastic];
  const axial = pushAlong(found, load);
  const holdInput = {
    ...sizes,
    interference: least.effective,
    length: press.length,
    friction: rowInSi(FIT_FRICTION, row).low ?? Number.NaN,
    axial,
  };
  const hold = pressFitHold.run(holdInput);
  const hubYield = at(hub.metal.yield);
  const shaftYield = at(shaft.steel.yield);
  const stressInput = { ...sizes, interference: most.effective, hubYield, shaftYield };
  const stress = pressStress.run(stressInput);
  const stiff = `fit-metals/${hub.metal.elastic}`;
  const origins = {
    interference: 'above',
    diameter: `${seat.address}/diameter`,
    outside: `${address}/outside`,
    bore: `${address}/bore, 0 where it is blank`,
    hubYoungs: stiff,
    shaftYoungs: 'fit-metals/steel',
    hubPoisson: stiff,
    shaftPoisson: 'fit-metals/steel',
  };
  const modes: Mode[] = [
    {
      name: 'slip',
      demand: torqueAmount('torque', torque),
      capacity: torqueAmount('slips at', hold.torque),
      uses: [],
      origins: { capacity: 'above', demand: THROUGH },
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
  return worstOf(
    modes,
    ({ name, demand, capacity }) => {
      const holds = `At the least interference the press fit slips at ${show('torque', hold.torque)} beside ${show('force', axial)} along the shaft, and at ${show('force', hold.force)} along it without torque; ${show('torque', torque)} is asked.`;
      return name === 'slip'
        ? holds
        : `${holds} At the most the ${name} is ${show('pressure', demand.value)} of ${show('pressure', capacity.value)}.`;
    },
    () => [
      least.used,
      {
        method: pressFitHold,
        input: holdInput,
        output: hold,
        origins: {
          ...origins,
          length: `${address}/length`,
          friction: `fit-friction/${row}, the low end`,
          axial: 'what the part brings along the shaft under this case',
        },
      },
      most.used,
      {
        method: pressStress,
        input: stressInput,
        output: stress,
        origins: { ...origins, hubYield: hub.metal.yield.address, shaftYield: shaft.steel.yield.address },
      },
    ],
  );
}
