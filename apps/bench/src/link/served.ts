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

const isEmptyFolder = (body: unknown): boolean =>
  isProblem(body) && (body as { readonly error: { readonly read?: unknown } }).error.read === 'store.no-build';

/** What served the page: the host of a build, the host of a folder without one, or no host at all. */
export type Server = 'host' | 'empty host' | 'none';

/**
 * Whether the host of a build served this page. A page from the disk, or from a plain folder on some server, has none.
 * Where nothing answers, it is as it was the last time.
 */
export async function servedBy(location: Pick<Location, 'protocol'>, ask = fetch): Promise<Server> {
  if (!/^https?:$/.test(location.protocol)) return 'none';
  try {
    const response = await ask('api/build');
    const body: unknown = await response.json().catch(() => null);
    // A host that cannot read its build says so as it says everything that is wrong.
    const ours = response.ok ? isBuild(body) : isProblem(body);
    keepChoice('served', ours ? 'host' : 'folder');
    return !ours ? 'none' : isEmptyFolder(body) ? 'empty host' : 'host';
  } catch {
    return keptChoice('served') !== 'folder' ? 'host' : 'none';
  }
}
