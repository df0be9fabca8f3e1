import { plateWeb } from '@oddwheel/mechanics/plate/web';
import { FRACTION_UNIT, formatFor } from '@oddwheel/quantity/format';
import { CUTTING_RULES } from '@oddwheel/tables/cutting-rules';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { CutBy, Plate } from '../../../model/strength.ts';
import type { Used } from '../../geometry/types.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import type { BearingAt } from '../strength/bearings.ts';
import { onSeated, plainly, seated } from './common.ts';
import { sizesOf } from './ring-fit.ts';

/** Tried where the build does not say how a plate is cut. */
const USUAL: readonly CutBy[] = ['plasma cut', 'laser cut'];
const WORDS: Readonly<Record<CutBy, string>> = {
  'plasma cut': 'plasma',
  'laser cut': 'laser',
  'waterjet cut': 'waterjet',
  'oxy-fuel cut': 'oxy-fuel',
};

/** The hole that is left in the plate, or else that of the bearing. */
export function holeOf(at: BearingAt): { readonly size: number; readonly address: string } | null {
  const { seat } = at;
  if (seat.opening !== null) return { size: seat.opening, address: `${seat.address}/opening` };
  const { outside } = sizesOf(at);
  return outside === null ? null : { size: outside, address: `${seat.address}/outside` };
}

interface Tried {
  readonly by: CutBy;
  readonly used: Used;
  readonly web: number;
  readonly least: number;
  readonly leastWidth: number;
  readonly largestHole: number;
}

function tried(plate: Plate, hole: { readonly size: number; readonly address: string }, by: CutBy): Tried {
  const { web: times = Number.NaN, floor = 0 } = rowInSi(CUTTING_RULES, by);
  const row = `cutting-rules/${by}`;
  const input = { width: plate.width, hole: hole.size, thickness: plate.thickness / plate.sheets, times, floor };
  const output = plateWeb.run(input);
  const origins = {
    width: `${plate.address}/width`,
    hole: hole.address,
    thickness: plate.sheets === 1 ? `${plate.address}/thickness` : `${plate.address}/thickness over ${plate.sheets}`,
    times: row,
    floor: row,
  };
  return { by, used: { method: plateWeb, input, output, origins }, ...output };
}

const list = (words: readonly string[]): string =>
  words.length <= 1 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const EIGHTH = 0.0254 / 8;
const MM = 1e-3;
const ROUNDING = 1e-9;

/** A width to ask for: the next eighth of an inch or the next millimetre up, as the plate was typed. */
function nextWidth(width: number, plate: Plate, { model, show }: Scene): string {
  const step = plate.inches ? EIGHTH : MM;
  const next = Math.ceil(width / step - ROUNDING) * step;
  return plate.inches ? formatFor({ ...model.units, length: FRACTION_UNIT }, 'length', next) : show('length', next);
}

/** Least hole in a plate that is the shoulder of a bearing: half of the rings’ height stands free, so that the inner ring turns clear of it. */
export function leastShoulderHole(at: BearingAt): number | null {
  const { bore, outside } = sizesOf(at);
  return bore === null || outside === null ? null : (bore + outside) / 2;
}

function cures(at: BearingAt, plate: Plate, best: Tried, scene: Scene): string {
  const wider = `Make the plate at least ${nextWidth(best.leastWidth, plate, scene)} wide`;
  const { outside } = sizesOf(at);
  const smaller =
    best.largestHole > (leastShoulderHole(at) ?? 0) && (outside === null || best.largestHole < outside)
      ? `, or the hole smaller than the bearing, up to ${scene.show('length', Math.floor(best.largestHole / MM + ROUNDING) * MM)}: then the plate is its shoulder, and rings welded or bolted on are its seat`
      : '';
  return `${wider}${smaller}.`;
}

function onPlate(at: BearingAt, plate: Plate, scene: Scene): Outcome | null {
  const hole = holeOf(at);
  if (!hole) return null;
  const { show } = scene;
  if (hole.size >= plate.width)
    return plainly(
      false,
      () =>
        `A hole of ${show('length', hole.size)} leaves nothing of a plate ${show('length', plate.width)} wide. Make the plate wider.`,
    );
  const sheet = plate.thickness / plate.sheets;
  const asked = plate.cut === null ? USUAL : [plate.cut];
  const fit = asked.filter((by) => {
    const { thinnest = 0, thickest = Number.POSITIVE_INFINITY } = rowInSi(CUTTING_RULES, by);
    return sheet >= thinnest - ROUNDING && sheet <= thickest + ROUNDING;
  });
  if (fit.length === 0)
    return plainly(
      false,
      () =>
        `Sheet of ${show('length', sheet)} is outside what ${list(asked.map((by) => WORDS[by]))} cuts. Saw and bore it, or stack thinner sheets.`,
    );
  const all = fit.map((by) => tried(plate, hole, by));
  const best = all.reduce((a, b) => (b.least < a.least ? b : a));
  const over = all.filter(({ web, least }) => web >= least - ROUNDING);
  const rules = list(all.map(({ by, least }) => `for ${WORDS[by]}, ${show('length', least)}`));
  const beside = `The web beside the ${show('length', hole.size)} hole is ${show('length', best.web)} in ${show('length', sheet)} plate`;
  return measured(
    { name: 'web by the rule', value: best.least, kind: 'length', use: 'length' },
    { name: 'web', value: best.web, kind: 'length', use: 'length' },
    () => {
      if (over.length === 0) {
        const shop =
          best.by === 'laser cut' || best.by === 'waterjet cut' ? ` A shop may still ${WORDS[best.by]} it.` : '';
        return `${beside}: under the published rule ${rules}.${shop} ${cures(at, plate, best, scene)}`;
      }
      const under = all.filter((one) => !over.includes(one));
      return `${beside}: over the published rule ${list(over.map(({ by, least }) => `for ${WORDS[by]}, ${show('length', least)}`))}${under.length > 0 ? `, and under that ${list(under.map(({ by, least }) => `for ${WORDS[by]}, ${show('length', least)}`))}` : ''}.`;
    },
    [],
    () => [best.used],
    { capacity: 'above', demand: 'above' },
  );
}

/** What is left beside the hole can be cut without burning through or warping. */
export const plateCuts: Check = {
  id: 'plate.cut',
  title: 'web beside the bearing can be cut',
  consequence: 'misses a target',
  wanted: {
    reserve: 1,
    from: `${sourceOf(CUTTING_RULES, 'plasma cut')}; ${sourceOf(CUTTING_RULES, 'laser cut')}`,
  },
  atWorst: 'thin',
  perCase: false,
  subjects: seated,
  run: onSeated((at, scene) => (at.fitted.plate ? onPlate(at, at.fitted.plate, scene) : null)),
};
