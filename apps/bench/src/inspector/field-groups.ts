import type { Field } from '@oddwheel/build/session-types';

export interface FieldGroup {
  readonly name: string | null;
  /** Addresses of what the group is made of; empty at the top of the element. */
  readonly addresses: readonly string[];
  readonly fields: readonly Field[];
}

const lastKey = (address: string): string => address.slice(address.lastIndexOf('/'));

/** Whether a field stands in a group already, as part of another thing of the same name. */
const twice = (group: FieldGroup, field: Field): boolean =>
  group.fields.some(
    (other) => other.groupAddress !== field.groupAddress && lastKey(other.address) === lastKey(field.address),
  );

/**
 * Fields gathered under their group's name, in the order in which each name first comes. Two things of one name, as two
 * bearings of a shaft may be, stay apart.
 */
export function fieldGroups(fields: readonly Field[]): readonly FieldGroup[] {
  const groups: { name: string | null; addresses: string[]; fields: Field[] }[] = [];
  for (const field of fields) {
    const at = field.groupAddress;
    const named = groups.filter(({ name }) => name === field.group);
    const own = named.find(({ addresses }) => at !== null && addresses.includes(at));
    const group = own ?? named.find((one) => !twice(one, field));
    if (!group) groups.push({ name: field.group, addresses: at === null ? [] : [at], fields: [field] });
    else {
      group.fields.push(field);
      if (at !== null && !group.addresses.includes(at)) group.addresses.push(at);
    }
  }
  return groups;
}
