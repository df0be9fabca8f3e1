import type { Addition, Answers, EditRequest, Structure } from '@oddwheel/build/edit/types';

/** Something to add, as the builder chose it. */
export interface Adding {
  /** Stands for this choice on the page. */
  readonly key: string;
  /** "Idler", "Stage before it". */
  readonly name: string;
  /** Where its form is asked for. */
  readonly at: string;
  /** Kinds to choose from; null where there is only one. */
  readonly kinds: readonly string[] | null;
  readonly request: (kind: string | null, answers: Answers) => EditRequest;
}

/** A group, an entry or a row. */
export const addingOf = ({ at, name, kinds }: Addition): Adding => ({
  key: at,
  name,
  at,
  kinds,
  request: (kind, answers) => ({ do: 'add', at, kind, answers }),
});

/** A design reserve of the builder's own for a finding. */
export const ownReserve = (finding: string): Adding => ({
  key: finding,
  name: 'Design reserve of your own',
  at: '/overrides',
  kinds: null,
  request: (kind, answers) => ({ do: 'add', at: '/overrides', kind, id: finding, answers }),
});

/** A stage before and one after a stage. */
function stagesBeside({ id, kinds }: NonNullable<Structure['stage']>): readonly Adding[] {
  return (['before', 'after'] as const).map((side) => ({
    key: `stage ${side}`,
    name: side === 'before' ? 'Stage before it, toward the engine' : 'Stage after it, toward the wheel',
    at: '/path/stages',
    kinds,
    request: (kind, answers) => ({ do: 'insert stage', stage: id, side, kind: kind ?? '', answers }),
  }));
}

/**
 * What can be added to an element, in the order of the file, then stages beside it. A reserve of the builder's own is added
 * at its check.
 *
 * @param inPlace addresses of lists that have their own place for a new row
 */
export function addings(structure: Structure, inPlace: ReadonlySet<string>): readonly Adding[] {
  return [
    ...structure.additions
      .filter(({ at }) => at !== '/overrides' && at !== '/pictures' && !inPlace.has(at))
      .map(addingOf),
    ...(structure.stage ? stagesBeside(structure.stage) : []),
  ];
}
