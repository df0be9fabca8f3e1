import { setscrewHold } from '@oddwheel/mechanics/joint/setscrew-hold';
import { weldAllowed } from '@oddwheel/mechanics/joint/weld-allowed';
import { weldRing } from '@oddwheel/mechanics/joint/weld-ring';
import { HUB_LIMITS } from '@oddwheel/tables/hub-limits';
import { SETSCREWS } from '@oddwheel/tables/setscrews';
import { rowInSi } from '@oddwheel/tables/table';
import type { Hub } from '../../../model/hub.ts';
import type { CaseLoads } from '../../loads.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { flangePasses, hardestBolt } from './flange.ts';
import { flanksOf, KEY_METAL, THROUGH } from './flanks.ts';
import { type Mode, pressure, torque as torqueAmount, worstOf } from './modes.ts';
import { impossible } from './possible.ts';
import { pressPasses } from './press.ts';
import { NOTHING, pushAcross, seatsWith, type TorqueSeat, torqueSeatOf, torqueThrough, unknown } from './seats.ts';
import { taperPasses } from './taper.ts';

export type Jointed = TorqueSeat & { readonly hub: Hub };

/** Shear strength over strength in tension, distortion energy. */
const SHEAR = 0.577;

function onFlanks(found: Jointed, torque: number, scene: Scene): Outcome {
  const { hub, seat, shaft } = found;
  const answer = flanksOf(hub, seat, torque);
  if (!answer.ok) return answer.outcome;
  const { onHub, onShaft, shear, rootShear, used } = answer.of;
  const { at, show } = scene;
  const word = hub.torqueBy === 'key' ? 'key' : 'spline';
  const hubYield = at(hub.metal.yield);
  const shaftYield = at(shaft.steel.yield);
  const modes: Mode[] = [
    {
      name: `pressure of the ${word} on the hub`,
      demand: pressure('pressure on the hub', onHub),
      capacity: pressure('yield strength', hubYield),
      uses: [hub.metal.yield],
      origins: { capacity: hub.metal.yield.address, demand: 'above' },
    },
    {
      name: `pressure of the ${word} on the shaft`,
      demand: pressure('pressure on the shaft', onShaft),
      capacity: pressure('yield strength', shaftYield),
      uses: [shaft.steel.yield],
      origins: { capacity: shaft.steel.yield.address, demand: 'above' },
    },
  ];
  if (shear !== null)
    modes.push({
      name: word === 'key' ? 'shear through the key' : 'shear through the teeth',
      demand: pressure('shear', shear),
      capacity: pressure('shear strength', SHEAR * (word === 'key' ? KEY_METAL : Math.min(hubYield, shaftYield))),
      uses: word === 'key' ? [] : [hub.metal.yield, shaft.steel.yield],
      origins: {
        capacity: word === 'key' ? '0.577 of hub-limits/key-metal' : '0.577 of the softer of hub and shaft',
        demand: 'above',
      },
    });
  if (rootShear !== null)
    modes.push({
      name: 'shear in the shaft under the teeth',
      demand: pressure('shear', rootShear),
      capacity: pressure('shear strength', SHEAR * shaftYield),
      uses: [shaft.steel.yield],
      origins: { capacity: `0.577 of ${shaft.steel.yield.address}`, demand: 'above' },
    });
  return worstOf(
    modes,
    ({ name, demand, capacity }) =>
      `The ${word} passes ${show('torque', torque)}, either way. Nearest to its end is the ${name}: ${show('pressure', demand.value)} of ${show('pressure', capacity.value)}.`,
    used,
  );
}

function bySetscrews({ hub, seat }: Jointed, torque: number, { show }: Scene): Outcome {
  const { screws } = hub;
  if (!screws)
    return unknown({ address: `${hub.address}/screws`, says: `size and number of the setscrews of ${seat.name}` });
  if (seat.diameter === null)
    return unknown({ address: `${seat.address}/diameter`, says: `the diameter of the shaft in ${seat.name}` });
  const input = {
    hold: rowInSi(SETSCREWS, screws.size).hold ?? Number.NaN,
    diameter: seat.diameter,
    screws: screws.count,
  };
  const output = setscrewHold.run(input);
  const origins = {
    hold: `setscrews/${screws.size}`,
    diameter: `${seat.address}/diameter`,
    screws: `${hub.address}/screws/count`,
  };
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
    () => `The setscrews slip at ${show('torque', output.torque)}, and ${show('torque', torque)} is asked.`,
    () => [{ method: setscrewHold, input, output, origins }],
  );
}

