import { ORDER_KEYS, type RatioChoices, type TargetKey } from '@oddwheel/build/ratios/types';
import { type JSX, useId } from 'react';
import { blankStage, type Fault, type From, fromWords, moved, type StageForm, type TrainForm } from './train-form.ts';
import { isOrderKey, MEASURES, TARGET_NAMES } from './train-words.ts';

interface Props {
  readonly choices: RatioChoices;
  readonly form: TrainForm;
  readonly faults: readonly Fault[];
  readonly onForm: (form: TrainForm) => void;
}

/** What may be changed, what has to be met, and what counts first. */
export function TrainFormFields({ choices, form, faults, onForm }: Props): JSX.Element {
  return (
    <div className="train-form">
      <Targets choices={choices} form={form} onForm={onForm} />
      <fieldset className="train-stages">
        <legend>Teeth that may be chosen</legend>
        {choices.stages.map((choice) => (
          <StageFields
            key={choice.stage}
            choice={choice}
            stage={form.stages[choice.stage] ?? blankStage(choice)}
            faults={faults.filter(({ stage }) => stage === choice.stage)}
            onStage={(stage) => onForm({ ...form, stages: { ...form.stages, [choice.stage]: stage } })}
          />
        ))}
        <label className="tick">
          <input
            type="checkbox"
            checked={form.shelfOnly}
            onChange={(event) => onForm({ ...form, shelfOnly: event.target.checked })}
          />{' '}
          only trains whose parts are all there
        </label>
      </fieldset>
      <OrderFields form={form} onForm={onForm} />
    </div>
  );
}

function Targets({ choices, form, onForm }: Omit<Props, 'faults'>): JSX.Element {
  const others = choices.targets.filter(({ key }) => key !== 'feel');
  // As the search takes it: the feel of another vehicle counts by itself only where nothing else is wanted.
  const usual = (others.length > 0 ? others : choices.targets).map(({ key }) => key);
  const chosen = form.targets ?? usual;
  const set = (key: TargetKey, on: boolean): void => {
    const next = choices.targets.map((one) => one.key).filter((one) => (one === key ? on : chosen.includes(one)));
    if (next.length > 0) onForm({ ...form, targets: next });
  };
  return (
    <fieldset>
      <legend>Targets that count</legend>
      {choices.targets.map(({ key, says, least, most }) => (
        <label key={key} className="tick">
          <input
            type="checkbox"
            checked={chosen.includes(key)}
            // One target has to stay: without any there is no ratio to look for.
            disabled={chosen.length === 1 && chosen.includes(key)}
            onChange={(event) => set(key, event.target.checked)}
          />{' '}
          <span>
            {TARGET_NAMES[key]}: {says}.{' '}
            <span className="lead">
              {least === 0
                ? `At most ${most.toFixed(3)}.`
                : Number.isFinite(most)
                  ? `${least.toFixed(3)} to ${most.toFixed(3)}.`
                  : `At least ${least.toFixed(3)}.`}
            </span>
          </span>
        </label>
      ))}
      {choices.open.map(({ key, says }) => (
        <p key={key} className="lead">
          {TARGET_NAMES[key]} sets no ratio yet. {says}
        </p>
      ))}
      {choices.targets.length === 0 && (
        <p>No target sets a ratio yet. Cruising, top speed, pull, climb or a reference vehicle in the brief does.</p>
      )}
    </fieldset>
  );
}

function StageFields(props: {
  readonly choice: RatioChoices['stages'][number];
  readonly stage: StageForm;
  readonly faults: readonly Fault[];
  readonly onStage: (stage: StageForm) => void;
}): JSX.Element {
  const { choice, stage, faults, onStage } = props;
  const id = useId();
  const text = (key: 'driver' | 'driven' | 'pairs', label: string): JSX.Element => {
    const fault = faults.find((one) => one.key === key);
    return (
      <div className="field">
        <label htmlFor={`${id}-${key}`}>
          {label}
          <span className="hidden-name"> of {choice.name}</span>
        </label>
        <input
          id={`${id}-${key}`}
          type="text"
          autoComplete="off"
          className={fault ? 'wrong' : ''}
          aria-invalid={fault !== undefined}
          aria-describedby={fault ? `${id}-${key}-fault` : undefined}
          value={stage[key]}
          onChange={(event) => onStage({ ...stage, [key]: event.target.value })}
        />
        {fault && (
          <p id={`${id}-${key}-fault`} className="fails" role="alert">
            {fault.says}
          </p>
        )}
      </div>
    );
  };
  return (
    <div className="train-stage">
      <div className="field">
        <label htmlFor={`${id}-from`}>
          {choice.name}, {choice.driver} : {choice.driven}
        </label>
        <select
          id={`${id}-from`}
          value={stage.from}
          onChange={(event) => {
            const found = fromWords(choice).find(([key]) => key === event.target.value);
            if (found) onStage({ ...stage, from: found[0] satisfies From });
          }}
        >
          {fromWords(choice).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {stage.from === 'range' && text('driver', 'Driver teeth')}
      {stage.from === 'range' && text('driven', 'Driven teeth')}
      {stage.from === 'pairs' && text('pairs', 'Pairs, driver first')}
    </div>
  );
}

function OrderFields({ form, onForm }: Pick<Props, 'form' | 'onForm'>): JSX.Element {
  const id = useId();
  const { order } = form;
  const left = ORDER_KEYS.filter((key) => !order.includes(key));
  return (
    <fieldset>
      <legend>What counts, first things first</legend>
      <ol className="train-order">
        {order.map((key, k) => {
          const { name } = MEASURES[key];
          return (
            <li key={key}>
              <span>{name}</span>
              <button
                type="button"
                className="link"
                aria-label={`Sooner: ${name}`}
                disabled={k === 0}
                onClick={() => onForm({ ...form, order: moved(order, key, -1) })}
              >
                sooner
              </button>
              <button
                type="button"
                className="link"
                aria-label={`Later: ${name}`}
                disabled={k === order.length - 1}
                onClick={() => onForm({ ...form, order: moved(order, key, 1) })}
              >
                later
              </button>
              <button
                type="button"
                className="link"
                aria-label={`Leave out: ${name}`}
                disabled={order.length === 1}
                onClick={() => onForm({ ...form, order: order.filter((one) => one !== key) })}
              >
                leave out
              </button>
            </li>
          );
        })}
      </ol>
      <div className="train-more">
        {left.length > 0 && (
          <div className="field">
            <label htmlFor={`${id}-add`}>Count as well</label>
            <select
              id={`${id}-add`}
              value=""
              onChange={(event) => {
                if (isOrderKey(event.target.value)) onForm({ ...form, order: [...order, event.target.value] });
              }}
            >
              <option value="">choose</option>
              {left.map((key) => (
                <option key={key} value={key}>
                  {MEASURES[key].name}
                </option>
              ))}
            </select>
          </div>
        )}
        <div className="field">
          <label htmlFor={`${id}-best`}>How many trains</label>
          <select
            id={`${id}-best`}
            value={form.best}
            onChange={(event) => onForm({ ...form, best: Number(event.target.value) })}
          >
            {[5, 10, 20, 50].map((count) => (
              <option key={count} value={count}>
                {count}
              </option>
            ))}
          </select>
        </div>
      </div>
    </fieldset>
  );
}
