/**
 * Keeps the page itself in the browser, so that it can be loaded again while the host is away. Browsers allow it on the machine
 * of the host (a secure context), and not over plain http from another one: then nothing happens, and the page says so where it
 * matters.
 */
export async function keepPage(): Promise<void> {
  if (!window.isSecureContext || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register('./kept-page.js');
  } catch {
    // A browser that does not allow it keeps the loaded page working all the same.
  }
}
