import { type JSX, useState } from 'react';
import type { StructureTools } from '../inspector/structure-tools.ts';
import { focusField } from '../page/focus.ts';
import { pictureBytes, pictureName } from './attach.ts';
import { ChooseFile } from './ChooseFile.tsx';

interface Props {
  /** Address of what the picture shows; null for nothing in particular. */
  readonly of: string | null;
  /** What it shows, in words. */
  readonly name: string;
  readonly tools: StructureTools;
  readonly locked: string | null;
  /** Picture whose bytes are changed; a new one where left out. */
  readonly at?: string;
}

const HAS_CAMERA = window.matchMedia('(pointer: coarse)');

/** Attaches a picture from a file or, where there is a camera at hand, taken now. */
export function AttachPicture({ of, name, tools, locked, at }: Props): JSX.Element {
  const [says, setSays] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const keep = async (file: File): Promise<string | null> => {
    const kept = await pictureBytes(file);
    if (!kept.ok) return kept.says;
    const hash = await tools.putPicture(kept.bytes);
    const edit = await tools.plan(
      at === undefined
        ? { do: 'add picture', of, name: pictureName(file.name), file: hash }
        : { do: 'replace picture', at, file: hash },
    );
    const fault = edit.ok ? await tools.make(edit) : edit.faults[0];
    if (edit.ok && !fault && at === undefined) focusField(`${edit.shows}/name`);
    return fault ? `${fault.problem} ${fault.accepted}` : null;
  };
  const take = async (file: File): Promise<void> => {
    setBusy(true);
    setSays(null);
    try {
      setSays(await keep(file));
    } catch (why) {
      setSays(`The picture was not kept: ${why instanceof Error ? why.message : String(why)}`);
    } finally {
      setBusy(false);
    }
  };
  const disabled = locked !== null || busy;
  const what = at === undefined ? 'Picture' : 'Another picture';
  return (
    <span className="attach">
      <ChooseFile words={what} of={name} disabled={disabled} camera={false} onFile={take} />
      {HAS_CAMERA.matches && <ChooseFile words="Take a picture" of={name} disabled={disabled} camera onFile={take} />}
      {busy && <span role="status">Keeping the picture.</span>}
      {says !== null && (
        <span className="fails" role="alert">
          {says}
        </span>
      )}
    </span>
  );
}
