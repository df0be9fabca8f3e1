import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Json } from '@oddwheel/build/document/json';
import { readReadings } from '@oddwheel/build/true/readings-text';
import { lastOf, nextCounter, readTrue } from '@oddwheel/build/true/record';
import { addTrue } from '@oddwheel/store/true-record';
import { complain } from '../complain.ts';
import { DONE, type ExitCode, type Io, print } from '../io.ts';
import { readBuildText } from '../read-folder.ts';

export interface AddOptions {
  readonly set?: string;
  readonly readings?: string;
  readonly strike?: string;
  readonly device: string;
  readonly taken?: string;
  readonly json?: true;
}

/** What one entry is about: a part by its seats, a set by its station, a round by its way. */
function kindOf(body: { readonly [key: string]: Json }): string {
  if ('seats' in body) return 'true-part';
  return 'way' in body ? 'true-round' : 'true-set';
}

/** `true add`: puts one part, set of readings, round or strike on the record of a build folder. */
export async function trueAdd(io: Io, folder: string, options: AddOptions): Promise<ExitCode> {
  const build = await readBuildText(io, folder);
  if (!build.ok) return build.code;
  const body = await bodyOf(io, options);
  if (!body.ok) return body.code;
  const logged = options.taken ?? new Date().toISOString();
  const result = await addTrue(resolve(io.cwd, folder), (existing) => {
    const id = `${options.device}.${nextCounter(existing, options.device)}`;
    const kind = options.strike === undefined ? kindOf(body.body) : 'strike';
    const part = typeof body.body.part === 'string' ? body.body.part : undefined;
    const after = part === undefined || kind === 'true-part' ? null : lastOf(readTrue(existing), part);
    return [{ id, kind, taken: logged, logged, after, body: body.body }];
  });
  if (!result.ok)
    return complain(
      io,
      folder,
      result.faults.map(({ address, problem, read, accepted }) => ({
        at: address.replace(/^\/0(\/body)?/, ''),
        problem,
        read,
        accepted,
      })),
    );
  const [id] = result.added;
  print(io.stdout, [options.json ? JSON.stringify({ format: 1, added: result.added }) : `Kept as ${id}.`]);
  return DONE;
}

type Body =
  | { readonly ok: true; readonly body: { readonly [key: string]: Json } }
  | { readonly ok: false; readonly code: ExitCode };

async function bodyOf(io: Io, { set, readings, strike }: AddOptions): Promise<Body> {
  if (strike !== undefined) return { ok: true, body: { of: strike } };
  const text = set ?? (await standardInput(io));
  const body = parsed(text);
  if (!body)
    return {
      ok: false,
      code: complain(io, 'true add', [
        {
          at: '',
          problem: 'This is no JSON object.',
          read: text.slice(0, 60),
          accepted: 'such as { "part": "jackshaft", "station": "260 mm", … }',
        },
      ]),
    };
  if (readings === undefined) return { ok: true, body };
  let dial: string;
  try {
    dial = await readFile(resolve(io.cwd, readings), 'utf8');
  } catch {
    const complaint = {
      at: '',
      problem: 'The file of readings cannot be read.',
      read: readings,
      accepted: 'a CSV file: mark in degrees, dial',
    };
    return { ok: false, code: complain(io, 'true add', [complaint]) };
  }
  const read = readReadings(dial);
  if (!read.ok)
    return {
      ok: false,
      code: complain(
        io,
        readings,
        read.faults.map((fault) => ({
          at: '',
          line: fault.line ?? 1,
          problem: fault.problem,
          read: fault.read,
          accepted: fault.accepted,
        })),
      ),
    };
  return { ok: true, body: { ...body, readings: read.readings.map(({ at, value }) => ({ at, value })) } };
}

function parsed(text: string): { readonly [key: string]: Json } | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as { [key: string]: Json })
      : undefined;
  } catch {
    return undefined;
  }
}

async function standardInput(io: Io): Promise<string> {
  if (io.stdin.isTTY) return '';
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of io.stdin)
    text += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
  return text + decoder.decode();
}
