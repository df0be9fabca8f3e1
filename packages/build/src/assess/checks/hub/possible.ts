import type { Hub } from '../../../model/hub.ts';
import type { Seat } from '../../../model/model.ts';
import type { Check, Scene } from '../check.ts';
import { keySize } from './key-size.ts';
import { plainly, seatsWith, torqueSeatOf } from './seats.ts';

type Show = Scene['show'];

function keyFault(hub: Hub, seat: Seat, show: Show): string | null {
  const { key } = hub;
  const size = key && keySize(key, seat);
  if (!key || !size) return null;
  const mm = (x: number) => show('length', x);
  if (size.depth >= size.height)
    return `The slot in the shaft is ${mm(size.depth)} deep and the key only ${mm(size.height)} high: nothing stands in the hub. Take a higher key or a shallower slot.`;
  if (seat.width !== null && key.length > seat.width + 1e-9)
    return `The key is ${mm(key.length)} long in a part that is ${mm(seat.width)} wide. Take a key of ${mm(seat.width)} at most, or a hub as wide as the key.`;
  if (seat.diameter !== null && size.width > seat.diameter / 2)
    return `A key of ${mm(size.width)} is wider than half of the shaft, ${mm(seat.diameter)}: what is left of the shaft is no shaft. Take the key of the standard: leave its width, height and depth blank.`;
  if (seat.diameter !== null && size.depth > seat.diameter / 3)
    return `The slot is ${mm(size.depth)} deep in a shaft of ${mm(seat.diameter)}: what is left of the shaft is no shaft. Take the key of the standard: leave its width, height and depth blank.`;
  if (key.length <= (key.roundEnds * size.width) / 2)
    return `A key of ${mm(key.length)} is shorter than its round ends, ${mm((key.roundEnds * size.width) / 2)}: no straight side is left. Take a longer key or one with square ends.`;
  return null;
}

function splineFault({ spline }: Hub, seat: Seat, show: Show): string | null {
  if (!spline) return null;
  const { outside, inside, length, module, teeth } = spline;
  const mm = (x: number) => show('length', x);
  if (outside !== null && inside !== null && inside >= outside)
    return `The bore of the hub is ${mm(inside)} and the shaft ${mm(outside)} outside: the teeth do not reach each other. Measure both again.`;
  if (seat.width !== null && length > seat.width + 1e-9)
    return `The spline is ${mm(length)} long in a part that is ${mm(seat.width)} wide: no more than that can mesh. Measure both again, or take a wider hub.`;
  if (
    spline.form === 'involute' &&
    module !== null &&
    outside !== null &&
    Math.abs(outside - module * teeth) > 2.5 * module
  )
    return `${teeth} teeth of module ${mm(module)} stand on a pitch diameter of ${mm(module * teeth)}, and the shaft is ${mm(outside)} outside. Count the teeth and measure again.`;
  return null;
}

function taperFault({ taper }: Hub, seat: Seat, show: Show): string | null {
  if (!taper || seat.diameter === null || seat.diameter > taper.length / taper.ratio) return null;
  return `A taper of one in ${show('number', taper.ratio)} from ${show('length', seat.diameter)} comes to a point within ${show('length', taper.length)}.`;
}

function boltsFault({ bolts }: Hub, seat: Seat, show: Show): string | null {
  if (!bolts || seat.diameter === null || bolts.circle > seat.diameter) return null;
  return `The bolt circle is ${show('length', bolts.circle)} and the shaft ${show('length', seat.diameter)}: the bolts would stand in the shaft.`;
}

function pressFault({ press }: Hub, seat: Seat, show: Show): string | null {
  if (!press || seat.diameter === null) return null;
  const mm = (x: number) => show('length', x);
  if (press.outside <= seat.diameter)
    return `The hub is ${mm(press.outside)} outside on a shaft of ${mm(seat.diameter)}: it has no wall. Measure both again.`;
  if (press.bore >= seat.diameter)
    return `The bore is ${mm(press.bore)} in a shaft of ${mm(seat.diameter)}: the shaft has no wall. Measure both again.`;
  if (seat.width !== null && press.length > seat.width + 1e-9)
    return `The press fit is ${mm(press.length)} long in a part that is ${mm(seat.width)} wide: no more than that can press. Measure both again, or take a wider hub.`;
  return null;
}

/** Why a torque joint cannot be made as typed; null where it can. */
export function impossible(hub: Hub, seat: Seat, show: Show): string | null {
  switch (hub.torqueBy) {
    case 'key':
      return keyFault(hub, seat, show);
    case 'spline':
      return splineFault(hub, seat, show);
    case 'taper':
      return taperFault(hub, seat, show);
    case 'bolted flange':
      return boltsFault(hub, seat, show);
    case 'press fit':
      return pressFault(hub, seat, show);
    default:
      return null;
  }
}

/** A torque joint whose sizes contradict each other cannot be made. */
export const hubPossible: Check = {
  id: 'hub.possible',
  title: 'torque joint can be made',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'geometry' },
  atWorst: 'fails',
  perCase: false,
  subjects: seatsWith(({ torqueBy }) => ['key', 'spline', 'taper', 'bolted flange', 'press fit'].includes(torqueBy)),
  run: ({ model, show }, subject) => {
    const found = torqueSeatOf(model, subject);
    const fault = found && impossible(found.hub, found.seat, show);
    return fault ? plainly(false, () => fault) : null;
  },
};
