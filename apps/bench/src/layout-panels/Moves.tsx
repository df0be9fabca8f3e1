import type { ShaftMove } from '@oddwheel/build/assess/adjusters/types';
import { type JSX, memo, useId, useState } from 'react';
import { show, shownText } from '../numbers/shown.ts';
import { Panel } from './Panel.tsx';

const WAYS = { x: 'forward', y: 'to the left', z: 'up' } as const;

/** What else has to move when one shaft is shifted whole. */
export const MovesPanel = memo(function MovesPanel(props: {
  moves: readonly ShaftMove[];
  units: Readonly<Record<string, string>>;
  onReveal: (address: string) => void;
}): JSX.Element | null {
  const { moves, units, onReveal } = props;
  const shafts = [...new Map(moves.map((move) => [move.shaft, move.name])).entries()];
  const [chosen, setChosen] = useState<string | null>(null);
  const id = useId();
  const shaft = shafts.some(([address]) => address === chosen) ? chosen : (shafts[0]?.[0] ?? null);
  if (shaft === null) return null;
  return (
    <Panel name="When a shaft is moved">
      <p className="lead">
        The others stay where they are.{' '}
        <label htmlFor={id} className="moved">
          Shaft to move
        </label>{' '}
        <select id={id} className="choice" value={shaft} onChange={(event) => setChosen(event.target.value)}>
          {shafts.map(([address, name]) => (
            <option key={address} value={address}>
              {name}
            </option>
          ))}
        </select>
      </p>
      <dl className="moves-list">
        {moves
          .filter((move) => move.shaft === shaft)
          .map((move) => (
            <div key={move.axis}>
              <dt>
                {shownText(show({ value: move.by, lo: move.by, hi: move.by }, 'length', units, 3))} {WAYS[move.axis]}
              </dt>
              {move.upsets.length === 0 && <dd className="lead">upsets nothing.</dd>}
              {move.upsets.map((upset) => (
                <dd key={upset.address + upset.what}>
                  {upset.text}{' '}
                  <button type="button" className="link" onClick={() => onReveal(upset.takenUpBy ?? upset.follow)}>
                    {upset.takenUpBy === null ? 'Shaft' : 'Adjuster'}
                    <span className="hidden-name"> for {upset.name}</span>
                  </button>
                </dd>
              ))}
            </div>
          ))}
      </dl>
    </Panel>
  );
});
