import { writeLike } from '@oddwheel/build/placing/length-text';
import type { Coordinate, Datum, Placed } from '@oddwheel/build/placing/types';
import { parseInput } from '@oddwheel/quantity/range';

type Axis = 0 | 1 | 2;

/** Words for the two ways along each vehicle axis, as they stand before a datum. */
const WAYS = [
  ['ahead of', 'behind'],
  ['left of', 'right of'],
  ['above', 'below'],
] as const;
const AXIS_NAMES = ['Forward, x', 'Left, y', 'Up, z'] as const;
const ALIGNED = 1 - 1e-9;

/** One length of a place: where it stands along an axis is `offset` and `sign` times what the file says. */
export interface PlaceRow {
  readonly name: string;
  readonly axis: Axis;
  readonly coordinate: Coordinate;
  readonly offset: number;
  readonly sign: 1 | -1;
}

/** The lengths that say where something stands; a seat has one where its shaft lies along an axis. */
export function placeRows(placed: Placed): readonly PlaceRow[] {
  const { points, station } = placed;
  const rows = points.flatMap(({ name, coordinates }) =>
    coordinates.map((coordinate, axis): PlaceRow => {
      const said = AXIS_NAMES[axis] ?? '';
      return { name: name === '' ? said : `${name}: ${said}`, axis: axis as Axis, coordinate, offset: 0, sign: 1 };
    }),
  );
  if (!station) return rows;
  const axis = ([0, 1, 2] as const).find((one) => Math.abs(station.along[one]) > ALIGNED);
  if (axis === undefined) return rows;
  return [
    {
      name: AXIS_NAMES[axis],
      axis,
      coordinate: station.coordinate,
      offset: station.origin[axis],
      sign: station.along[axis] > 0 ? 1 : -1,
    },
  ];
}

/** Below a tenth of a micrometre a place is that of the datum itself. */
const NOTHING = 1e-7;

/** The text of the same length the other way. */
const otherWay = (text: string): string => (/^[-\u2212]/.test(text) ? text.slice(1).trim() : `-${text}`);

/** A row told from one datum. */
export interface DatumCell {
  readonly datum: Datum;
  /** "above the floor". */
  readonly says: string;
  /** 1 forward, left, up; -1 the other way. */
  readonly way: 1 | -1;
  /** How far that way, in the unit that the file has it in; as typed there where the two are the same. */
  readonly text: string;
}

/** A row told from every datum that knows of its axis; the pivot is not told from itself. */
export function datumCells(row: PlaceRow, placed: Placed, datums: readonly Datum[]): readonly DatumCell[] {
  return datums.flatMap((datum): DatumCell[] => {
    const zero = datum.at[row.axis];
    if (zero === null || (datum.id === 'pivot' && placed.kind === 'pivot')) return [];
    const at = row.offset + row.sign * row.coordinate.si - zero;
    const same = zero === 0 && row.offset === 0 && row.sign === 1;
    const way = at < -NOTHING ? -1 : 1;
    const typed = row.coordinate.text.trim();
    return [
      {
        datum,
        way,
        says: `${WAYS[row.axis][way === 1 ? 0 : 1]} ${datum.name}`,
        text: same ? (way === 1 ? typed : otherWay(typed)) : writeLike(Math.abs(at), typed),
      },
    ];
  });
}

/** What was typed for a row from a datum, as the length for the file; or what is wrong with it. */
export type TypedPlace =
  | { readonly ok: true; readonly text: string; readonly said: string }
  | { readonly ok: false; readonly problem: string };

/** Every word that says a way, longest first, so that "in front of" is not read as less. */
const WAY_WORDS: readonly { readonly word: string; readonly axis: Axis; readonly sign: 1 | -1 }[] = [
  { word: 'in front of', axis: 0, sign: 1 },
  { word: 'ahead of', axis: 0, sign: 1 },
  { word: 'behind', axis: 0, sign: -1 },
  { word: 'right of', axis: 1, sign: -1 },
  { word: 'left of', axis: 1, sign: 1 },
  { word: 'above', axis: 2, sign: 1 },
  { word: 'below', axis: 2, sign: -1 },
];

/**
 * Reads a position told from a datum: "212 mm above the floor", "38 mm below", or a bare length, which goes the way that the field says. The file keeps the text as typed where it is
 * counted from the same place, else the length in the unit that was typed.
 */
export function typedPlace(
  typed: string,
  row: PlaceRow,
  { datum, way: told }: Pick<DatumCell, 'datum' | 'way'>,
): TypedPlace {
  const plain = typed.trim().replace(/\s+/g, ' ');
  const found = WAY_WORDS.map((way) => ({ ...way, at: plain.toLowerCase().indexOf(` ${way.word}`) })).find(
    ({ at }) => at > 0,
  );
  const [forward, back] = WAYS[row.axis];
  if (found && found.axis !== row.axis)
    return {
      ok: false,
      problem: `“${found.word}” is another direction. Here a length ${forward} or ${back} ${datum.name} is wanted.`,
    };
  const length = found ? plain.slice(0, found.at) : plain;
  const parsed = parseInput(length, 'length');
  if (!parsed.ok) return { ok: false, problem: `${parsed.problem} Write, for example, 212 mm or 8 3/8 in.` };
  if (parsed.isRange)
    return { ok: false, problem: 'A position is one length, not a range. Write, for example, 212 mm.' };
  const zero = datum.at[row.axis] ?? 0;
  const way = found?.sign ?? told;
  const said = `${length} ${way === 1 ? forward : back} ${datum.name}`;
  if (zero === 0 && row.offset === 0 && row.sign === 1)
    return { ok: true, text: way === 1 ? length : otherWay(length), said };
  return { ok: true, text: writeLike((zero + way * parsed.si - row.offset) * row.sign, length), said };
}
