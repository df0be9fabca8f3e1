import type { Kind } from '@oddwheel/quantity/kinds';
import type { JSX } from 'react';
import { unitTaps, withTappedUnit } from './unit-taps.ts';
import './unit-taps.css';

interface Props {
  /** Name of the field, for the group's accessible name. */
  readonly name: string;
  readonly kind: Kind;
  /** What stands in the field now. */
  readonly text: string;
  /** Units to offer; the usual ones of the kind where left out. */
  readonly units?: readonly string[];
  readonly disabled?: boolean;
  /** Takes the text with the tapped unit. */
  readonly onText: (text: string) => void;
}

/** Units beside a field: type 0.75, tap "in", and the field holds "0.75 in". Nothing where the kind has no unit to choose. */
export function UnitTaps({ name, kind, text, units, disabled = false, onText }: Props): JSX.Element | null {
  const taps = unitTaps(kind, text, units);
  if (taps.length === 0) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its frame round two words inside another fieldset.
    <div className="unit-taps" role="group" aria-label={`Unit of ${name}`}>
      {taps.map(({ unit, label, chosen }) => (
        <button
          key={unit}
          type="button"
          aria-pressed={chosen}
          disabled={disabled}
          // The focus stays in the field: leaving it would commit the number without its unit.
          onPointerDown={(event) => event.preventDefault()}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onText(withTappedUnit(text, unit))}
        >
          {label}
        </button>
      ))}
    </div>
  );
}
