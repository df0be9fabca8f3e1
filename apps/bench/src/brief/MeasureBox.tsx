import type { Ask, Measure, Measured, Readings } from '@oddwheel/build/measure/types';
import { type JSX, useEffect, useId, useMemo, useState } from 'react';
import { UnitTaps } from '../inspector/UnitTaps.tsx';
import { WorkingSteps } from '../working/WorkingSteps.tsx';
import './measure.css';

interface Props {
  /** What is measured, for the accessible names: "Wheelbase". */
  readonly name: string;
  /** Build and place that the readings belong to. */
  readonly place: string;
  readonly measures: readonly Measure[];
  /** Values of the build that a sum may begin with, by address. */
  readonly given: Readings;
  readonly units: Readonly<Record<string, string>>;
  readonly locked: boolean;
  /** Words of the button that takes the result: "Put … into the field". */
  readonly takes: (text: string) => string;
  readonly run: (measure: string, readings: Readings) => Promise<Measured>;
  /** Takes the result; gives what is wrong with it, or null. */
  readonly onTake: (text: string, says: string, measure: Measure) => Promise<string | null>;
  readonly onReveal: (address: string) => void;
}

/** Readings outlive the turn to another step: who measures goes back and forth. */
const KEPT = new Map<string, Readings>();

/** A measuring recipe with its sum: what to do, what to write down, the result with its working, and one tap to take it. */
export function MeasureBox(props: Props): JSX.Element {
  const { name, measures, takes } = props;
  const [open, setOpen] = useState(false);
  const [chosen, setChosen] = useState(0);
  const group = useId();
  const measure = measures[chosen] ?? measures[0];
  return (
    <details className="measure" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Measure it and work it out<span className="hidden-name">: {name}</span>
      </summary>
      {open && measure && (
        <div className="measure-body">
          {measures.length > 1 && (
            <fieldset className="measure-ways">
              <legend className="hidden-name">How {name} is measured</legend>
              {measures.map((one, index) => (
                <label key={one.id}>
                  <input type="radio" name={group} checked={one === measure} onChange={() => setChosen(index)} />
                  {one.name}
                </label>
              ))}
            </fieldset>
          )}
          <Sum key={measure.id} {...props} takes={takes} measure={measure} />
        </div>
      )}
    </details>
  );
}

function Sum(props: Props & { measure: Measure }): JSX.Element {
  const { name, measure, given, units, locked, takes, run, onTake, onReveal } = props;
  const place = `${props.place} ${measure.id}`;
  const first = useMemo(
    () => Object.fromEntries(measure.asks.map((ask) => [ask.key, given[ask.from ?? ''] ?? ask.usual ?? ''])),
    [measure, given],
  );
  const [typed, setTyped] = useState<Readings>(() => KEPT.get(place) ?? {});
  const [within, setWithin] = useState<string | null>(null);
  const [result, setResult] = useState<Measured | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const readings = useMemo(() => ({ ...first, ...typed }), [first, typed]);
  useEffect(() => {
    let overtaken = false;
    void run(measure.id, readings).then((answer) => {
      if (!overtaken) setResult(answer);
    });
    return () => {
      overtaken = true;
    };
  }, [run, measure.id, readings]);
  const type = (key: string, text: string): void => {
    const next = { ...typed, [key]: text };
    KEPT.set(place, next);
    setTyped(next);
    setRefused(null);
  };
  // What is being typed is not told off before it is left.
  const faultOf = (key: string): string | null => {
    if (result === null || result.ok || key === within) return null;
    const fault = result.faults.find((one) => one.key === key);
    return fault ? `${fault.problem} ${fault.accepted}` : null;
  };
  const whole = faultOf('');
  const wanted = result?.ok === false ? result.wanted.length : null;
  return (
    <>
      <ol className="instruction measure-steps">
        {measure.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {measure.caution !== null && (
        <p className="measure-caution">
          <b>Caution.</b> {measure.caution}
        </p>
      )}
      <div className="fields measure-asks">
        {measure.asks.map((ask) => (
          <Reading
            key={ask.key}
            ask={ask}
            text={readings[ask.key] ?? ''}
            fault={faultOf(ask.key)}
            onText={(text) => type(ask.key, text)}
            onWithin={(inside) => setWithin(inside ? ask.key : null)}
          />
        ))}
      </div>
      {whole !== null && <p className="measure-fault">{whole}</p>}
      {refused !== null && (
        <p className="measure-fault" role="alert">
          {refused}
        </p>
      )}
      <div className="measure-result">
        <output aria-label={`Result for ${name}`}>
          {result?.ok ? <b>{result.says}</b> : <span className="lead">{waitingWords(wanted)}</span>}
        </output>
        {result?.ok && (
          <button
            type="button"
            className="button"
            disabled={locked}
            onClick={() => void onTake(result.text, result.says, measure).then(setRefused)}
          >
            {takes(result.text)}
          </button>
        )}
      </div>
      {result?.ok && (
        <details className="measure-working">
          <summary>Working and source</summary>
          <div className="working">
            <WorkingSteps working={result.working} units={units} onReveal={onReveal} />
          </div>
        </details>
      )}
    </>
  );
}

/** @param wanted readings that are not given; null before the first answer */
const waitingWords = (wanted: number | null): string =>
  wanted === null
    ? 'not yet'
    : wanted === 0
      ? 'not yet: a reading is wrong'
      : `not yet: ${wanted} ${wanted === 1 ? 'reading' : 'readings'} to write down`;

function Reading(props: {
  ask: Ask;
  text: string;
  fault: string | null;
  onText: (text: string) => void;
  onWithin: (within: boolean) => void;
}): JSX.Element {
  const { ask, text, fault, onText, onWithin } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{ask.name}</label>
      <input
        id={id}
        type="text"
        inputMode={ask.kind === null ? 'numeric' : 'text'}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-notes`}
        className={fault === null ? '' : 'wrong'}
        value={text}
        onFocus={() => onWithin(true)}
        onBlur={() => onWithin(false)}
        onChange={(event) => onText(event.target.value)}
      />
      {ask.kind !== null && !ask.list && <UnitTaps name={ask.name} kind={ask.kind} text={text} onText={onText} />}
      <div id={`${id}-notes`} className="field-notes">
        {fault !== null ? <p className="fails">{fault}</p> : text.trim() === '' && <p>for example {ask.example}</p>}
      </div>
    </div>
  );
}
