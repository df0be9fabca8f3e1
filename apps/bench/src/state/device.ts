/** Choices that belong to this device and not to the build. Storage may be switched off in a browser: then they last as long as the page. */

const key = (name: string): string => `oddwheel.${name}`;

/** A choice kept on this device, or null. */
export function keptChoice(name: string): string | null {
  try {
    return window.localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

/** Keeps a choice on this device. */
export function keepChoice(name: string, value: string): void {
  try {
    window.localStorage.setItem(key(name), value);
  } catch {
    // Without storage the choice lasts as long as the page.
  }
}

/** A permanent name of this device for the history; random digits, since a plain http page has no better source. */
export function deviceName(): string {
  const kept = keptChoice('device');
  if (kept !== null) return kept;
  const name = `bench-${Math.floor(Math.random() * 36 ** 6)
    .toString(36)
    .padStart(6, '0')}`;
  keepChoice('device', name);
  return name;
}
