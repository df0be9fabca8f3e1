/** A host on a temporary folder, and plain requests to it with any header and path. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const DEMO = fileURLToPath(new URL('../../../examples/marsh-hauler/', import.meta.url));

/** Text of the demo build. */
export const demoText = (): string => readFileSync(join(DEMO, 'build.json'), 'utf8');

export interface TestFolders {
  readonly folder: string;
  readonly benchDir: string;
  readonly remove: () => void;
}

/** A copy of the demo build and a small page. */
export function testFolders(): TestFolders {
  const parent = mkdtempSync(join(tmpdir(), 'oddwheel-host-'));
  const folder = join(parent, 'build');
  const benchDir = join(parent, 'page');
  cpSync(DEMO, folder, { recursive: true });
  mkdirSync(join(benchDir, 'assets'), { recursive: true });
  writeFileSync(join(benchDir, 'index.html'), '<title>bench</title>');
  writeFileSync(join(benchDir, 'assets/page.js'), 'export {};');
  writeFileSync(join(parent, 'secret.txt'), 'secret');
  return { folder, benchDir, remove: () => rmSync(parent, { recursive: true, force: true }) };
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** Sends a request exactly as given: the path is not tidied and `Host` may be anything. */
export function ask(
  url: string,
  path: string,
  {
    method = 'GET',
    headers = {},
    body,
  }: { method?: string; headers?: Record<string, string>; body?: string | Uint8Array } = {},
): Promise<Answer> {
  const { hostname, port } = new URL(url);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, path, method, headers, agent: false }, (answer) => {
      let text = '';
      answer.setEncoding('utf8');
      answer.on('data', (chunk: string) => {
        text += chunk;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
      answer.on('error', reject);
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const JSON_TYPE = { 'Content-Type': 'application/json' };

/** Sends JSON and reads JSON. */
export async function send(
  url: string,
  path: string,
  body: unknown,
  headers: Record<string, string> = {},
): Promise<{ readonly status: number; readonly json: ReturnType<typeof JSON.parse> }> {
  const answer = await ask(url, path, {
    method: 'POST',
    headers: { ...JSON_TYPE, ...headers },
    body: JSON.stringify(body),
  });
  return { status: answer.status, json: JSON.parse(answer.text) };
}

export interface Events {
  /** Waits for the next event of this name that fits. */
  readonly next: (
    event: string,
    fits?: (data: ReturnType<typeof JSON.parse>) => boolean,
  ) => Promise<ReturnType<typeof JSON.parse>>;
  readonly close: () => void;
}

/** Listens to the events of a host. */
export async function listenTo(url: string): Promise<Events> {
  const stop = new AbortController();
  const answer = await fetch(new URL('/api/events', url), { signal: stop.signal });
  if (!answer.body || answer.headers.get('content-type') !== 'text/event-stream')
    throw new Error(`no events: ${answer.status}`);
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  const next: Events['next'] = async (event, fits = () => true) => {
    for (;;) {
      const end = rest.indexOf('\n\n');
      if (end >= 0) {
        const [, name, data] = /^event: (\w+)\ndata: (.*)$/.exec(rest.slice(0, end)) ?? [];
        rest = rest.slice(end + 2);
        const value = JSON.parse(data ?? 'null');
        if (name === event && fits(value)) return value;
        continue;
      }
      const { done, value } = await reader.read();
      if (done) throw new Error('The events ended.');
      rest += value;
    }
  };
  return { next, close: () => stop.abort() };
}
