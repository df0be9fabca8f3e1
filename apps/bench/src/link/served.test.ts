import { describe, expect, it } from 'vitest';
import { servedByHost } from './served.ts';

const answers = (status: number, body: string) => async () => new Response(body, { status });
const http = { protocol: 'http:' };

describe('what served the page', () => {
  it('is the host when it answers with a build, or says what is wrong', async () => {
    const build = JSON.stringify({ text: '{}', hash: 'ab', undo: null, redo: null });
    expect(await servedByHost(http, answers(200, build))).toBe(true);
    expect(await servedByHost(http, answers(404, '{"error": {"problem": "There is no build.json."}}'))).toBe(true);
  });

  it('is a plain folder when something else answers, also with a page for every address', async () => {
    expect(await servedByHost(http, answers(404, 'not found'))).toBe(false);
    expect(await servedByHost(http, answers(200, '<!doctype html>'))).toBe(false);
    expect(await servedByHost(http, answers(200, '{}'))).toBe(false);
    expect(await servedByHost(http, answers(404, '{"error": "not found"}'))).toBe(false);
  });

  it('is nobody when the page comes from the disk, which then is not asked', async () => {
    const never = () => Promise.reject(new Error('asked'));
    expect(await servedByHost({ protocol: 'file:' }, never)).toBe(false);
  });

  it('is taken for the host when nothing answers and nothing is known', async () => {
    expect(await servedByHost(http, () => Promise.reject(new TypeError('no network')))).toBe(true);
  });
});
