import { type Lasting, lifeOf } from '../../strength/bearing-life.ts';
import { dutyBearings } from '../../strength/duty-bearings.ts';
import type { Missing } from '../../types.ts';
import type { Check } from '../check.ts';
import { measured } from '../measured.ts';
import { type BearingAt, bearingSubjects, notSaid, onBearing } from './bearings.ts';
import { shaftUses } from './shafts.ts';

/** Sizes and ratings of a bearing as its life asks for them, or the size that is missing. */
export function lastingOf({ seat, fitted, facts }: BearingAt): Lasting | Missing {
  const bore = facts.bore ?? seat.diameter;
  const outside = facts.outside ?? seat.outside;
  if (bore === null) return { address: `${seat.address}/diameter`, says: `the bore of ${seat.name}` };
  if (outside === null) return { address: `${seat.address}/outside`, says: `the outside diameter of ${seat.name}` };
  return { address: seat.address, facts, clearance: fitted.clearance, seal: fitted.seal, bore, outside };
}

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** The bearing lasts the distance that the brief asks for, driven as the duty says. */
export const bearingLasts: Check = {
  id: 'bearing.life',
  title: 'life of the bearing',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'the reliability asked for is in the life' },
  atWorst: 'fails',
  perCase: false,
  onRoad: true,
  subjects: bearingSubjects,
  run: onBearing((at, scene) => {
    const { k, b, facts, structure, name } = at;
    const { loads } = scene.model;
    const lasting = lastingOf(at);
    if (!('facts' in lasting)) return { kind: 'unknown', missing: [lasting] };
    const duty = scene.duty();
    if (!duty.ok) return { kind: 'unknown', missing: duty.missing };
    const carried = dutyBearings(scene, duty, k);
    if (!carried.ok) return { kind: 'unknown', missing: carried.missing };
    const uses = [...duty.uses, loads.oil, ...shaftUses(structure)];
    const { bins } = carried;
    const life = lifeOf(lasting, { duty, k, b, bins, loads, oil: scene.at(loads.oil) });
    if (!life)
      return {
        kind: 'plain',
        holds: true,
        says: () => `${name} carries next to nothing over your duty.`,
        uses,
        used: () => [],
      };
    const { worst, distance } = life;
    const { show } = scene;
    // A duty that nobody typed cannot wear a bearing out, but one that outlasts it is settled.
    if (duty.from === 'usual' && distance < duty.distance) {
      const says = `how it is driven (by a usual spectrum ${lower(name)} lasts ${show('distance', distance)}, and ${show('distance', duty.distance)} are wanted)`;
      return { kind: 'unknown', missing: [{ address: '/brief/duty/rows', says }] };
    }
    const said = bins.every((bin) => bin.said);
    // Where it is open which bearing takes the push, each counts with it all: enough even so is enough.
    const open = said || distance >= duty.distance ? [] : notSaid(structure);
    if (open.length > 0) return { kind: 'unknown', missing: open };
    return measured(
      { name: 'wanted', value: duty.distance, kind: 'length', use: 'distance' },
      { name: 'life', value: distance, kind: 'length', use: 'distance' },
      () =>
        [
          `${name} lasts ${show('distance', distance)} of your duty; you want ${show('distance', duty.distance)}.`,
          `It wears most with ${show('force', worst.load)} on it in “${worst.bin.point.name}”.`,
          ...(worst.load > facts.dynamic / 2
            ? ['That is more than half its rating, where the sums of its life no longer hold: take it as overloaded.']
            : []),
          ...(said ? [] : ['Which bearing takes the push along the shaft is not said, so each counts with all of it.']),
        ].join(' '),
      uses,
      life.used,
      { capacity: 'above', demand: '/brief/duty/distance' },
    );
  }),
};
