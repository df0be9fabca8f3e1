/** Events for every page that listens. */

export interface HostEvent {
  readonly event: 'build' | 'log' | 'runOut' | 'beat';
  /** Plain data; goes out as JSON. */
  readonly data: unknown;
}

/** A page that listens: takes events, and ends. */
export interface Listener {
  readonly send: (event: HostEvent) => void;
  readonly end: () => void;
}

export interface Hub {
  /** Adds a listener; the function given back takes it out again. */
  readonly add: (listener: Listener) => () => void;
  readonly broadcast: (event: HostEvent) => void;
  readonly endAll: () => void;
}

/** A hub without listeners. */
export function createHub(): Hub {
  const listeners = new Set<Listener>();
  return {
    add: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    broadcast: (event) => {
      for (const listener of listeners) listener.send(event);
    },
    endAll: () => {
      for (const listener of listeners) listener.end();
      listeners.clear();
    },
  };
}

/** Events that wait for a slow page. A newer build replaces one that waits; log entries all stay. */
export interface Queue {
  readonly push: (event: HostEvent) => void;
  readonly end: () => void;
  /** The next event, as soon as there is one; null after the end. */
  readonly next: () => Promise<HostEvent | null>;
}

export function createQueue(): Queue {
  let waiting: HostEvent[] = [];
  let ended = false;
  let wake: () => void = () => {};
  return {
    push: (event) => {
      if (event.event !== 'log') waiting = waiting.filter((other) => other.event !== event.event);
      waiting.push(event);
      wake();
    },
    end: () => {
      ended = true;
      wake();
    },
    next: async () => {
      while (waiting.length === 0 && !ended)
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      return ended ? null : (waiting.shift() ?? null);
    },
  };
}
