/**
 * Keeps a stream of requests down to the newest: one is under way, at most one waits, and a newer one replaces it.
 *
 * @param run does one request
 * @param failed is told why a request failed; the next one runs all the same
 * @returns a function to ask with; it never blocks, and drops what was overtaken
 */
export function latestWins<T>(
  run: (request: T) => Promise<void>,
  failed: (why: unknown) => void,
): (request: T) => void {
  let waiting: { readonly request: T } | null = null;
  let busy = false;
  const next = async (): Promise<void> => {
    busy = true;
    while (waiting) {
      const { request } = waiting;
      waiting = null;
      await run(request).catch(failed);
    }
    busy = false;
  };
  return (request) => {
    waiting = { request };
    if (!busy) void next();
  };
}
