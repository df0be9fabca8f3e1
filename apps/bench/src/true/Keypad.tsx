import { type JSX, useState } from 'react';
import { keepChoice, keptChoice } from '../state/device.ts';

const KEYS = [...['7', '8', '9', 'back'], ...['4', '5', '6', 'sign'], ...['1', '2', '3', '½'], ...['0', '.']];
const NAMES: Readonly<Record<string, string>> = {
  back: 'Take the last figure back',
  sign: 'Plus or minus',
  '½': 'And a half',
  '.': 'Point',
};
const SHOWN: Readonly<Record<string, string>> = { sign: '±' };

interface Props {
  readonly onKey: (key: string) => void;
  readonly next: string;
  readonly onNext: () => void;
}

/** Keys for a thumb; the last one goes on. */
export function Keypad({ onKey, next, onNext }: Props): JSX.Element {
  const [left, setLeft] = useState(keptChoice('thumb') === 'left');
  const turn = (): void => {
    keepChoice('thumb', left ? 'right' : 'left');
    setLeft(!left);
  };
  return (
    <>
      <fieldset className="keypad" data-thumb={left ? 'left' : 'right'}>
        <legend className="hidden-name">Keypad</legend>
        {KEYS.map((key) => (
          <button key={key} type="button" className="key" aria-label={NAMES[key] ?? key} onClick={() => onKey(key)}>
            {key === 'back' ? <BackShape /> : (SHOWN[key] ?? key)}
          </button>
        ))}
        <button type="button" className="key key-next" onClick={onNext}>
          {next}
        </button>
      </fieldset>
      <button type="button" className="link thumb" aria-pressed={left} onClick={turn}>
        Keys for the left thumb
      </button>
    </>
  );
}

function BackShape(): JSX.Element {
  return (
    <svg width="26" height="20" viewBox="0 0 26 20" aria-hidden="true">
      <path d="M8 2H24V18H8L1.5 10ZM12 6.5l7 7m0-7-7 7" fill="none" stroke="currentColor" strokeWidth="1.7" />
    </svg>
  );
}
