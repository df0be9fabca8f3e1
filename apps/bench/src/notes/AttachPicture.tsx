import { type JSX, useId, useState } from 'react';
import type { StructureTools } from '../inspector/structure-tools.ts';
import { focusField } from '../page/focus.ts';
import { pictureBytes, pictureName } from './attach.ts';

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
      <Choose words={what} of={name} disabled={disabled} camera={false} onFile={take} />
      {HAS_CAMERA.matches && <Choose words="Take a picture" of={name} disabled={disabled} camera onFile={take} />}
      {busy && <span role="status">Keeping the picture.</span>}
      {says !== null && (
        <span className="fails" role="alert">
          {says}
        </span>
      )}
    </span>
  );
}

/** A file input that looks like every other thing to press; the input itself takes focus and keys. */
function Choose(props: {
  words: string;
  of: string;
  disabled: boolean;
  camera: boolean;
  onFile: (file: File) => Promise<void>;
}): JSX.Element {
  const id = useId();
  return (
    <label htmlFor={id} className="choose-file link">
      {props.words}
      <span className="hidden-name"> of {props.of}</span>
      <input
        id={id}
        type="file"
        accept="image/*"
        disabled={props.disabled}
        {...(props.camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          // The same file may be chosen again after a fault.
          event.target.value = '';
          if (file) void props.onFile(file);
        }}
      />
    </label>
  );
}
