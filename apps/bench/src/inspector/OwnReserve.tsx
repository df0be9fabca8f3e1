import type { Finding } from '@oddwheel/build/assess/types';
import { type JSX, useRef, useState } from 'react';
import { AddForm } from './AddForm.tsx';
import { ownReserve } from './adding.ts';
import type { StructureTools } from './structure-tools.ts';

interface Props {
  readonly finding: Finding;
  /** It has one already. */
  readonly has: boolean;
  readonly tools: StructureTools;
  readonly locked: string | null;
  readonly onReveal: (address: string) => void;
}

/** Address of the builder's own design reserve for a finding. */
const reserveAddress = (finding: string): string => `/overrides/${finding.replaceAll('~', '~0').replaceAll('/', '~1')}`;

/** Gives the opened check a design reserve of the builder's own, or leads to the one that it has. */
export function OwnReserve({ finding, has, tools, locked, onReveal }: Props): JSX.Element {
  const [open, setOpen] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    setOpen(false);
    opener.current?.focus();
  };
  if (has)
    return (
      <p className="own-reserve">
        <button type="button" className="link" onClick={() => onReveal(reserveAddress(finding.id))}>
          Change the design reserve of your own
        </button>
      </p>
    );
  return (
    <div className="own-reserve">
      <button
        ref={opener}
        type="button"
        className="link"
        aria-expanded={open}
        disabled={locked !== null}
        onClick={() => setOpen(!open)}
      >
        Use a design reserve of your own
      </button>
      {open && <AddForm adding={ownReserve(finding.id)} tools={tools} locked={locked} takesFocus onClose={close} />}
    </div>
  );
}
