/** What the host answers while its folder holds no build yet. */
import type { Hono } from 'hono';
import { refuse } from './problem.ts';
import { EDIT_LIMIT, limitBody, readJsonObject } from './request-body.ts';

const BEGIN = '/api/begin';

/** What a folder without a build waits for. */
export interface Waiting {
  /** Makes the build and serves it from then on; rejects with a StoreError when the text has faults or the folder is taken. */
  readonly begin: (text: string) => Promise<void>;
  /** What serves the build that another program has put into the folder meanwhile; null when there is none. */
  readonly found: () => Promise<Hono | null>;
}

/** `POST /api/begin` makes the build from the text of a build file; nothing else of a build is there yet. */
export function addWaitingApi(app: Hono, { begin, found }: Waiting): void {
  app.post(BEGIN, limitBody(EDIT_LIMIT), async (c) => {
    const body = await readJsonObject(c);
    if (!body.ok) return refuse(c, 400, body.error);
    const { text } = body.value;
    if (typeof text !== 'string')
      return refuse(c, 400, {
        problem: 'The text of the build is missing.',
        read: typeof text,
        accepted: '{ "text": "the text of a build file" }',
      });
    await begin(text);
    return c.json({ begun: true });
  });
  app.all('/api/*', async (c) => {
    const serving = await found();
    if (serving) return serving.fetch(c.req.raw, c.env);
    return refuse(c, 404, {
      problem: 'There is no build in this folder yet.',
      read: 'store.no-build',
      accepted: 'POST /api/begin with the text of a build file',
    });
  });
}

/** The answer to a second page that begins a build where one is served already. */
export function addBegunApi(app: Hono): void {
  app.post(BEGIN, (c) =>
    refuse(c, 409, {
      problem: 'A build was begun in this folder meanwhile. Nothing of it was changed.',
      read: 'store.not-empty',
      accepted: 'this page loaded again, which shows that build',
    }),
  );
}
