import { readReadings } from '@oddwheel/build/true/readings-text';
import type { DialReading } from '@oddwheel/build/true/types';
import { type JSX, useId, useState } from 'react';

/** A box for readings from elsewhere: the content of a CSV file, or a row of numbers. */
export function PasteReadings({ onTake }: { onTake: (readings: readonly DialReading[]) => void }): JSX.Element {
  const id = useId();
  const [text, setText] = useState('');
  const read = text.trim() === '' ? null : readReadings(text);
  return (
    <details className="paste">
      <summary>Paste readings</summary>
      <label htmlFor={id} className="note">
        One a line, mark in degrees and dial: 90, 4.5. Or the dial alone, at equal marks from 12 o’clock, clockwise. 4
        to 72 of them.
      </label>
      <textarea id={id} rows={6} value={text} onChange={(event) => setText(event.target.value)} />
      {read && !read.ok && (
        <p className="fails" role="alert">
          Line {read.faults[0]?.line}: {read.faults[0]?.problem} Read: {read.faults[0]?.read}. Accepted:{' '}
          {read.faults[0]?.accepted}.
        </p>
      )}
      <button type="button" className="button" disabled={!read?.ok} onClick={() => read?.ok && onTake(read.readings)}>
        {read?.ok ? `Read these ${read.readings.length}` : 'Read these'}
      </button>
    </details>
  );
}
