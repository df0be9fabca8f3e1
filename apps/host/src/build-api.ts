/** Reading and changing the build. */
import type { BuildStore, SaveResult } from '@oddwheel/store/store';
import type { Context, Hono } from 'hono';
import type { Live } from './live.ts';
import { refuse } from './problem.ts';
import { EDIT_LIMIT, limitBody, readEdit, readJsonObject, readStep } from './request-body.ts';

async function answer(c: Context, live: Live, result: SaveResult, by: string | null): Promise<Response> {
  if (result.ok) {
    // The change is on the disk: what is said from here on must not unsay it.
    await live.tellBuild(by);
    const { undo, redo } = await live.state();
    const { text, hash, entryId, merged } = result;
    return c.json({ text, hash, undo, redo, entryId, merged });
  }
  if (result.reason === 'conflict') {
    const { conflicts, text, hash } = result;
    const places = conflicts.map(({ address }) => address).join(', ');
    const error = {
      problem: 'The build was changed elsewhere meanwhile.',
      read: places === '' ? 'another text' : places,
      accepted: 'a choice for each address, on top of the text as it now stands',
    };
    return refuse(c, 409, error, { conflicts, text, hash });
  }
  const [first] = result.faults;
  const error = {
    problem: first?.problem ?? 'The build cannot be saved like this.',
    read: first?.read ?? '',
    accepted: first?.accepted ?? 'an edit that leaves the build without faults',
  };
  return refuse(c, 422, error, { faults: result.faults });
}

/** `GET /api/build`, `POST /api/edits`, `/api/undo` and `/api/redo`. */
export function addBuildApi(app: Hono, store: BuildStore, live: Live): void {
  app.get('/api/build', async (c) => c.json(await live.state()));

  app.post('/api/edits', limitBody(EDIT_LIMIT), async (c) => {
    const body = await readJsonObject(c);
    if (!body.ok) return refuse(c, 400, body.error);
    const request = readEdit(body.value);
    if (!request.ok) return refuse(c, 400, request.error);
    return answer(c, live, await store.save(request.value), request.value.who ?? null);
  });

  for (const kind of ['undo', 'redo'] as const)
    app.post(`/api/${kind}`, limitBody(EDIT_LIMIT), async (c) => {
      const body = await readJsonObject(c);
      if (!body.ok) return refuse(c, 400, body.error);
      const request = readStep(body.value);
      if (!request.ok) return refuse(c, 400, request.error);
      return answer(c, live, await store[kind](request.value), request.value.who ?? null);
    });
}
