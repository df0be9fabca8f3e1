import type { Finding } from '@oddwheel/build/assess/types';
import type { Hold, HoldProgress } from '@oddwheel/build/hold/types';
import { type JSX, useEffect, useRef, useState } from 'react';
import './make-it-hold.css';
import { ProposalRow } from './ProposalRow.tsx';
import type { StructureTools } from './structure-tools.ts';

interface Props {
  readonly finding: Finding;
  readonly tools: StructureTools;
  readonly locked: string | null;
  readonly onOpen: (finding: string) => void;
}

type State =
  | { readonly is: 'asked for' }
  | { readonly is: 'looking'; readonly progress: HoldProgress | null }
  | { readonly is: 'found'; readonly hold: Hold }
  | { readonly is: 'stopped'; readonly why: string };

const STOPPED = 'Stopped.';

/** Looks for the smallest changes that make the opened finding hold, and makes the one that is chosen. */
export function MakeItHold({ finding, tools, locked, onOpen }: Props): JSX.Element {
  const [state, setState] = useState<State>({ is: 'asked for' });
  const here = useRef(true);
  const heading = useRef<HTMLHeadingElement>(null);
  const looks = useRef(false);
  useEffect(() => {
    here.current = true;
    return () => {
      here.current = false;
      if (looks.current) tools.stopHold();
    };
  }, [tools]);
  const look = async (): Promise<void> => {
    setState({ is: 'looking', progress: null });
    looks.current = true;
    // The button that was pressed goes away.
    heading.current?.focus();
    try {
      const hold = await tools.hold(finding.id, (progress) => {
        if (here.current && looks.current) setState({ is: 'looking', progress });
      });
      if (!here.current) return;
      setState(hold ? { is: 'found', hold } : { is: 'stopped', why: STOPPED });
    } catch (error) {
      if (here.current) setState({ is: 'stopped', why: error instanceof Error ? error.message : String(error) });
    } finally {
      looks.current = false;
    }
  };
  return (
    <section className="make-it-hold" aria-labelledby="make-it-hold-heading">
      <h3 id="make-it-hold-heading" ref={heading} tabIndex={-1}>
        Make it hold
      </h3>
      {(state.is === 'asked for' || state.is === 'stopped') && (
        <>
          {state.is === 'stopped' && <p className="lead">{state.why}</p>}
          <button type="button" className="link" onClick={() => void look()}>
            Find the smallest changes that do
          </button>
        </>
      )}
      {state.is === 'looking' && (
        <>
          <p className="lead trying">
            {state.progress === null
              ? 'The build is being tried with one change after the other.'
              : `Trying: ${state.progress.doing}`}
          </p>
          <progress
            aria-label="Changes tried"
            max={state.progress?.of ?? 1}
            value={state.progress === null ? undefined : state.progress.done}
          />
          <button type="button" className="link" onClick={tools.stopHold}>
            Stop looking
          </button>
        </>
      )}
      {state.is === 'found' && (
        <Found finding={finding} hold={state.hold} tools={tools} locked={locked} onOpen={onOpen} />
      )}
      <p className="hidden-name" role="status">
        {state.is === 'found' ? counted(state.hold) : state.is === 'looking' ? 'Looking for changes.' : ''}
      </p>
    </section>
  );
}

const counted = ({ proposals }: Hold): string =>
  proposals.length === 1 ? 'One change found.' : `${proposals.length || 'No'} changes found.`;

function Found({ finding, hold, tools, locked, onOpen }: Props & { readonly hold: Hold }): JSX.Element {
  const { proposals, ruledOut, none, trials } = hold;
  const reaches = proposals.some((one) => one.reaches);
  return (
    <>
      {none !== null && <p>{none}</p>}
      {proposals.length > 0 && (
        <p className="lead">
          {reaches
            ? `The smallest first, each with the whole build assessed again; ${trials} were tried.`
            : `None of ${trials} changes alone brings it to its design reserve; these come nearest.`}
        </p>
      )}
      <ol className="plain-list">
        {proposals.map((proposal) => (
          <ProposalRow
            key={proposal.what}
            finding={finding}
            hold={hold}
            proposal={proposal}
            tools={tools}
            locked={locked}
            onOpen={onOpen}
          />
        ))}
      </ol>
      {ruledOut.length > 0 && (
        <ul className="plain-list lead">
          {ruledOut.map(({ what, why }) => (
            <li key={what}>
              Left out: {what}. {why.charAt(0).toUpperCase() + why.slice(1)}.
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
