import { clockText } from './clock.ts';
import { madeOut, type SetMadeOut } from './section.ts';
import type { DrawnSet } from './sheet-types.ts';
import { dialText, withSpread } from './spread.ts';
import type { Kept, TrueSet } from './types.ts';

/** A set of readings as it is drawn; undefined for highest and lowest alone, and for readings that make no section. */
export function drawnSet(kept: Kept<TrueSet>, unit: string): DrawnSet | undefined {
  const found = madeOut(kept);
  const { body } = kept;
  if (!found.ok || !found.set.form || !body.readings) return undefined;
  const { form, section, doubts, warm } = found.set;
  return {
    id: kept.id,
    station: body.station,
    side: body.side ?? '',
    readings: body.readings.map(({ at, value }) => ({ at, value: body.sign === 'in' ? -value : value })),
    unit: body.unit,
    mean: form.mean,
    offset: section.offset,
    high: turn(Math.atan2(section.offset.y, section.offset.x)),
    numbers: numbersOf(found.set, unit),
    doubts: [
      ...doubts,
      ...(warm ? ['The part was warm: the dial shows run-out that is not there.'] : []),
      ...blind(found.set),
    ],
  };
}

const turn = (angle: number): number => (angle < 0 ? angle + 2 * Math.PI : angle);

function numbersOf({ form, section, lobes, face }: SetMadeOut, unit: string): DrawnSet['numbers'] {
  if (!form) return [];
  const text = (value: number) => `${dialText(value, unit)}\u2009${unit}`;
  const off = Math.hypot(section.offset.x, section.offset.y);
  const seen = lobes?.find(({ order }) => order === 2);
  const oval = lobes
    ? seen && seen.sees !== 'blind'
      ? seen.true
      : undefined
    : form.harmonics.find(({ order }) => order === 2);
  return [
    { name: 'TIR, as read', means: 'highest less lowest', value: text(form.tir) },
    face === undefined
      ? {
          name: 'Offset',
          means: `centre off the axis it turned on; makes ${text(2 * off)} of the TIR`,
          value: withSpread(off, 2 * section.spread, unit),
        }
      : { name: 'Out of square', means: 'once a turn, across the face', value: text(2 * off) },
    oval
      ? {
          name: 'Oval',
          means: `longest across ${clockText(oval.high)} and ${clockText(oval.high + Math.PI)}`,
          value: withSpread(2 * oval.amplitude, 4 * oval.spread, unit),
        }
      : {
          name: 'Oval',
          means: lobes ? 'V-blocks of this angle do not show it' : 'takes six marks or more to tell',
          value: 'unknown',
        },
    { name: 'Left over', means: 'dial and hands', value: `± ${text(2 * form.noise)}` },
  ];
}

/** What a V-block hides. */
function blind({ lobes = [] }: SetMadeOut): string[] {
  const hidden = lobes.filter(({ order, sees }) => order > 1 && sees === 'blind').map(({ order }) => order);
  return hidden.length === 0
    ? []
    : [`This V hides forms of ${hidden.join(', ')} lobes: measure in a V of another angle, or in its own bearings.`];
}
