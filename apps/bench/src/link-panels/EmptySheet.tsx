import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useState } from 'react';
import type { BuildActions } from '../link/build-actions.ts';
import { DEMO_NAMES, demoText } from '../link/demos.ts';
import type { Shelf } from '../worker/keeper-api.ts';
import { KeptList, OpenFile } from './BuildsDialog.tsx';
import './builds.css';

/** The sheet while no build is on it, where the page keeps its builds itself: ways to one. */
export function EmptySheet({ shelf, builds }: { shelf: Shelf; builds: BuildActions }): JSX.Element {
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const demo = async (name: string): Promise<void> => setFaults(await builds.begin(await demoText(name)));
  return (
    <section className="empty-sheet builds" aria-labelledby="empty-heading">
      <h2 id="empty-heading">No build on the sheet</h2>
      <p>
        Look at a demo. All of them are invented:{' '}
        {DEMO_NAMES.map((name) => (
          <button key={name} type="button" className="button" onClick={() => void demo(name)}>
            {name}
          </button>
        ))}
      </p>
      {faults.map((fault) => (
        <p key={fault.address} role="alert">
          {fault.address}: {fault.problem}
        </p>
      ))}
      <OpenFile builds={builds} onOpened={() => undefined} />
      <KeptList shelf={shelf} builds={builds} onOpened={() => undefined} />
    </section>
  );
}
