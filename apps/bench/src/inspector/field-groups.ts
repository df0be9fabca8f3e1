import type { Field } from '@oddwheel/build/session-types';

export interface FieldGroup {
  readonly name: string | null;
  readonly fields: readonly Field[];
}

/** Fields gathered under their group's name, in the order in which each name first comes. */
export function fieldGroups(fields: readonly Field[]): readonly FieldGroup[] {
  const groups = new Map<string | null, Field[]>();
  for (const field of fields) groups.set(field.group, [...(groups.get(field.group) ?? []), field]);
  return [...groups].map(([name, members]) => ({ name, fields: members }));
}
