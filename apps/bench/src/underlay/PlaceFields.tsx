import { type JSX, useId } from 'react';
import { AXES, AXIS_NAMES, type KnownPlace, type PlaceText } from './known-places.ts';

interface Props {
  readonly title: string;
  readonly text: PlaceText;
  readonly places: readonly KnownPlace[];
  /** What is wrong with it; empty while nothing is, or nothing is typed yet. */
  readonly says: string;
  /** Index of the length along the line of sight. */
  readonly depth: number;
  readonly onText: (text: PlaceText) => void;
}

/** Where a point of the picture is on the vehicle: a centre of the build, or three lengths. */
export function PlaceFields({ title, text, places, says, depth, onText }: Props): JSX.Element {
  const id = useId();
  const chosen = places.find((one) => one.text.every((length, k) => length === text[k]));
  return (
    <fieldset className="known-place">
      <legend>{title}</legend>
      <div className="field">
        <label htmlFor={`${id}-place`}>Is at</label>
        <select
          id={`${id}-place`}
          value={chosen?.address ?? ''}
          onChange={(event) => {
            const place = places.find(({ address }) => address === event.target.value);
            if (place) onText(place.text);
          }}
        >
          <option value="">the lengths typed here</option>
          {places.map(({ address, name }) => (
            <option key={address} value={address}>
              {name}
            </option>
          ))}
        </select>
      </div>
      {AXES.map((axis, k) => (
        <div key={axis} className="field">
          <label htmlFor={`${id}-${axis}`}>
            {AXIS_NAMES[k]}
            {k === depth && <span className="lead"> (toward the camera)</span>}
          </label>
          <input
            id={`${id}-${axis}`}
            type="text"
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            aria-describedby={`${id}-says`}
            placeholder="for example 212 mm"
            value={text[k]}
            onChange={(event) => {
              const next = text.map((one, n) => (n === k ? event.target.value : one));
              onText([next[0] ?? '', next[1] ?? '', next[2] ?? '']);
            }}
          />
        </div>
      ))}
      <p id={`${id}-says`} className="note fails place-says">
        {says}
      </p>
    </fieldset>
  );
}
