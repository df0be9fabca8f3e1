/** What the host answers while its folder holds no build yet. */
import type { Hono } from 'hono';
import { refuse } from './problem.ts';
import { EDIT_LIMIT, limitBody, readJsonObject } from './request-body.ts';

/**
 * `POST /api/begin` makes the build from the text of a build file; nothing else of a build is there yet.
 * @param begin makes the build and serves it from then on; rejects with a StoreError when the text has faults or the folder is taken
 */
export function addWaitingApi(app: Hono, begin: (text: string) => Promise<void>): void {
  app.post('/api/begin', limitBody(EDIT_LIMIT), async (c) => {
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
  app.all('/api/*', (c) =>
    refuse(c, 404, {
      problem: 'There is no build in this folder yet.',
      read: 'store.no-build',
      accepted: 'POST /api/begin with the text of a build file',
    }),
  );
}
