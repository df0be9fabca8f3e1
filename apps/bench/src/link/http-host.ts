import type { Fault } from '@oddwheel/build/fault';
import type { HostAnswer, HostClient } from './host-client.ts';
import type { Conflict, Saved } from './sync.ts';

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');

/** A named step of the history, as the host gives it: its name, or an object that has one. */
const stepName = (value: unknown): string | null =>
  typeof value === 'string' ? value : isRecord(value) && typeof value.name === 'string' ? value.name : null;

function readSaved(body: unknown): Saved | null {
  if (!isRecord(body) || typeof body.text !== 'string' || typeof body.hash !== 'string') return null;
  return { text: body.text, hash: body.hash, undo: stepName(body.undo), redo: stepName(body.redo) };
}

/** The answer of the host to a change, from its status and body. */
export function readAnswer(status: number, body: unknown): HostAnswer {
  const saved = status === 200 ? readSaved(body) : null;
  if (saved) return { kind: 'saved', saved };
  const record = isRecord(body) ? body : {};
  if (status === 409 && Array.isArray(record.conflicts))
    return { kind: 'conflict', conflicts: record.conflicts as readonly Conflict[] };
  const error = isRecord(record.error) ? record.error : {};
  const says = [textOf(error.problem), error.accepted ? `Accepted: ${textOf(error.accepted)}` : '']
    .filter((part) => part !== '')
    .join(' ');
  return {
    kind: 'refused',
    says: says === '' ? `The host answered ${status}.` : says,
    faults: Array.isArray(record.faults) ? (record.faults as readonly Fault[]) : [],
  };
}

/**
 * The host that served this page.
 *
 * @param device permanent name of this device, for the history
 */
export function createHostClient(device: string): HostClient {
  const post = async (path: string, body: unknown): Promise<HostAnswer> => {
    try {
      const response = await fetch(path, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(body),
      });
      return readAnswer(response.status, await response.json());
    } catch {
      return { kind: 'offline' };
    }
  };
  return {
    read: async () => {
      try {
        return readSaved(await (await fetch('/api/build')).json());
      } catch {
        return null;
      }
    },
    edit: (base, edit) => post('/api/edits', { base, patches: edit.patches, name: edit.name, device }),
    undo: (base) => post('/api/undo', { base }),
    redo: (base) => post('/api/redo', { base }),
    listen: (changed, connection) => {
      const events = new EventSource('/api/events');
      events.addEventListener('open', () => connection(true));
      events.addEventListener('error', () => connection(false));
      events.addEventListener('build', (event) => {
        const data: unknown = JSON.parse(event.data);
        if (isRecord(data) && typeof data.hash === 'string') changed(data.hash);
      });
    },
  };
}
