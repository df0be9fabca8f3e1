import type { Assessment } from '@oddwheel/build/assess/types';
import { ownerOf } from '../state/look.ts';

/** What hangs on a column of the path, to be marked at its head. */
export interface Marks {
  readonly notes: number;
  readonly pictures: number;
}

/** Notes and pictures by the column of the path that they stand on, or on something in it. */
export function columnMarks({
  path,
  notes,
  pictures,
}: Pick<Assessment, 'path' | 'notes' | 'pictures'>): ReadonlyMap<string, Marks> {
  const columns = path.map(({ address }) => address);
  const marks = new Map<string, Marks>();
  const count = (of: string, what: keyof Marks): void => {
    const owner = ownerOf(of, columns);
    if (owner === null) return;
    const before = marks.get(owner) ?? { notes: 0, pictures: 0 };
    marks.set(owner, { ...before, [what]: before[what] + 1 });
  };
  for (const of of Object.keys(notes)) count(of, 'notes');
  for (const { of } of pictures) if (of !== null) count(of, 'pictures');
  return marks;
}

/** "note, 2 pictures". */
export function marksWords({ notes, pictures }: Marks): string {
  const said = (count: number, one: string): string => (count === 0 ? '' : count === 1 ? one : `${count} ${one}s`);
  return [said(notes, 'note'), said(pictures, 'picture')].filter((words) => words !== '').join(', ');
}
