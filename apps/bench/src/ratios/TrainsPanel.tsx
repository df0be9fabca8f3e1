import type { Patch } from '@oddwheel/build/document/patch';
import type { RankedTrain, RatioAnswer } from '@oddwheel/build/ratios/types';
import { type JSX, useState } from 'react';
import { Panel } from '../layout-panels/Panel.tsx';
import type { Actions } from '../state/actions.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { BuyingFacts } from './BuyingFacts.tsx';
import { ComparePanel } from './ComparePanel.tsx';
import { FrontPlot } from './FrontPlot.tsx';
import { SearchState } from './SearchState.tsx';
import { SwapPanel } from './SwapPanel.tsx';
import { TrainFormFields } from './TrainForm.tsx';
import { TrainList } from './TrainList.tsx';
import { type Fault, requestOf } from './train-form.ts';
import { trainKey } from './train-words.ts';
import './trains.css';
import { useTrains } from './use-trains.ts';

/** Trains side by side at most. */
const MOST_COMPARED = 4;
const NO_FAULTS: readonly Fault[] = [];
const DRAWN: RankedTrain['pairs'] = [];

interface Props {
  readonly model: RemoteModel;
  readonly actions: Actions;
  readonly hash: string;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
}

/** The best trains that can be built: what is asked, the list, two measures against each other, side by side, and swaps. */
export function TrainsPanels({ model, actions, hash, units, shop }: Props): JSX.Element | null {
  const trains = useTrains(model, hash);
  const [faults, setFaults] = useState(NO_FAULTS);
  const [compared, setCompared] = useState<readonly RankedTrain['pairs'][]>([DRAWN]);
  const [refused, setRefused] = useState<string | null>(null);
  const { choices, form, found, busy } = trains;
  if (choices === null || choices.stages.length === 0) return null;
  const find = (): void => {
    const read = requestOf(form, choices);
    setFaults(read.ok ? NO_FAULTS : read.faults);
    if (!read.ok) return;
    setRefused(null);
    trains.find(read.request);
  };
  const stale = found !== null && found.hash !== hash;
  const apply = async (name: string, patches: readonly Patch[]): Promise<void> => {
    const fault = await actions.applyEdit(name, patches, true);
    setRefused(fault ? `${fault.problem} ${fault.accepted}` : null);
    if (!fault) setCompared([DRAWN]);
  };
  const compare = (pairs: RankedTrain['pairs']): void => {
    const key = trainKey(pairs);
    const without = compared.filter((one) => trainKey(one) !== key);
    setCompared(without.length < compared.length ? without : [...compared, pairs].slice(0, MOST_COMPARED));
  };
  return (
    <div className="trains">
      <Panel name="Best trains">
        <TrainFormFields choices={choices} form={form} faults={faults} onForm={trains.setForm} />
        <div className="train-deeds">
          <button
            type="button"
            className="button main"
            disabled={busy !== null || choices.targets.length === 0}
            onClick={find}
          >
            Find trains
          </button>
          <SearchState trains={trains} what="trains" />
        </div>
        {refused !== null && (
          <p className="fails" role="alert">
            The train was not taken: {refused}
          </p>
        )}
        {found && (
          <>
            <Summary answer={found.answer} />
            {stale && <p className="thin">The build has changed since. Find trains again before one is taken.</p>}
            {found.answer.trains.length === 0 ? (
              <p>No train fits. Allow more teeth, or fewer targets.</p>
            ) : (
              <TrainList
                found={found}
                stale={stale}
                compared={compared}
                full={compared.length >= MOST_COMPARED}
                units={units}
                onCompare={compare}
                onApply={(train) => void apply(train.name, train.patches)}
              />
            )}
            <BuyingFacts answer={found.answer} units={units} />
          </>
        )}
      </Panel>
      {found && found.answer.trains.length > 0 && (
        <>
          <FrontPlot trains={trains} found={found} stale={stale} units={units} shop={shop} />
          <ComparePanel
            model={model}
            hash={hash}
            compared={compared}
            stale={stale}
            units={units}
            shop={shop}
            onReveal={actions.reveal}
          />
        </>
      )}
      <SwapPanel
        model={model}
        hash={hash}
        stages={choices.stages}
        units={units}
        onApply={(row) => void apply(row.name, row.patches)}
      />
    </div>
  );
}

/** The ratio that is looked for, targets that clash, and what was left to choose from. */
function Summary({ answer }: { answer: RatioAnswer }): JSX.Element {
  const { windows, stages } = answer;
  return (
    <div className="train-summary">
      {windows.band && (
        <p>
          Wanted from gearbox to wheel: <b className="whole">{windows.band.low.toFixed(3)}</b>
          {windows.band.high > windows.band.low && (
            <>
              {' '}
              to <b className="whole">{windows.band.high.toFixed(3)}</b>
            </>
          )}
          .
        </p>
      )}
      {windows.clashes.map(({ first, second, says }) => (
        <p key={first + second} className="thin">
          {says}
        </p>
      ))}
      <p className="lead">{stages.map(({ name, says }) => `${name}: ${says}.`).join(' ')}</p>
    </div>
  );
}
