/** Bodies of requests: checked for shape here, for meaning by the store. */
import type { Patch } from '@oddwheel/build/document/patch';
import type { SaveRequest, StepRequest } from '@oddwheel/store/store';
import type { Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { asRead, type Problem, refuse } from './problem.ts';

const MIB = 1024 * 1024;
/** Largest body of an edit, bytes. */
export const EDIT_LIMIT = MIB;

/** Refuses a body above a limit in bytes. */
export const limitBody = (limit: number) =>
  bodyLimit({
    maxSize: limit,
    onError: (c) =>
      refuse(c, 413, {
        problem: 'The body is too large.',
        read: `${c.req.header('content-length') ?? `more than ${limit}`} bytes`,
        accepted: `at most ${limit / MIB} MiB`,
      }),
  });

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: Problem };

const bad = (problem: string, read: unknown, accepted: string): { ok: false; error: Problem } => ({
  ok: false,
  error: { problem, read: asRead(read), accepted },
});

type JsonObject = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a body that must be a JSON object. */
export async function readJsonObject(c: Context): Promise<Read<JsonObject>> {
  let value: unknown;
  try {
    value = JSON.parse(await c.req.text());
  } catch (error) {
    return bad('The body is not JSON.', error instanceof Error ? error.message : error, 'a JSON object');
  }
  return isObject(value) ? { ok: true, value } : bad('The body is not a JSON object.', value, 'a JSON object');
}

/** The name under which a device makes its changes; it comes into the history as it is. */
const DEVICE = /^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,63}$/u;

/** Reads a device's name; null when none is given. */
export function readDevice(value: unknown): Read<string | null> {
  if (value === undefined) return { ok: true, value: null };
  if (typeof value === 'string' && DEVICE.test(value)) return { ok: true, value };
  return bad('"device" is no name of a device.', value, 'up to 64 letters, digits, spaces, points and hyphens');
}

/** Reads `{base, device?}`, and refuses other keys. */
export function readStep(body: JsonObject, keys: readonly string[] = []): Read<StepRequest> {
  const known = ['base', 'device', ...keys];
  const other = Object.keys(body).find((key) => !known.includes(key));
  if (other !== undefined) return bad(`"${other}" is not known here.`, other, known.join(', '));
  if (typeof body.base !== 'string' || !/^[0-9a-f]{64}$/.test(body.base))
    return bad('"base" must name the text that the change was made from.', body.base, 'its SHA-256 as 64 hex digits');
  const device = readDevice(body.device);
  if (!device.ok) return device;
  return { ok: true, value: { base: body.base, ...(device.value === null ? {} : { who: device.value }) } };
}

function isSource(source: unknown): boolean {
  if (!isObject(source) || typeof source.text !== 'string') return false;
  const { head, gaps } = source;
  const gapsFit = Array.isArray(gaps) && gaps.length === 2 && gaps.every((gap) => typeof gap === 'string');
  return (head === undefined || typeof head === 'string') && (gaps === undefined || gapsFit);
}

function isPatch(value: unknown): value is Patch {
  if (!isObject(value) || typeof value.at !== 'string') return false;
  if (value.op === 'remove') return true;
  const { before, source } = value;
  const beforeFits = before === undefined || before === null || typeof before === 'string';
  return value.op === 'set' && value.value !== undefined && beforeFits && (source === undefined || isSource(source));
}

/** Reads `{base, patches, name, device?}`. */
export function readEdit(body: JsonObject): Read<SaveRequest> {
  const step = readStep(body, ['patches', 'name']);
  if (!step.ok) return step;
  const { patches, name } = body;
  if (typeof name !== 'string' || name.trim() === '' || name.length > 200)
    return bad(
      '"name" must say what was done.',
      name,
      'up to 200 characters, for example "Chain 1, driver teeth 17 → 16"',
    );
  if (!Array.isArray(patches) || patches.length === 0)
    return bad('"patches" is empty or missing.', patches, PATCH_EXAMPLE);
  const wrong = patches.find((patch) => !isPatch(patch));
  if (wrong !== undefined) return bad('An entry of "patches" is no patch.', wrong, PATCH_EXAMPLE);
  return { ok: true, value: { ...step.value, patches: patches.filter(isPatch), name } };
}

const PATCH_EXAMPLE = '[{"op": "set", "at": "/path/stages/chain-1/teeth/driver", "value": 16}]';
