import { listMethods, nearestMethods, reckon, reckonSchema } from '@oddwheel/build/reckon';
import { complain } from './complain.ts';
import { DONE, type ExitCode, type Io, print } from './io.ts';
import { table } from './table.ts';

async function readAll(io: Io): Promise<string> {
  if (io.stdin.isTTY) return '';
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of io.stdin)
    text += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
  return text + decoder.decode();
}

function list(io: Io, json: boolean): ExitCode {
  const methods = listMethods();
  if (json) print(io.stdout, [JSON.stringify({ format: 1, methods }, null, 2)]);
  else
    print(
      io.stdout,
      table(
        [{ title: 'Method' }, { title: 'Gives', wraps: true }],
        methods.map(({ id, gives }) => [id, gives]),
      ),
    );
  return DONE;
}

function unknown(io: Io, method: string): ExitCode {
  const near = nearestMethods(method);
  const accepted = near.length === 0 ? 'see oddwheel reckon --list' : `${near.join(', ')}; see oddwheel reckon --list`;
  return complain(io, 'reckon', [{ at: '', problem: 'There is no method of this name.', read: method, accepted }]);
}

/**
 * `reckon`: one method alone, JSON in and out.
 * @param method id of the method; may be left out with `--list` only
 */
export async function reckonVerb(
  io: Io,
  method: string | undefined,
  options: { list?: true; schema?: true; json?: true },
): Promise<ExitCode> {
  if (options.list) return list(io, options.json === true);
  if (method === undefined)
    return complain(io, 'reckon', [
      { at: '', problem: 'Which method?', read: 'nothing', accepted: 'a method of oddwheel reckon --list' },
    ]);
  const schema = reckonSchema(method);
  if (!schema) return unknown(io, method);
  if (options.schema) {
    print(io.stdout, [JSON.stringify(schema, null, 2)]);
    return DONE;
  }
  const text = await readAll(io);
  let input: unknown;
  try {
    // No input at all is an empty one: the method then names everything that it wants.
    input = text.trim() === '' ? {} : JSON.parse(text);
  } catch (error) {
    const problem = `Standard input is not JSON: ${error instanceof Error ? error.message : String(error)}`;
    const read = text.length > 60 ? `${text.slice(0, 59)}…` : text;
    return complain(io, method, [
      { at: '', problem, read, accepted: 'JSON, as oddwheel reckon METHOD --schema describes it' },
    ]);
  }
  const result = reckon(method, input);
  if (!result.ok)
    return complain(
      io,
      method,
      result.faults.map(({ input: at, problem, read, accepted }) => ({ at, problem, read, accepted })),
    );
  print(io.stdout, [JSON.stringify(result.output, null, 2)]);
  return DONE;
}
