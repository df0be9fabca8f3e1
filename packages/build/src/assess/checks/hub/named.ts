import type { Check } from '../check.ts';
import { perModel } from '../per-model.ts';
import { plainly, seatsWith, seatsWithout, torqueSeatOf, torqueSeats, unknown } from './seats.ts';

/** Every seat that passes torque has a joint that passes it. */
export const hubNamed: Check = {
  id: 'hub.named',
  title: 'what passes the torque',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'a part that nothing turns with its shaft does not drive' },
  atWorst: 'fails',
  perCase: false,
  subjects: seatsWithout,
  run: perModel(({ model }, { address }) => {
    const found = torqueSeats(model).find(({ seat }) => seat.address === address);
    if (!found) return null;
    return unknown({
      address: `${address}/hub`,
      says: `what passes the torque between ${found.seat.name} and ${found.shaft.name}: a key, a spline, a taper, a press fit, setscrews, a bolted flange, a weld, or one piece`,
    });
  }),
};

/** Setscrews slip when the torque turns round, and it does whenever the throttle is closed. */
export const hubAlone: Check = {
  id: 'hub.alone',
  title: 'setscrews as the only torque joint',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: setscrews alone never drive a shaft whose torque turns round' },
  atWorst: 'fails',
  perCase: false,
  subjects: seatsWith(({ torqueBy }) => torqueBy === 'setscrews'),
  run: perModel(({ model }, subject) => {
    const found = torqueSeatOf(model, subject);
    if (!found) return null;
    return plainly(
      false,
      () =>
        'Only setscrews pass the torque, and it turns round whenever the throttle is closed: they work loose. Cut a keyway, or weld or bolt the hub.',
    );
  }),
};

/** A key that slides in its slots is beaten wide by a torque that turns round. */
export const hubFit: Check = {
  id: 'hub.fit',
  title: 'key in its slots',
  consequence: 'wears out',
  wanted: {
    reserve: 1,
    from: 'DIN 6885-1: P9 in both slots where the torque turns round, N9 and JS9 else (from memory)',
  },
  atWorst: 'thin',
  perCase: false,
  subjects: seatsWith(({ torqueBy, key }) => torqueBy === 'key' && key !== null),
  run: perModel(({ model }, subject) => {
    const found = torqueSeatOf(model, subject);
    const fit = found?.hub.key?.fit;
    if (!found || fit === undefined) return null;
    if (fit === null)
      return unknown({
        address: `${found.hub.address}/key/fit`,
        says: `how the key of ${found.seat.name} sits in its slots: slides, light press, or tight`,
      });
    return plainly(fit !== 'slides', () =>
      fit === 'slides'
        ? 'The key slides in its slots. The torque turns round whenever the throttle is closed, and beats the slots wide. Fit it tight.'
        : `The key sits ${fit === 'tight' ? 'tight' : 'with a light press'} in its slots.`,
    );
  }),
};
