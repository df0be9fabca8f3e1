import { keepChoice, keptChoice } from '../state/device.ts';

const isBuild = (body: unknown): boolean =>
  typeof body === 'object' && body !== null && 'text' in body && 'hash' in body && 'undo' in body;

const isProblem = (body: unknown): boolean =>
  typeof body === 'object' &&
  body !== null &&
  'error' in body &&
  typeof body.error === 'object' &&
  body.error !== null &&
  'problem' in body.error;

/**
 * Whether the host of a build served this page. A page from the disk, or from a plain folder on some server, has none.
 * Where nothing answers, it is as it was the last time.
 */
export async function servedByHost(location: Pick<Location, 'protocol'>, ask = fetch): Promise<boolean> {
  if (!/^https?:$/.test(location.protocol)) return false;
  try {
    const response = await ask('api/build');
    const body: unknown = await response.json().catch(() => null);
    // A host that cannot read its build says so as it says everything that is wrong.
    const ours = response.ok ? isBuild(body) : isProblem(body);
    keepChoice('served', ours ? 'host' : 'folder');
    return ours;
  } catch {
    return keptChoice('served') !== 'folder';
  }
}
