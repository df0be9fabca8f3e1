import type { BeginResult, FieldFault, SixKey, SoFar } from '@oddwheel/build/begin/types';
import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useEffect, useRef, useState } from 'react';
import { latestWins } from '../worker/latest.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { SixAnswer } from './SixAnswer.tsx';
import { boxId, SixField } from './SixField.tsx';
import { isWhole, NOTHING_TYPED, SIX, type Typed } from './six.ts';

interface Props {
  readonly model: RemoteModel;
  /** Makes the build from its text; gives what is wrong with it. */
  readonly onBegin: (text: string) => Promise<readonly Fault[]>;
}

/** Pause in typing after which the first layout is tried, ms. */
const PAUSE = 250;
const NOTHING_KNOWN: SoFar = { faults: [], overall: null, path: null };

/** Six fields, the reduction that they ask for while they are typed, and a first laid-out build of them. */
export function SixForm({ model, onBegin }: Props): JSX.Element {
  const [typed, setTyped] = useState<Typed>(NOTHING_TYPED);
  const [left, setLeft] = useState<ReadonlySet<SixKey>>(new Set());
  const [known, setKnown] = useState<SoFar>(NOTHING_KNOWN);
  /** The layout of what is typed now; null while it is not whole or not tried yet. */
  const [result, setResult] = useState<BeginResult | null>(null);
  const [asked, setAsked] = useState(false);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const askKnown = useRef(
    latestWins<Typed>(
      async (six) => setKnown(await model.soFar(six)),
      () => setKnown(NOTHING_KNOWN),
    ),
  );
  const askLayout = useRef(
    latestWins<Typed>(
      async (six) => setResult(await model.begin(six)),
      () => setResult(null),
    ),
  );
  const put = (key: SixKey, text: string | null): void => {
    const next = { ...typed, [key]: text };
    setTyped(next);
    setResult(null);
    askKnown.current(next);
  };
  useEffect(() => {
    if (!isWhole(typed) && !asked) return;
    const timer = setTimeout(() => askLayout.current(typed), PAUSE);
    return () => clearTimeout(timer);
  }, [typed, asked]);

  const wrong = (key: SixKey): FieldFault | null => {
    const here = ({ field }: FieldFault): boolean => field === key;
    if (result && !result.ok && (asked || isWhole(typed))) return result.faults.find(here) ?? null;
    return left.has(key) ? (known.faults.find(here) ?? null) : null;
  };
  const busy = useRef(false);
  const layOut = async (): Promise<void> => {
    setAsked(true);
    if (busy.current) return;
    busy.current = true;
    const made = result?.ok ? result : await model.begin(typed);
    setResult(made);
    if (made.ok) setFaults(await onBegin(made.text));
    busy.current = false;
    if (!made.ok) document.getElementById(boxId(made.faults[0]?.field ?? 'power'))?.focus();
  };

  return (
    <form
      className="six"
      aria-labelledby="six-heading"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void layOut();
      }}
    >
      <h3 id="six-heading">Begin with six fields</h3>
      <p className="lead">
        Two chains and a bevel pair are laid out from these. All that they leave open is taken from what is usual,
        marked as such, and listed by how much hangs on it.
      </p>
      <div className="six-rows">
        {SIX.map(({ title, boxes }) => (
          <fieldset key={title}>
            <legend>{title}</legend>
            {boxes.map((box) => (
              <SixField
                key={box.key}
                box={box}
                text={typed[box.key]}
                fault={wrong(box.key)}
                onText={(text) => put(box.key, text)}
                onLeave={() => setLeft((before) => new Set([...before, box.key]))}
              />
            ))}
          </fieldset>
        ))}
      </div>
      <SixAnswer typed={typed} known={known} result={result} />
      <p>
        <button type="submit" className="button">
          Lay it out
        </button>
      </p>
      {faults.map((fault) => (
        <p key={fault.address} role="alert" className="fails">
          {fault.address} {fault.problem}
        </p>
      ))}
      {result?.ok && (
        <section className="list" aria-labelledby="choices-heading">
          <h3 id="choices-heading">What would be laid out</h3>
          <ul className="plain-list choices">
            {result.choices.map((choice) => (
              <li key={choice.what}>
                <b>{choice.what}</b>
                <span>
                  {choice.chosen}
                  <span className="note">{choice.why}</span>
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </form>
  );
}
