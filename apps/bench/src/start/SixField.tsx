import type { FieldFault, SixKey } from '@oddwheel/build/begin/types';
import { type JSX, useId } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import { UnitTaps } from '../inspector/UnitTaps.tsx';
import type { SixBox } from './six.ts';

/** Id of a box, by which it gets the focus. */
export const boxId = (key: SixKey): string => `six-${key}`;

/** One box of the six fields, with its units to tap; the gearbox can be told unknown. */
export function SixField(props: {
  box: SixBox;
  text: string | null;
  fault: FieldFault | null;
  onText: (text: string | null) => void;
  onLeave: () => void;
}): JSX.Element {
  const { box, text, fault, onText, onLeave } = props;
  const notes = useId();
  const unknown = text === null;
  return (
    <div className={box.key === 'gears' ? 'field six-wide' : 'field'}>
      <label htmlFor={boxId(box.key)}>{box.name}</label>
      <input
        id={boxId(box.key)}
        type="text"
        className={fault ? 'wrong' : ''}
        aria-invalid={fault !== null}
        aria-describedby={notes}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        disabled={unknown}
        value={text ?? ''}
        onChange={(event) => onText(event.target.value)}
        onBlur={(event) => {
          // On the way from the number to its unit, the field is not left yet.
          if (!event.currentTarget.parentElement?.contains(event.relatedTarget)) onLeave();
        }}
      />
      {box.kind !== null && (
        <UnitTaps
          name={box.name}
          kind={box.kind}
          text={text ?? ''}
          disabled={(text ?? '').trim() === ''}
          onText={onText}
        />
      )}
      {box.key === 'gears' && (
        <label className="tick">
          <input type="checkbox" checked={unknown} onChange={(event) => onText(event.target.checked ? null : '')} />{' '}
          don’t know
        </label>
      )}
      <div id={notes} className="field-notes">
        {fault ? (
          <p className="fails" role="alert">
            {faultSentence(fault, box.name)}
          </p>
        ) : unknown ? (
          <p>ranges that are usual stand in</p>
        ) : (
          text.trim() === '' && <p>for example {box.example}</p>
        )}
      </div>
    </div>
  );
}
