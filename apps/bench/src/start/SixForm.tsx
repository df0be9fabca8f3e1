import type { BeginResult, FieldFault, SixKey } from '@oddwheel/build/begin/types';
import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useEffect, useId, useRef, useState } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import { UnitTaps } from '../inspector/UnitTaps.tsx';
import { digits } from '../numbers/shown.ts';
import { latestWins } from '../worker/latest.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { isWhole, NOTHING_TYPED, SIX, type SixBox, type Typed } from './six.ts';

interface Props {
  readonly model: RemoteModel;
  /** Makes the build from its text; gives what is wrong with it. */
  readonly onBegin: (text: string) => Promise<readonly Fault[]>;
}

/** Pause in typing after which the model is asked, ms. */
const PAUSE = 250;

/** Six fields, the reduction that they ask for while they are typed, and a first laid-out build of them. */
export function SixForm({ model, onBegin }: Props): JSX.Element {
  const [typed, setTyped] = useState<Typed>(NOTHING_TYPED);
  const [left, setLeft] = useState<ReadonlySet<SixKey>>(new Set());
  const [result, setResult] = useState<BeginResult | null>(null);
  const [asked, setAsked] = useState(false);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const ask = useRef(
    latestWins<Typed>(
      async (six) => setResult(await model.begin(six)),
      () => setResult(null),
    ),
  );
  useEffect(() => {
    if (!isWhole(typed) && !asked) {
      setResult(null);
      return;
    }
    const timer = setTimeout(() => ask.current(typed), PAUSE);
    return () => clearTimeout(timer);
  }, [typed, asked]);

  const put = (key: SixKey, text: string | null): void => setTyped((before) => ({ ...before, [key]: text }));
  const wrong = (key: SixKey): FieldFault | null =>
    result && !result.ok && (asked || left.has(key))
      ? (result.faults.find(({ field }) => field === key) ?? null)
      : null;
  const layOut = async (): Promise<void> => {
    setAsked(true);
    const made = await model.begin(typed);
    setResult(made);
    if (made.ok) setFaults(await onBegin(made.text));
    else document.getElementById(boxId(made.faults[0]?.field ?? 'power'))?.focus();
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
      <h3 id="six-heading">Six fields</h3>
      <p className="lead">
        Two chains and a bevel pair are laid out from these. All that they leave open is taken from what is usual,
        marked as such, and listed by how much hangs on it.
      </p>
      <div className="six-rows">
        {SIX.map(({ title, boxes }) => (
          <fieldset key={title}>
            <legend>{title}</legend>
            {boxes.map((box) => (
              <Box
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
      <p className="six-answer" aria-live="polite">
        {result?.ok ? (
          <>
            Overall reduction in top gear <b>{digits(result.overall, 2)} : 1</b>, as {result.train}.
          </>
        ) : (
          <span className="lead">The overall reduction stands here once all six are typed.</span>
        )}
      </p>
      {result?.ok && <Stands result={result} />}
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
    </form>
  );
}

/** What the layout chose, and what it stands on that nobody typed, most of it first. */
function Stands({ result }: { result: Extract<BeginResult, { readonly ok: true }> }): JSX.Element {
  const { choices, assumptions } = result;
  return (
    <details className="stands">
      <summary>
        {choices.length} parts chosen, {assumptions.length} values taken from what is usual
      </summary>
      <ul className="plain-list">
        {choices.map((choice) => (
          <li key={choice.what}>
            <b>{choice.what}</b> {choice.chosen} <span className="lead">{choice.why}</span>
          </li>
        ))}
      </ul>
      <p className="lead">
        Taken from what is usual, by how many findings hang on it. Each can be typed later, where it stands.
      </p>
      <ol className="plain-list">
        {assumptions.map((one) => (
          <li key={one.address}>
            <b>{one.name}</b> {one.text}{' '}
            <span className="lead">
              {one.why}
              {one.findings > 0 && ` ${one.findings} ${one.findings === 1 ? 'finding hangs' : 'findings hang'} on it.`}
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}

const boxId = (key: SixKey): string => `six-${key}`;

function Box(props: {
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
    <div className="field">
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
        onBlur={onLeave}
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
        ) : (
          (text ?? '').trim() === '' && (
            <p>{unknown ? 'ranges that are usual stand in' : `for example ${box.example}`}</p>
          )
        )}
      </div>
    </div>
  );
}
