export type KeyCommand =
  | 'keys'
  | 'undo'
  | 'redo'
  | 'close'
  | 'next element'
  | 'previous element'
  | 'next finding'
  | 'previous finding'
  | 'find'
  | 'strip'
  | { readonly step: number };

const SINGLE: Readonly<Record<string, KeyCommand>> = {
  '?': 'keys',
  ']': 'next element',
  '[': 'previous element',
  j: 'next finding',
  k: 'previous finding',
  J: 'next finding',
  K: 'previous finding',
  '/': 'find',
  p: 'strip',
  P: 'strip',
};

/**
 * What a key pressed anywhere on the page means; null when it is left to the browser and to the thing in focus.
 *
 * @param singleKeys keys that are one letter or sign are switched on
 */
export function keyCommand(
  event: Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey' | 'defaultPrevented'> & {
    readonly target: EventTarget | null;
  },
  singleKeys: boolean,
): KeyCommand | null {
  if (event.defaultPrevented) return null;
  if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z')
    return hasDraft(event.target) ? null : event.shiftKey ? 'redo' : 'undo';
  // The key's place counts: with Alt some keyboards type a sign there.
  const digit = /^(?:Digit|Numpad)([1-9])$/.exec(event.code);
  if (event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey && digit && !isInDialog(event.target))
    return { step: Number(digit[1]) };
  // AltGr types brackets on some keyboards and comes as Ctrl+Alt.
  if (event.metaKey || event.ctrlKey !== event.altKey) return null;
  if (event.key === 'Escape') return isInDialog(event.target) ? null : 'close';
  if (!singleKeys || isField(event.target) || isInDialog(event.target)) return null;
  return SINGLE[event.key] ?? null;
}

/** Letters in a field are letters. */
function isField(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLSelectElement ||
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLInputElement && target.type === 'text')
  );
}

/** Text that is being typed has the browser's own undo. */
function hasDraft(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.dataset.draft === 'yes';
}

function isInDialog(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('dialog') !== null;
}
