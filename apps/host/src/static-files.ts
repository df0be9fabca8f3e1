/** Files of the page from one folder, and nothing else. */
import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
};

export interface StaticFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  /** The name carries a hash of the content, so the browser may keep the file. */
  readonly keep: boolean;
}

/** Segments of a decoded path that stay inside a folder; null when one would leave it, or is hidden. */
function safeSegments(path: string): string[] | null {
  let decoded: string;
  try {
    decoded = decodeURIComponent(path);
  } catch {
    return null;
  }
  if (/[\0\\]/.test(decoded)) return null;
  const segments = decoded.split('/').filter((segment) => segment !== '');
  return segments.some((segment) => segment.startsWith('.') || segment.includes(':')) ? null : segments;
}

/**
 * Reads the file that a URL path names.
 * @param folder folder of the page; a link that leads out of it is not followed
 * @param path path of the URL, still encoded; "/" is index.html
 * @returns null when there is no such file to serve
 */
export async function readStatic(folder: string, path: string): Promise<StaticFile | null> {
  const segments = safeSegments(path);
  if (!segments) return null;
  const name = segments.length === 0 ? 'index.html' : segments.join(sep);
  const type = TYPES[extname(name).toLowerCase()];
  if (type === undefined) return null;
  try {
    const base = await realpath(folder);
    const real = await realpath(join(base, name));
    if (!real.startsWith(base + sep)) return null;
    return { bytes: new Uint8Array(await readFile(real)), type, keep: segments[0] === 'assets' };
  } catch {
    return null;
  }
}
