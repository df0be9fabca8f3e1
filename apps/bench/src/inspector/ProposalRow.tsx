import type { Finding } from '@oddwheel/build/assess/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Hold, Proposal, SideEffect } from '@oddwheel/build/hold/types';
import { EFFORT_WORDS, effectWords } from '@oddwheel/build/hold/words';
import { type JSX, useState } from 'react';
import { Severity } from '../face/Severity.tsx';
import { reserveText } from '../numbers/shown.ts';
import type { StructureTools } from './structure-tools.ts';

interface Props {
  readonly finding: Finding;
  readonly hold: Hold;
  readonly proposal: Proposal;
  readonly tools: StructureTools;
  readonly locked: string | null;
  readonly onOpen: (finding: string) => void;
}

/** Side effects that are told at once; the rest is folded away. */
const TOLD = 4;

/** One change: what it is, what it does to the finding and to others, and the button that makes it. */
export function ProposalRow({ finding, hold, proposal, tools, locked, onOpen }: Props): JSX.Element {
  const [fault, setFault] = useState<Fault | null>(null);
  const { what, patches, effort, after, boughtIn, cures, harms, holdWithLess } = proposal;
  const make = async (): Promise<void> => {
    const wrong = await tools.make({ name: what, patches });
    setFault(wrong);
    // The proposals go with the build that they were for.
    if (!wrong) document.getElementById('inspector-heading')?.focus();
  };
  return (
    <li className="proposal">
      <h4>{what}</h4>
      <p className="outcome">
        <Severity severity={after?.severity ?? 'holds'} />
        <span>
          {after === null
            ? `${finding.title}: no longer asked`
            : after.reserve && hold.before.reserve
              ? `${reserveText(hold.before.reserve.lo)} → ${reserveText(after.reserve.lo)} at the worse end, ${reserveText(hold.wanted)} wanted`
              : `${hold.before.severity} → ${after.severity}`}
        </span>
        <span className="lead">{EFFORT_WORDS[effort]}</span>
      </p>
      {boughtIn.map((says) => (
        <p key={says} className="lead">
          Not in your shop: {says}.
        </p>
      ))}
      <Effects head="Worse by it" effects={harms} onOpen={onOpen} />
      <Effects head="Better by it" effects={cures} onOpen={onOpen} />
      {holdWithLess > 0 && (
        <p className="lead">
          {holdWithLess === 1
            ? 'One more holds with less in reserve.'
            : `${holdWithLess} more hold with less in reserve.`}
        </p>
      )}
      <button type="button" className="button" disabled={locked !== null} onClick={() => void make()}>
        Make this change<span className="hidden-name">: {what}</span>
      </button>
      {fault && (
        <p className="fails" role="alert">
          {fault.problem} {fault.accepted}
        </p>
      )}
    </li>
  );
}

interface EffectsProps {
  readonly head: string;
  readonly effects: readonly SideEffect[];
  readonly onOpen: (finding: string) => void;
}

function Effects({ head, effects, onOpen }: EffectsProps): JSX.Element | null {
  const [all, setAll] = useState(false);
  if (effects.length === 0) return null;
  const more = effects.length - TOLD;
  return (
    <div className="effects">
      <h5>{head}</h5>
      <ul className="plain-list">
        {effects.slice(0, all ? effects.length : TOLD).map((effect) => (
          <li key={effect.finding}>
            {effect.before === null ? (
              <span>
                {effect.element}, {effect.title}
              </span>
            ) : (
              <button type="button" className="link" onClick={() => onOpen(effect.finding)}>
                {effect.element}, {effect.title}
              </button>
            )}{' '}
            <span className={effect.after === 'fails' ? 'fails' : ''}>{effectWords(effect, reserveText)}</span>
          </li>
        ))}
      </ul>
      {more > 0 && !all && (
        <button type="button" className="link" onClick={() => setAll(true)}>
          Show {more} more
        </button>
      )}
    </div>
  );
}
