import type { Field } from '@oddwheel/build/session-types';
import type { JSX } from 'react';

/** The words that a field takes, each by its own name where it has one; one that the file has and the list has not stays. */
export function Choices({ field, blank }: { readonly field: Field; readonly blank: string | null }): JSX.Element {
  const choices = field.choices ?? [];
  return (
    <>
      {blank !== null && <option value="">{blank}</option>}
      {field.text !== null && !choices.includes(field.text) && <option value={field.text}>{field.text}</option>}
      {choices.map((choice, index) => (
        <option key={choice} value={choice}>
          {field.choiceNames?.[index] ?? choice}
        </option>
      ))}
    </>
  );
}
