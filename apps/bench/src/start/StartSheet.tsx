import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useState } from 'react';
import type { BuildActions } from '../link/build-actions.ts';
import { DEMO_BUILDS, demoText } from '../link/demos.ts';
import { KeptList, OpenFile } from '../link-panels/BuildsDialog.tsx';
import type { Shelf } from '../worker/keeper-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { SixForm } from './SixForm.tsx';
import './start.css';

interface Props {
  readonly model: RemoteModel;
  readonly builds: BuildActions;
  /** Builds that the page keeps itself; null where a host serves an empty folder. */
  readonly shelf: Shelf | null;
  /** A build has begun and is on the page. */
  readonly onBegun: () => void;
}

/** The sheet while no build is on it: six fields to a first layout, a demo to look at, or a build that is kept. */
export function StartSheet({ model, builds, shelf, onBegun }: Props): JSX.Element {
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const begin = async (text: string): Promise<readonly Fault[]> => {
    const wrong = await builds.begin(text);
    if (wrong.length > 0) return wrong;
    onBegun();
    // The form is gone with the focus in it: keys go on from the sheet that it made.
    setTimeout(() => document.getElementById('step-sheet')?.focus({ preventScroll: true }));
    return wrong;
  };
  const demo = async (name: string): Promise<void> => setFaults(await begin(await demoText(name)));
  return (
    <section className="start builds" aria-labelledby="empty-heading">
      <h2 id="empty-heading">No build on the sheet</h2>
      <p>
        Oddwheel marries an engine to a wheel that it was never made for: it lays the drive out to scale, and says what
        holds and what does not.
      </p>
      <p className="to-demos">
        <button type="button" className="link" onClick={() => document.getElementById('demo-heading')?.focus()}>
          To the demos
        </button>
      </p>
      <div className="start-ways">
        <SixForm model={model} onBegin={begin} />
        <div className="start-others">
          <section aria-labelledby="demo-heading">
            <h3 id="demo-heading" tabIndex={-1}>
              Look at a demo
            </h3>
            <p className="lead">All of them are invented.{shelf === null && ' A copy goes into the folder.'}</p>
            <ul className="plain-list">
              {DEMO_BUILDS.map(({ name, about }) => (
                <li key={name}>
                  <button type="button" className="button" onClick={() => void demo(name)}>
                    {name}
                  </button>
                  <p>{about.replace(' (invented)', '')}</p>
                </li>
              ))}
            </ul>
            {faults.map((fault) => (
              <p key={fault.address} role="alert">
                {fault.address}: {fault.problem}
              </p>
            ))}
          </section>
          {shelf && (
            <>
              <OpenFile builds={builds} onOpened={() => undefined} />
              <KeptList shelf={shelf} builds={builds} onOpened={() => undefined} />
            </>
          )}
        </div>
      </div>
    </section>
  );
}
