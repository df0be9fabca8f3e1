import { type JSX, useEffect, useRef } from 'react';

const KEYS: readonly (readonly [keys: string, does: string])[] = [
  ['?', 'this list'],
  ['Alt + 1 to 9', 'steps, Brief to Book'],
  ['/', 'find by name'],
  ['P', 'open or fold the path'],
  ['[ and ]', 'element before and after along the path'],
  ['J and K', 'next and previous finding'],
  ['Enter', 'open the finding; commit a field'],
  ['Esc', 'put a field back; close what is open'],
  ['Ctrl or ⌘ + Z', 'undo'],
  ['Ctrl or ⌘ + Shift + Z', 'redo'],
  ['1 to 9', 'take a gear, on the slider'],
  ['arrows, Page Up, Page Down', 'road speed by 0.5 and by 5, on the slider'],
  ['Home, End', 'idle and redline of the gear, on the slider'],
];

/** List of the keys, and the switch for those that are single letters. */
export function KeysDialog(props: {
  singleKeys: boolean;
  onSingleKeys: (on: boolean) => void;
  onClose: () => void;
}): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className="keys" aria-labelledby="keys-heading" onClose={props.onClose}>
      <div className="section-head">
        <h2 id="keys-heading">Keys</h2>
        <button type="button" className="link" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <table className="plain-table">
        <tbody>
          {KEYS.map(([keys, does]) => (
            <tr key={keys}>
              <th scope="row">{keys}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <label className="check">
        <input
          type="checkbox"
          checked={props.singleKeys}
          onChange={(event) => props.onSingleKeys(event.target.checked)}
        />
        Keys that are a single letter or sign are on
      </label>
    </dialog>
  );
}
