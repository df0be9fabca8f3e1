import { type JSX, useId } from 'react';
import './notes.css';

interface Props {
  readonly words: string;
  /** What the picture is of, for those who hear the page. */
  readonly of: string;
  readonly disabled: boolean;
  readonly camera: boolean;
  readonly onFile: (file: File) => Promise<void>;
}

/** A file input for pictures that looks like every other thing to press; the input itself takes focus and keys. */
export function ChooseFile({ words, of, disabled, camera, onFile }: Props): JSX.Element {
  const id = useId();
  return (
    <label htmlFor={id} className="choose-file link">
      {words}
      <span className="hidden-name"> of {of}</span>
      <input
        id={id}
        type="file"
        accept="image/*"
        disabled={disabled}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          // The same file may be chosen again after a fault.
          event.target.value = '';
          if (file) void onFile(file);
        }}
      />
    </label>
  );
}
