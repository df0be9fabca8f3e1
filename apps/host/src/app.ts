/** All that the host answers, and whom. */
import type { Fault } from '@oddwheel/build/fault';
import { StoreError, type StoreErrorCode } from '@oddwheel/store/store';
import { type Context, Hono, type Next } from 'hono';
import { hostFault, originFault } from './guard.ts';
import type { Pairing } from './pairing.ts';
import { addPairingApi, requirePairing } from './pairing-api.ts';
import { asRead, refuse } from './problem.ts';
import { readStatic } from './static-files.ts';

export interface AppParts {
  /** Adds what is answered below `/api`, but for pairing. */
  readonly api: (app: Hono) => void;
  /** Folder of the built page. */
  readonly benchDir: string;
  /** Values of `Host` that are ours, and our port. */
  readonly own: () => ReadonlySet<string>;
  readonly port: () => number;
  /** Null when only this machine is served. */
  readonly pairing: Pairing | null;
  /** Takes a line about an error that is no fault of the request. */
  readonly log: (line: string) => void;
}

/** The page loads nothing from elsewhere, runs no text as code, and stands in nobody's frame. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

async function secure(c: Context, next: Next): Promise<void> {
  await next();
  if (!c.res.headers.has('Content-Security-Policy')) c.header('Content-Security-Policy', POLICY);
  c.header('X-Content-Type-Options', 'nosniff');
  c.header('Referrer-Policy', 'no-referrer');
  c.header('Cross-Origin-Resource-Policy', 'same-origin');
  if (!c.res.headers.has('Cache-Control')) c.header('Cache-Control', 'no-store');
}

const changes = (method: string): boolean => method !== 'GET' && method !== 'HEAD';

function guard(own: () => ReadonlySet<string>) {
  return async (c: Context, next: Next): Promise<Response | undefined> => {
    const foreignHost = hostFault(c.req.header('host'), own());
    if (foreignHost) return refuse(c, 403, foreignHost);
    if (changes(c.req.method) || c.req.path.startsWith('/api/')) {
      const foreign = originFault(c.req.header('origin'), c.req.header('sec-fetch-site'), own());
      if (foreign) return refuse(c, 403, foreign);
    }
    await next();
    return undefined;
  };
}

const PICTURES = '/api/pictures';

/** A body that a plain form of a foreign page could send is not taken. */
async function requireType(c: Context, next: Next): Promise<Response | undefined> {
  const type = c.req.header('content-type')?.split(';')[0]?.trim().toLowerCase() ?? 'none';
  const wanted = c.req.path === PICTURES ? /^image\/(jpeg|png|webp)$/ : /^application\/json$/;
  if (changes(c.req.method) && !wanted.test(type)) {
    const accepted = c.req.path === PICTURES ? 'image/jpeg, image/png or image/webp' : 'application/json';
    return refuse(c, 415, { problem: 'The body is of another type.', read: `Content-Type: ${type}`, accepted });
  }
  await next();
  return undefined;
}

const STORE_STATUS: Readonly<Record<StoreErrorCode, 403 | 404 | 409 | 422 | 503>> = {
  'store.busy': 503,
  'store.closed': 503,
  'store.damaged': 422,
  'store.no-build': 404,
  'store.not-empty': 409,
  'store.not-text': 422,
  'store.read-only': 403,
  'store.refused': 422,
};

function storeAnswer(c: Context, error: StoreError): Response {
  const faults: readonly Fault[] = error.faults;
  const accepted = faults[0]?.accepted ?? 'a build folder that can be read and written';
  return refuse(
    c,
    STORE_STATUS[error.code],
    { problem: error.message, read: error.code, accepted },
    faults.length > 0 ? { faults } : {},
  );
}

/** The answer below `/api` where nothing answers. */
export const noSuchAddress = (c: Context): Response =>
  refuse(c, 404, {
    problem: 'The host has no such address.',
    read: asRead(`${c.req.method} ${c.req.path}`),
    accepted:
      'GET /api/build, /api/log, /api/run-out, /api/events, /api/pictures/HASH, /api/archive; POST /api/edits, /api/undo, /api/redo, /api/log, /api/run-out; PUT /api/pictures',
  });

/** Puts the host together. */
export function createApp({ api, benchDir, own, port, pairing, log }: AppParts): Hono {
  const app = new Hono();
  app.use(secure);
  app.use(guard(own));
  if (pairing) app.use(requirePairing(pairing, port));
  app.use('/api/*', requireType);

  if (pairing) addPairingApi(app, pairing, port);
  api(app);

  app.get('*', async (c) => {
    const file = await readStatic(benchDir, new URL(c.req.url).pathname);
    if (!file)
      return refuse(c, 404, {
        problem: 'There is no such file.',
        read: asRead(c.req.path),
        accepted: 'a file of the page',
      });
    const cache = file.keep ? 'public, max-age=31536000, immutable' : 'no-cache';
    return c.body(file.bytes, 200, { 'Content-Type': file.type, 'Cache-Control': cache });
  });
  app.all('*', (c) =>
    refuse(c, 405, { problem: 'Files of the page can only be read.', read: c.req.method, accepted: 'GET' }),
  );

  app.onError((error, c) => {
    if (error instanceof StoreError) return storeAnswer(c, error);
    log(`${c.req.method} ${c.req.path}: ${error.message}`);
    return refuse(c, 500, {
      problem: error.message,
      read: asRead(c.req.path),
      accepted: 'nothing; see the terminal of the host',
    });
  });
  return app;
}
