import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';
import { type JSX, useEffect, useState } from 'react';
import { LayoutPanels } from '../layout-panels/LayoutPanels.tsx';
import type { ScreenProps } from '../steps/screen.ts';
import './layout.css';

const DEGREE = Math.PI / 180;
/** Clearances shown before the rest is asked for. */
const FIRST_ROWS = 8;

/** Where everything sits: the drawing to scale, clearances smallest first, and what follows from the layout. */
export function LayoutScreen({ state, actions, model }: ScreenProps): JSX.Element | null {
  const { assessment, hash } = state;
  const [arm, setArm] = useState(0);
  const [drawing, setDrawing] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const stroke = assessment?.stroke ?? null;
  const angle = stroke === null ? 0 : arm * DEGREE;

  // A new hash is a new build: its drawing is another even where the angle is the same.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    model.drawing(angle).then(
      (svg) => {
        if (!wanted) return;
        setDrawing(svg);
        setTrouble(null);
      },
      (why: unknown) => {
        if (wanted) setTrouble(String(why));
      },
    );
    return () => {
      wanted = false;
    };
  }, [model, hash, angle]);

  if (!assessment) return null;
  const ends = stroke?.chains[0]?.places ?? [];
  const [low, high] = [ends[0]?.angle ?? 0, ends.at(-1)?.angle ?? 0];
  return (
    <>
      <section className="layout-drawing" aria-labelledby="layout-heading">
        <h2 id="layout-heading">
          Layout <span className="lead">to scale, in millimetres, third angle</span>
        </h2>
        {trouble !== null && <p className="fails">The drawing could not be made: {trouble}</p>}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing wider than the screen is scrolled with the arrow keys */}
        <section className="layout-views" tabIndex={0} aria-label="Drawing, scrolls sideways">
          {drawing !== null && (
            <img
              alt={`${assessment.name} seen from the left, from above and from behind, with each chain along its shafts. The numbers stand in the lists below.`}
              src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawing)}`}
            />
          )}
        </section>
        {high > low && (
          <label className="arm-angle">
            Swinging arm, {arm === 0 ? 'as drawn' : `${Math.abs(arm)}° ${arm > 0 ? 'up' : 'down'}`}
            <input
              type="range"
              min={Math.ceil(low / DEGREE)}
              max={Math.floor(high / DEGREE)}
              step={1}
              value={arm}
              onChange={(event) => setArm(Number(event.target.value))}
            />
          </label>
        )}
      </section>
      <ClearanceList rows={assessment.clearance.rows} onSelect={actions.reveal} />
      <LayoutPanels state={state} actions={actions} />
    </>
  );
}

function ClearanceList(props: {
  readonly rows: readonly ClearanceRow[];
  readonly onSelect: (address: string) => void;
}): JSX.Element {
  const { rows, onSelect } = props;
  const [all, setAll] = useState(false);
  const shown = all ? rows : rows.slice(0, FIRST_ROWS);
  return (
    <section className="clearances" aria-labelledby="clearances-heading">
      <h2 id="clearances-heading">
        Clearances <span className="lead">smallest first</span>
      </h2>
      {rows.length === 0 ? (
        <p>No two parts stand near each other, or their sizes are not known yet.</p>
      ) : (
        <ol>
          {shown.map((row) => (
            <li key={`${row.first.address} ${row.second.address}`}>
              <button type="button" className="link" onClick={() => onSelect(row.first.address)}>
                {row.first.name} to {row.second.name}
              </button>
              <span className="lead">{row.text}</span>
              <span className="lead">{row.place}</span>
            </li>
          ))}
        </ol>
      )}
      {rows.length > shown.length && (
        <button type="button" className="link" onClick={() => setAll(true)}>
          Show all {rows.length}
        </button>
      )}
    </section>
  );
}
