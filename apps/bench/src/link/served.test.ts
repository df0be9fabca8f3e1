import { describe, expect, it } from 'vitest';
import { servedBy } from './served.ts';

const answers = (status: number, body: string) => async () => new Response(body, { status });
const http = { protocol: 'http:' };

describe('what served the page', () => {
  it('is the host when it answers with a build, or says what is wrong', async () => {
    const build = JSON.stringify({ text: '{}', hash: 'ab', undo: null, redo: null });
    expect(await servedBy(http, answers(200, build))).toBe('host');
    expect(await servedBy(http, answers(404, '{"error": {"problem": "There is no build.json."}}'))).toBe('host');
  });

  it('is the host of an empty folder when that says so', async () => {
    const body = '{"error": {"problem": "There is no build in this folder yet.", "read": "store.no-build"}}';
    expect(await servedBy(http, answers(404, body))).toBe('empty host');
  });

  it('is a plain folder when something else answers, also with a page for every address', async () => {
    expect(await servedBy(http, answers(404, 'not found'))).toBe('none');
    expect(await servedBy(http, answers(200, '<!doctype html>'))).toBe('none');
    expect(await servedBy(http, answers(200, '{}'))).toBe('none');
    expect(await servedBy(http, answers(404, '{"error": "not found"}'))).toBe('none');
  });

  it('is nobody when the page comes from the disk, which then is not asked', async () => {
    const never = () => Promise.reject(new Error('asked'));
    expect(await servedBy({ protocol: 'file:' }, never)).toBe('none');
  });

  it('is taken for the host when nothing answers and nothing is known', async () => {
    expect(await servedBy(http, () => Promise.reject(new TypeError('no network')))).toBe('host');
  });
});
