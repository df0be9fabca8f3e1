import type { Structure } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, useRef, useState } from 'react';
import { AddForm } from './AddForm.tsx';
import { addingOf } from './adding.ts';
import { FieldEditor } from './FieldEditor.tsx';
import { type FieldGroup, fieldGroups } from './field-groups.ts';
import type { StructureTools } from './structure-tools.ts';
import { TakeOut } from './TakeOut.tsx';

interface Props {
  readonly fields: readonly Field[];
  readonly structure: Structure;
  readonly tools: StructureTools;
  readonly locked: string | null;
  readonly onCommit: (address: string, typed: string | null) => Promise<Fault | null>;
}

/** The fields of an element in their groups; rows, entries and groups are added and taken out where they stand. */
export function FieldGroups({ fields, ...shared }: Props): JSX.Element {
  return (
    <>
      {fieldGroups(fields).map((group) => (
        <Group key={`${group.name} ${group.addresses[0]}`} group={group} {...shared} />
      ))}
    </>
  );
}

function Group({
  group,
  structure,
  tools,
  locked,
  onCommit,
}: Omit<Props, 'fields'> & { group: FieldGroup }): JSX.Element {
  const removal = structure.removals.find(({ at }) => group.addresses.includes(at));
  const addition = structure.additions.find(({ at, sort }) => group.addresses.includes(at) && sort === 'row');
  const [open, setOpen] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    setOpen(false);
    opener.current?.focus();
  };
  return (
    <fieldset className="field-group">
      {group.name !== null && <legend>{group.name}</legend>}
      <div className="fields">
        {group.fields.map((field) => (
          <div key={field.address} className="field-place">
            <FieldEditor field={field} locked={locked} onCommit={onCommit} />
            {field.row && <TakeOut at={field.address} name={field.name} seen="words" tools={tools} locked={locked} />}
          </div>
        ))}
      </div>
      {addition && (
        <button
          ref={opener}
          type="button"
          className="link"
          aria-expanded={open}
          disabled={locked !== null}
          onClick={() => setOpen(!open)}
        >
          Add {addition.name.toLowerCase()}
        </button>
      )}
      {addition && open && (
        <AddForm adding={addingOf(addition)} tools={tools} locked={locked} takesFocus onClose={close} />
      )}
      {removal && <TakeOut at={removal.at} name={removal.name} tools={tools} locked={locked} />}
    </fieldset>
  );
}
