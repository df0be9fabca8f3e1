import { findTrains, RatiosError, roadSpeedOf } from '@oddwheel/build/ratios/find';
import { SwapError, swapTable } from '@oddwheel/build/ratios/swap';
import { ORDER_KEYS, type OrderKey, TARGET_KEYS, type TargetKey } from '@oddwheel/build/ratios/types';
import { USUAL_REQUEST } from '@oddwheel/build/ratios/usual';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { SearchError } from '@oddwheel/mechanics/ratio/search/search';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { CAUTION } from '../check/report.ts';
import { type Complaint, complain } from '../complain.ts';
import { DONE, type ExitCode, type Io, print } from '../io.ts';
import { readBuildText } from '../read-folder.ts';
import { WIDTH } from '../table.ts';
import { wrap } from '../text-width.ts';
import { swapLines, trainLines } from './lines.ts';

export interface RatiosOptions {
  readonly best?: string;
  readonly order?: string;
  readonly targets?: string;
  readonly shelf?: true;
  readonly swap?: string;
  readonly teeth?: string;
  readonly speed?: string;
  readonly json?: true;
}

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly complaint: Complaint };

/** Teeth to either side of the drawn ones that a swap table shows. */
const BESIDE = 4;

/** Words parted by commas, each of them known. */
function words<T extends string>(
  at: string,
  text: string | undefined,
  known: readonly T[],
  usual: readonly T[],
): Read<readonly T[]> {
  if (text === undefined) return { ok: true, value: usual };
  const read = text.split(',').map((word) => word.trim());
  const value = read.flatMap((word) => known.filter((one) => one === word));
  if (value.length === read.length && new Set(value).size === value.length) return { ok: true, value };
  return {
    ok: false,
    complaint: { at, problem: 'A list of words, parted by commas, each once.', read: text, accepted: known.join(', ') },
  };
}

function whole(at: string, text: string | undefined, usual: number, most: number): Read<number> {
  const value = text === undefined ? usual : Number(text);
  if (Number.isInteger(value) && value >= 1 && value <= most) return { ok: true, value };
  return { ok: false, complaint: { at, problem: 'A whole number.', read: text ?? '', accepted: `1 to ${most}` } };
}

/** "13..19", "shelf"; null: around the drawn teeth. */
function teethOf(text: string | undefined): Read<'shelf' | readonly [number, number] | null> {
  if (text === undefined) return { ok: true, value: null };
  if (text === 'shelf') return { ok: true, value: 'shelf' };
  const [, low, high] = /^(\d{1,3})\.\.(\d{1,3})$/.exec(text) ?? [];
  if (low !== undefined && high !== undefined && Number(low) <= Number(high))
    return { ok: true, value: [Number(low), Number(high)] };
  return {
    ok: false,
    complaint: { at: '--teeth', problem: 'Teeth to try.', read: text, accepted: 'shelf, or a range such as 13..19' },
  };
}

function speedOf(text: string | undefined, usual: number): Read<number> {
  if (text === undefined) return { ok: true, value: usual };
  const parsed = parseQuantity(text, 'speed');
  if (parsed.ok && parsed.si > 0) return { ok: true, value: parsed.si };
  const problem = parsed.ok ? 'The speed must be above zero.' : parsed.problem;
  const accepted = parsed.ok ? '40 km/h' : parsed.accepted;
  return { ok: false, complaint: { at: '--speed', problem, read: text, accepted } };
}

function finish<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Infinity has no place in JSON: an open end is null. */
const json = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) => (typeof one === 'number' && !Number.isFinite(one) ? null : one), 2);

/** `--swap STAGE` or `STAGE/driver`: one table for each end asked for. */
function swaps(session: Session, asked: string, teeth: 'shelf' | readonly [number, number] | null, roadSpeed: number) {
  const [stageId = '', end] = asked.split('/');
  const stage = session.evaluation.model.stages.find(({ id }) => id === stageId);
  const ends: readonly ('driver' | 'driven')[] = end === 'driver' || end === 'driven' ? [end] : ['driver', 'driven'];
  return ends.map((one) => {
    const drawn = stage && 'teeth' in stage ? stage.teeth[one] : 0;
    const range = teeth ?? ([drawn - BESIDE, drawn + BESIDE] as const);
    return { name: stage?.name ?? stageId, rows: finish(swapTable(session, stageId, one, range, roadSpeed)) };
  });
}

/** `ratios`: the best trains of a build, or what each sprocket would do in one place. The folder is only read. */
export async function ratios(io: Io, folder: string, options: RatiosOptions): Promise<ExitCode> {
  const read = await readBuildText(io, folder);
  if (!read.ok) return read.code;
  const opened = openSession(read.text, { ends: 'not yet' });
  if (!opened.ok)
    return complain(
      io,
      read.path,
      opened.faults.map((fault) => ({ at: fault.address, ...fault })),
    );
  const { session } = opened;
  const best = whole('--best', options.best, USUAL_REQUEST.best, 1000);
  const order = words<OrderKey>('--order', options.order, ORDER_KEYS, USUAL_REQUEST.order);
  const targets = words<TargetKey>('--targets', options.targets, TARGET_KEYS, []);
  const teeth = teethOf(options.teeth);
  const speed = speedOf(options.speed, roadSpeedOf(session));
  const complaints = [best, order, targets, teeth, speed].flatMap((one) => (one.ok ? [] : [one.complaint]));
  if (!best.ok || !order.ok || !targets.ok || !teeth.ok || !speed.ok) return complain(io, 'ratios', complaints);
  const { show } = session.evaluation.middle.scene;
  try {
    if (options.swap !== undefined) {
      const found = swaps(session, options.swap, teeth.value, speed.value);
      const lines = found.flatMap(({ name, rows }) => swapLines(name, rows, speed.value, show));
      print(io.stdout, options.json ? [json(found.flatMap(({ rows }) => rows))] : [...lines, ...wrap(CAUTION, WIDTH)]);
      return DONE;
    }
    const request = {
      ...USUAL_REQUEST,
      best: best.value,
      order: order.value,
      targets: targets.value,
      shelfOnly: options.shelf === true,
    };
    const answer = finish(findTrains(session, request, speed.value));
    print(io.stdout, options.json ? [json(answer)] : trainLines(answer, speed.value, show));
    return DONE;
  } catch (error) {
    if (error instanceof SearchError || error instanceof RatiosError || error instanceof SwapError)
      return complain(io, read.path, [{ at: '', problem: error.message, read: folder, accepted: 'see above' }]);
    throw error;
  }
}
