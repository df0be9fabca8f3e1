import { frontLift } from '@oddwheel/mechanics/vehicle/front-lift';
import { gripLimit } from '@oddwheel/mechanics/vehicle/grip-limit';
import { sidewaysLimit } from '@oddwheel/mechanics/vehicle/sideways-limit';
import type { Missing } from '../types.ts';
import { GRAVITY, type Ground, ladenMass, NEEDS, type Stand, standOf } from './ground.ts';
import { attempt, lacks, refused } from './tried.ts';

const OFF_BALANCE = 'The centre of mass does not lie between the axles.';

/** Where the mass sits over the wheels; the centre lies where the standing load of the driven axle puts it. */
function balanceOf(ground: Ground) {
  const { at, model } = ground;
  const { contact, wheelbase, drivenLoad, centreHeight } = model.vehicle;
  const mass = ladenMass(ground);
  const missing: Missing[] = [
    ...(contact ? [] : [NEEDS.contact]),
    ...(wheelbase ? [] : [NEEDS.wheelbase]),
    ...(drivenLoad ? [] : [NEEDS.drivenLoad]),
    ...(centreHeight ? [] : [NEEDS.centreHeight]),
  ];
  if (!contact || !wheelbase || !drivenLoad || !centreHeight) return lacks(...missing);
  const part = at(drivenLoad) / mass;
  if (part >= 1)
    return refused('The driven axle is said to carry all of the laden mass or more; weigh axle and vehicle again.');
  const stand = standOf(contact);
  const base = at(wheelbase);
  return {
    ok: true,
    stand,
    input: {
      mass,
      wheelbase: base,
      aheadOfRear: base * (stand.driven === 'rear' ? 1 - part : part),
      height: at(centreHeight),
      gravity: GRAVITY,
    },
  } as const;
}

/** Greatest pull that the tyre passes on at a slope; both wheels of a driven pair are taken to pull alike. */
export function gripAt(ground: Ground, slope: number) {
  const balance = balanceOf(ground);
  if (!balance.ok) return balance;
  return attempt(
    gripLimit.run,
    {
      ...balance.input,
      slope,
      drivenAxle: balance.stand.driven,
      share: 1,
      friction: ground.at(ground.model.vehicle.friction),
    },
    OFF_BALANCE,
  );
}

/** Pull that lifts the front; null for front drive, which lifts nothing. */
export function liftOf(ground: Ground) {
  const balance = balanceOf(ground);
  if (!balance.ok) return balance;
  if (balance.stand.driven === 'front') return null;
  return attempt(frontLift.run, { ...balance.input, slope: 0, drag: 0, dragHeight: 0, acceleration: 0 }, OFF_BALANCE);
}

/** How far the centre of mass lies from the axle that counts: that of a single wheel of three, of four the front one. */
function fromSingle(stand: Stand, wheelbase: number, aheadOfRear: number): number {
  return stand.single === 'rear' ? aheadOfRear : wheelbase - aheadOfRear;
}

/** Sideways acceleration that lifts a wheel; null for two wheels, and for front drive, whose wheels the build does not count. */
export function sidewaysOf(ground: Ground) {
  const { at, model } = ground;
  const { track, contact } = model.vehicle;
  const wheels = contact ? standOf(contact).wheels : null;
  if (contact && (wheels === null || wheels === 2)) return null;
  const balance = balanceOf(ground);
  if (!balance.ok) return track ? balance : { ...balance, missing: [...balance.missing, NEEDS.track] };
  if (!track) return lacks(NEEDS.track);
  const { wheelbase, aheadOfRear, height } = balance.input;
  return attempt(
    sidewaysLimit.run,
    {
      wheels: wheels ?? 3,
      wheelbase,
      track: at(track),
      fromSingle: fromSingle(balance.stand, wheelbase, aheadOfRear),
      height,
      gravity: GRAVITY,
    },
    OFF_BALANCE,
  );
}
