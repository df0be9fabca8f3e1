import { blankRow } from '../model/rows.ts';
import { openSession } from '../session.ts';
import type { Session } from '../session-types.ts';
import { type Laid, type Placed, place } from './place.ts';
import { type ReadSix, readSix, topGear, wantedOverall } from './read-six.ts';
import { chainsFor, RATIO_RANGE, type Split, splits } from './split.ts';
import type { BeginResult, Choice, FieldFault, SixFields, SixKey } from './types.ts';
import { writeBuild } from './write-build.ts';

/** Best splits that are laid out before the layout is given up. */
const TRIED = 400;

const figure = (x: number): string => String(Number(x.toPrecision(3)));
const toOne = (ratio: number): string => `${ratio.toFixed(2)} : 1`;

/** Greatest torque of the gearbox output, N·m: at the ends that ask most of the chains, or in the middle of them. */
function outputTorque(read: ReadSix, end: 'hi' | 'si'): number {
  return read.peakTorque * read.primary[end] * Math.max(...read.gears.map((gear) => gear[end])) * read.boxEfficiency;
}

interface Found {
  readonly split: Split;
  readonly laid: Laid;
  /** The chains hold at the worse ends of what is not known, too. */
  readonly atWorst: boolean;
}

type Why = Extract<Placed, { readonly ok: false }>['why'] | 'chain';

/** The first split, best first, that can be laid out; else what stood in the way of most. */
function search(read: ReadSix, wanted: number): Found | Why | null {
  const clearance = blankRow('brief-defaults/clearance').hi;
  const all = splits(wanted).slice(0, TRIED);
  const reasons = new Map<Why, number>();
  for (const end of ['hi', 'si'] as const) {
    const torque = outputTorque(read, end);
    for (const split of all) {
      const chains = chainsFor(split, torque);
      const placed: { readonly ok: false; readonly why: Why } | Placed = chains
        ? place(read, split, chains, clearance)
        : { ok: false, why: 'chain' };
      if (placed.ok) return { split, laid: placed.laid, atWorst: end === 'hi' };
      reasons.set(placed.why, (reasons.get(placed.why) ?? 0) + 1);
    }
  }
  return [...reasons].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

const fault = (field: SixKey, address: string, problem: string, read: string, accepted: string): FieldFault => ({
  code: 'begin.no-layout',
  field,
  address,
  problem,
  read,
  accepted,
});

/** Says which field to change where no layout can be had. */
function refusal(why: Why | null, wanted: number, six: SixFields): FieldFault {
  const speed = (problem: string, accepted: string): FieldFault =>
    fault('speed', '/brief/targets/topSpeed', problem, six.speed, accepted);
  const most = Math.floor(RATIO_RANGE.most);
  if (wanted > RATIO_RANGE.most)
    return speed(
      `The wanted road speed asks the path for ${toOne(wanted)}, more than two chains and a bevel pair make, ${most} : 1.`,
      'A higher road speed, or a gearbox with a larger reduction in top gear.',
    );
  if (wanted < RATIO_RANGE.least)
    return speed(
      `The wanted road speed asks the path for ${toOne(wanted)}; this layout slows down and does not speed up.`,
      'A lower road speed, a smaller wheel, or a gearbox with a smaller reduction in top gear.',
    );
  switch (why) {
    case 'wheel':
      return fault(
        'tyre',
        '/brief/wheel/tyre',
        'The sprocket beside the wheel would come too near the ground at every split of the reduction.',
        six.tyre,
        'A larger wheel, or a higher road speed.',
      );
    case 'chain':
    case 'shaft':
    case 'bevel':
      return fault(
        'torque',
        '/brief/engine/peaks/torque',
        `In first gear the engine pulls harder than ${why === 'chain' ? 'the largest single chain' : why === 'shaft' ? 'a 55 mm shaft' : 'the largest usual bevel pair'} holds.`,
        six.torque,
        'A smaller torque, a higher road speed, or the counted gear ratios in place of ranges.',
      );
    default:
      return fault(
        'tyre',
        '/brief/wheel/tyre',
        'No place was found where everything stays clear of this tyre.',
        six.tyre,
        'Another wheel size, or a higher road speed.',
      );
  }
}

const pair = ({ driver, driven }: { readonly driver: number; readonly driven: number }): string =>
  `${driver}:${driven}`;

function choicesOf(read: ReadSix, wanted: number, { split, laid, atWorst }: Found): readonly Choice[] {
  const pullWhy = atWorst
    ? 'the smallest size whose strength holds the pull in first gear with a reserve of 2.5, room for a start with a shock, also at the worse ends of what is not known'
    : 'the smallest size whose strength holds the pull in first gear with a reserve of 2.5, room for a start with a shock, in the middle of what is not known; at the worse ends it may not';
  const chain = (what: string, { size, links, teeth }: Laid['chain1']): Choice => ({
    what,
    chosen: `${pair(teeth)} on ${size.key}, ${links} links`,
    why: `${pullWhy}; links even, and shared with as few teeth as can be`,
  });
  return [
    {
      what: 'Reduction from output to wheel',
      chosen: toOne(split.ratio),
      why: `${toOne(wanted)} brings peak power at the wanted road speed in top gear; of the splits as near as this one, wear spreads most evenly here, with the smallest sprockets of 15 teeth or more`,
    },
    chain('Chain 1', laid.chain1),
    {
      what: 'Bevel pair',
      chosen: `${pair(split.bevel)}, module ${figure(laid.bevel.module * 1000)} mm`,
      why: 'cut without undercut; smallest usual module for the torque',
    },
    chain('Chain 2', laid.chain2),
    {
      what: 'Places',
      chosen:
        'output along the vehicle ahead of the wheel, Shaft A above it, Shaft B across above the tyre, Chain 2 on the left',
      why: `centres fit the links exactly, the axes of the pair meet, the wheel turns forward, and every part stays clear of a tyre ${figure(2 * read.tyreRadius)} m high`,
    },
  ];
}

export type LaidOut =
  | (Extract<BeginResult, { readonly ok: true }> & { readonly session: Session })
  | Extract<BeginResult, { readonly ok: false }>;

/**
 * A first build from six fields: overall reduction, its split over two chains and a bevel pair with parts that exist, and
 * a layout that closes. Pure; the same six fields give the same text.
 *
 * @returns the text of a build file with its session; or faults, each with its field
 */
export function layOutBuild(typed: SixFields): LaidOut {
  const input = readSix(typed);
  if (!input.ok) return input;
  const { six, read } = input;
  const box = topGear(read);
  const wanted = wantedOverall(read) / box;
  const inRange = wanted <= RATIO_RANGE.most && wanted >= RATIO_RANGE.least;
  const found = inRange ? search(read, wanted) : null;
  if (found === null || typeof found === 'string') return { ok: false, faults: [refusal(found, wanted, six)] };
  const { split } = found;
  const text = writeBuild(six, read, split, found.laid);
  const opened = openSession(text);
  // The pieces were made to fit: a fault here is one of this program, and is told as it is.
  if (!opened.ok)
    throw new Error(
      `The first layout has faults: ${opened.faults.map((f) => `${f.address}: ${f.problem}`).join('; ')}`,
    );
  return {
    ok: true,
    text,
    overall: box * split.ratio,
    path: split.ratio,
    train: `chain ${pair(split.chain1)}, bevel ${pair(split.bevel)}, chain ${pair(split.chain2)}`,
    choices: choicesOf(read, wanted, found),
    session: opened.session,
  };
}
