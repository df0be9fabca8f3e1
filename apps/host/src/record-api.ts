/** The record of a build: its log, its run-out and its pictures. */
import type { Json } from '@oddwheel/build/document/json';
import { archiveFileName, packArchive } from '@oddwheel/store/archive';
import { PICTURE_LIMIT, pictureType } from '@oddwheel/store/picture';
import type { BuildStore } from '@oddwheel/store/store';
import type { Hono } from 'hono';
import type { Live } from './live.ts';
import { asRead, refuse } from './problem.ts';
import { EDIT_LIMIT, limitBody, readJsonObject } from './request-body.ts';

function addLogApi(app: Hono, store: BuildStore, live: Live): void {
  app.get('/api/log', async (c) => {
    const { log, setAside } = await live.state();
    return c.json({ entries: log, setAside: setAside.filter(({ file }) => file === 'log') });
  });

  app.post('/api/log', limitBody(EDIT_LIMIT), async (c) => {
    const body = await readJsonObject(c);
    if (!body.ok) return refuse(c, 400, body.error);
    const { entries } = body.value;
    if (!Array.isArray(entries)) {
      const accepted = '{"entries": [ … ]}, each an entry of the log';
      return refuse(c, 400, { problem: '"entries" is missing.', read: asRead(body.value), accepted });
    }
    const { acknowledged, refused } = await store.append(entries as readonly Json[]);
    if (acknowledged.length > 0) await live.tellLog(acknowledged);
    const [first] = refused;
    if (!first) return c.json({ acknowledged });
    const { problem, read, accepted } = first;
    return refuse(c, 422, { problem, read, accepted }, { acknowledged, faults: refused });
  });
}

function addRunOutApi(app: Hono, store: BuildStore, live: Live): void {
  app.get('/api/run-out', async (c) => c.json({ text: (await live.state()).runOut }));

  app.post('/api/run-out', limitBody(EDIT_LIMIT), async (c) => {
    const body = await readJsonObject(c);
    if (!body.ok) return refuse(c, 400, body.error);
    const { entries } = body.value;
    if (!Array.isArray(entries)) {
      const accepted = '{"entries": [ … ]}, each a part, a set of readings, a round or a strike';
      return refuse(c, 400, { problem: '"entries" is missing.', read: asRead(body.value), accepted });
    }
    const { acknowledged, refused } = await store.appendRunOut(entries as readonly Json[]);
    if (acknowledged.length > 0) live.tellRunOut();
    // What is wrong with one entry is no fault of the request: the others are kept.
    return c.json({ acknowledged, refused });
  });
}

function addPictureApi(app: Hono, store: BuildStore): void {
  app.put('/api/pictures', limitBody(PICTURE_LIMIT), async (c) => {
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    if (pictureType(bytes) === null) {
      const read = `${bytes.length} bytes that begin like no such picture`;
      return refuse(c, 415, { problem: 'This is no picture that a build keeps.', read, accepted: 'JPEG, PNG or WebP' });
    }
    return c.json({ hash: await store.putPicture(bytes) }, 201);
  });

  app.get('/api/pictures/:hash', async (c) => {
    const hash = c.req.param('hash');
    const bytes = /^[0-9a-f]{64}$/.test(hash) ? await store.getPicture(hash) : undefined;
    const type = bytes && pictureType(bytes);
    if (!bytes || !type)
      return refuse(c, 404, {
        problem: 'There is no such picture.',
        read: asRead(hash),
        accepted: 'the SHA-256 of a kept picture',
      });
    // The name is the hash of the content, so the content never changes.
    return c.body(new Uint8Array(bytes), 200, {
      'Content-Type': type,
      'Cache-Control': 'private, max-age=31536000, immutable',
    });
  });
}

/** The name in a build file; the text may be at fault. */
function nameIn(text: string): string {
  try {
    const build: unknown = JSON.parse(text);
    return typeof build === 'object' && build !== null && 'name' in build ? String(build.name) : '';
  } catch {
    return '';
  }
}

function addArchiveApi(app: Hono, store: BuildStore): void {
  app.get('/api/archive', async (c) => {
    const content = await store.content();
    const name = archiveFileName(nameIn(content.build));
    // The name with letters of any script goes by RFC 8187.
    return c.body(packArchive(content), 200, {
      'Content-Type': 'application/zip',
      'Content-Disposition': `attachment; filename*=UTF-8''${encodeURIComponent(name)}`,
    });
  });
}

/** `GET` and `POST /api/log` and `/api/run-out`, `PUT /api/pictures`, `GET /api/pictures/:hash`, `GET /api/archive`. */
export function addRecordApi(app: Hono, store: BuildStore, live: Live): void {
  addLogApi(app, store, live);
  addRunOutApi(app, store, live);
  addPictureApi(app, store);
  addArchiveApi(app, store);
}