const ELECTRODE = rowInSi(HUB_LIMITS, 'weld-metal').tensile ?? Number.NaN;

function byWeld(found: Jointed, torque: number, load: CaseLoads, { at, show }: Scene): Outcome {
  const { hub, seat, shaft } = found;
  const { weld } = hub;
  if (!weld) return unknown({ address: `${hub.address}/weld`, says: `the leg of the weld of ${seat.name}` });
  if (seat.diameter === null)
    return unknown({ address: `${seat.address}/diameter`, says: `the diameter of the weld of ${seat.name}` });
  const shear = pushAcross(found, load);
  const input = { torque, bending: 0, shear, diameter: seat.diameter, leg: weld.leg, welds: weld.count };
  const output = weldRing.run(input);
  const base = {
    electrode: ELECTRODE,
    tensile: Math.min(at(hub.metal.tensile), at(shaft.steel.tensile)),
    yielding: Math.min(at(hub.metal.yield), at(shaft.steel.yield)),
  };
  const allowed = weldAllowed.run(base);
  const governs = allowed.base < allowed.weld ? 'base metal' : 'weld metal';
  return worstOf(
    [
      {
        name: 'weld',
        demand: pressure('stress in the throat', output.stress),
        capacity: pressure('allowed', allowed.allowed),
        uses: [hub.metal.tensile, hub.metal.yield, shaft.steel.tensile, shaft.steel.yield],
        origins: { capacity: 'above', demand: 'above' },
      },
    ],
    () =>
      `The weld passes ${show('torque', torque)} and ${show('force', shear)} across: ${show('pressure', output.stress)} in its throat; ${show('pressure', allowed.allowed)} is allowed, and the ${governs} governs.`,
    () => [
      {
        method: weldRing,
        input,
        output,
        origins: {
          torque: THROUGH,
          bending: 'taken by the shaft',
          shear: 'what the part brings under this case',
          diameter: `${seat.address}/diameter`,
          leg: `${hub.address}/weld/leg`,
          welds: `${hub.address}/weld/count`,
        },
      },
      {
        method: weldAllowed,
        input: base,
        output: allowed,
        origins: {
          electrode: 'hub-limits/weld-metal',
          tensile: 'the weaker of hub and shaft',
          yielding: 'the weaker of hub and shaft',
        },
      },
    ],
  );
}

/** What passes the torque of a seat holds under every case, the rare ones too. */
export const hubTorque: Check = {
  id: 'hub.torque',
  title: 'torque through the seat',
  consequence: 'loses drive',
  wanted: { reserve: 1.2, from: 'stated default of this project: peaks are known to a fifth' },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: seatsWith(({ torqueBy }) => torqueBy !== 'one piece with the shaft'),
  demand: ({ model }, subject, load) => {
    const found = torqueSeatOf(model, subject);
    if (!found || found.hub.torqueBy === 'press fit' || found.hub.torqueBy === 'weld') return null;
    const torque = torqueThrough(found, load);
    if (torque < NOTHING) return null;
    return found.hub.torqueBy === 'bolted flange' ? hardestBolt(found, torque, load) : torque;
  },
  run: (scene, subject, load) => {
    const found = torqueSeatOf(scene.model, subject);
    if (!found || !load || impossible(found.hub, found.seat, scene.show)) return null;
    const torque = torqueThrough(found, load);
    // A pressed hub slides along its shaft as well.
    if (found.hub.torqueBy === 'press fit') return pressPasses(found, torque, load, scene);
    if (torque < NOTHING) return null;
    switch (found.hub.torqueBy) {
      case 'key':
      case 'spline':
        return onFlanks(found, torque, scene);
      case 'taper':
        return taperPasses(found, torque, scene);
      case 'setscrews':
        return bySetscrews(found, torque, scene);
      case 'bolted flange':
        return flangePasses(found, torque, load, scene);
      case 'weld':
        return byWeld(found, torque, load, scene);
      case 'one piece with the shaft':
        return null;
    }
  },
};
