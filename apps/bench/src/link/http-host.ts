import type { Conflict } from '@oddwheel/build/document/diff';
import type { Fault } from '@oddwheel/build/fault';
import type { Outbox } from '@oddwheel/store/browser-outbox';
import { pictureType } from '@oddwheel/store/picture';
import type { HostAnswer, HostClient, RunOutAnswer } from './host-client.ts';
import type { Saved } from './sync.ts';

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const nameOf = (value: unknown): string | null => (typeof value === 'string' ? value : null);

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');

function readSaved(body: unknown): Saved | null {
  if (!isRecord(body) || typeof body.text !== 'string' || typeof body.hash !== 'string') return null;
  return { text: body.text, hash: body.hash, undo: nameOf(body.undo), redo: nameOf(body.redo) };
}

/** The sentences of an answer that says no. */
function saysWhy(status: number, body: unknown): string {
  const error = isRecord(body) && isRecord(body.error) ? body.error : {};
  const says = [textOf(error.problem), error.accepted ? `Accepted: ${textOf(error.accepted)}` : '']
    .filter((part) => part !== '')
    .join(' ');
  return says === '' ? `The host answered ${status}.` : says;
}

/** An answer that must be good, or an error with what the host says. */
async function good(asked: Promise<Response>): Promise<Response> {
  const response = await asked.catch(() => {
    throw new Error('The host does not answer.');
  });
  if (response.ok) return response;
  throw new Error(saysWhy(response.status, await response.json().catch(() => null)));
}

/** File name in a Content-Disposition header (RFC 6266, RFC 8187). */
function fileName(header: string | null): string {
  const name = /filename\*=UTF-8''([^;]+)/.exec(header ?? '')?.[1];
  return name === undefined ? 'build.oddwheel.zip' : decodeURIComponent(name);
}

function readRunOutAnswer(body: unknown): RunOutAnswer | null {
  if (!isRecord(body) || !Array.isArray(body.acknowledged) || !Array.isArray(body.refused)) return null;
  return { acknowledged: body.acknowledged as string[], refused: body.refused as Fault[] };
}

/** The answer of the host to a change, from its status and body. */
export function readAnswer(status: number, body: unknown): HostAnswer {
  const saved = status === 200 ? readSaved(body) : null;
  if (saved) return { kind: 'saved', saved };
  const record = isRecord(body) ? body : {};
  if (status === 409 && Array.isArray(record.conflicts))
    return { kind: 'conflict', conflicts: record.conflicts as readonly Conflict[] };
  const why = saysWhy(status, record);
  // Only these say that the edit itself can't be taken; with any other it is kept and sent again.
  if (![400, 404, 413, 422].includes(status)) return { kind: 'unreached', says: why };
  const faults = Array.isArray(record.faults) ? (record.faults as readonly Fault[]) : [];
  return { kind: 'refused', says: why, faults };
}

/**
 * Begins a build with this text in the empty folder that the host serves.
 * @returns what is wrong with the text; rejects with an `Error` that says why the host could not
 */
export async function beginOnHost(text: string): Promise<readonly Fault[]> {
  const response = await fetch('/api/begin', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ text }),
  }).catch(() => {
    throw new Error('The host does not answer.');
  });
  if (response.ok) return [];
  const body: unknown = await response.json().catch(() => null);
  if (isRecord(body) && Array.isArray(body.faults)) return body.faults as readonly Fault[];
  throw new Error(saysWhy(response.status, body));
}

const LAST_SEEN = 'build as last seen';

/** A phone that has left the network may wait for minutes; after this it counts as no connection, ms. */
const PATIENCE = 8000;
/** The same for a picture, which takes longer to send, ms. */
const PICTURE_PATIENCE = 20_000;

/** Longest name of an edit that the host takes. */
const LONGEST_NAME = 200;

/**
 * The host that served this page.
 *
 * @param device permanent name of this device, for the history
 * @param outbox keeps the build as it was last seen
 */
export function createHostClient(device: string, outbox: Outbox): HostClient {
  const post = async (path: string, body: unknown): Promise<HostAnswer> => {
    try {
      const response = await fetch(path, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(body),
      });
      return readAnswer(response.status, await response.json());
    } catch {
      return { kind: 'unreached', says: null };
    }
  };
  let seen = '';
  // One stream of events for all that listens: a browser has few connections to one host.
  let stream: EventSource | null = null;
  const events = (): EventSource => {
    stream ??= new EventSource('/api/events');
    return stream;
  };
  const hearConnection = (connection: (up: boolean) => void): void => {
    events().addEventListener('open', () => connection(true));
    events().addEventListener('error', () => connection(false));
  };
  return {
    read: async () => {
      try {
        const saved = readSaved(await (await fetch('/api/build')).json());
        if (saved && saved.hash !== seen) {
          seen = saved.hash;
          await outbox.note(LAST_SEEN, { ...saved });
        }
        return saved;
      } catch {
        return null;
      }
    },
    lastSeen: async () => readSaved(await outbox.noted(LAST_SEEN)),
    edit: (base, edit) =>
      post('/api/edits', { base, patches: edit.patches, name: edit.name.slice(0, LONGEST_NAME), device }),
    undo: (base) => post('/api/undo', { base, device }),
    redo: (base) => post('/api/redo', { base, device }),
    listen: (changed, connection) => {
      hearConnection(connection);
      events().addEventListener('build', (event) => {
        const data: unknown = JSON.parse(event.data);
        if (isRecord(data) && typeof data.hash === 'string') changed(data.hash);
      });
    },
    runOut: {
      read: async () => {
        const body = await fetch('/api/run-out', { signal: AbortSignal.timeout(PATIENCE) })
          .then((response) => response.json())
          .catch(() => null);
        return isRecord(body) && typeof body.text === 'string' ? body.text : null;
      },
      add: async (entries) => {
        try {
          const response = await fetch('/api/run-out', {
            method: 'POST',
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify({ entries }),
            signal: AbortSignal.timeout(PATIENCE),
          });
          return readRunOutAnswer(await response.json());
        } catch {
          return null;
        }
      },
      listen: (changed, connection) => {
        hearConnection(connection);
        events().addEventListener('runOut', changed);
      },
    },
    putPicture: async (bytes) => {
      const type = pictureType(bytes);
      if (type === null) throw new Error('This is no JPEG, PNG or WebP picture.');
      const body = new Uint8Array(bytes);
      const response = await good(
        fetch('/api/pictures', {
          method: 'PUT',
          headers: { 'Content-Type': type },
          body,
          signal: AbortSignal.timeout(PICTURE_PATIENCE),
        }),
      );
      const answer: unknown = await response.json();
      if (!isRecord(answer) || typeof answer.hash !== 'string') throw new Error('The host gave the picture no name.');
      return answer.hash;
    },
    pictureUrl: async (hash) => `/api/pictures/${hash}`,
    archive: async () => {
      const response = await good(fetch('/api/archive'));
      const bytes = new Uint8Array(await response.arrayBuffer());
      return { name: fileName(response.headers.get('Content-Disposition')), bytes };
    },
  };
}
