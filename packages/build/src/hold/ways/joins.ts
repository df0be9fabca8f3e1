/** Built-up shafts: larger parts of a joint, and what centres and holds it. */
import type { Join } from '../../model/strength.ts';
import { type Ground, type Ladder, ladder, put } from '../ladder.ts';
import { longer } from './fields.ts';

const joinOf = ({ model, finding }: Ground): Join | undefined =>
  model.shafts.flatMap(({ joins }) => joins).find(({ address }) => address === finding.address);

const UP = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.25, 1.5, 2];
const DOWN = [-0.2, -0.4, -0.5, -0.6, -0.7, -0.8, -0.9];

/** Larger parts of what passes the torque. */
export function largerJoint(ground: Ground): readonly Ladder[] {
  const join = joinOf(ground);
  if (!join) return [];
  const weld = join.torqueBy === 'weld';
  const up = (key: 'length' | 'diameter', word: string): readonly Ladder[] =>
    longer(ground, `${join.address}/${key}`, join[key], {
      parts: UP,
      says: (to, from) => `Make the ${word} of ${join.name} ${to} instead of ${from}`,
      effort: 're-cut',
    });
  return [
    ...up('length', weld ? 'leg of the weld' : 'length in mesh'),
    ...up('diameter', weld ? 'weld circle' : 'diameter'),
  ];
}

/** A larger or longer spigot. */
export function largerSpigot(ground: Ground): readonly Ladder[] {
  const join = joinOf(ground);
  const spigot = join?.spigot;
  if (!join || !spigot) return [];
  return (['length', 'diameter'] as const).flatMap((key) =>
    longer(ground, `${join.address}/spigot/${key}`, spigot[key], {
      parts: UP,
      says: (to, from) => `Turn the spigot of ${join.name} with a ${key} of ${to} instead of ${from}`,
      effort: 're-cut',
    }),
  );
}

/** A press fit to centre it; a spigot that is there already with less play. */
export function centred(ground: Ground): readonly Ladder[] {
  const join = joinOf(ground);
  if (!join) return [];
  const play = join.spigot?.play?.si ?? null;
  return [
    ...longer(ground, `${join.address}/spigot/play`, play, {
      parts: DOWN,
      says: (to, from) => `Turn the spigot of ${join.name} with ${to} of play instead of ${from}`,
      effort: 're-cut',
    }),
    ...(join.centredBy === 'press fit'
      ? []
      : ladder('re-cut', [
          {
            what: `Centre ${join.name} by a press fit`,
            patches: [put(ground, `${join.address}/centredBy`, 'press fit')],
            size: 0.2,
          },
        ])),
  ];
}

/** Something that holds it along the shaft. */
export function heldAlong(ground: Ground): readonly Ladder[] {
  const join = joinOf(ground);
  if (join?.axialBy !== 'nothing') return [];
  return (['retaining ring', 'draw bolt'] as const).flatMap((by, k) =>
    ladder('re-cut', [
      {
        what: `Hold ${join.name} along the shaft by a ${by}`,
        patches: [put(ground, `${join.address}/axialBy`, by)],
        size: 0.1 * (k + 1),
      },
    ]),
  );
}
