/** Other tooth counts. */
import { chainLength } from '@oddwheel/mechanics/chain/length';
import type { Patch } from '../../document/patch.ts';
import type { Seat } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, put, range, type Step } from '../ladder.ts';
import { takenUp } from './adjusters.ts';
import { type Meshed, meshed, shaftOf, stagesOn } from './parts.ts';

type Chained = Meshed & { readonly stage: Extract<Meshed['stage'], { readonly kind: 'chain' }> };

const isChained = (one: Meshed): one is Chained => one.stage.kind === 'chain';

/** All chains of the path, in the order of power. */
export const chainsOf = ({ model }: Ground): readonly Chained[] =>
  model.stages.flatMap((_, k) => {
    const found = meshed(model, k);
    return found && isChained(found) ? [found] : [];
  });

/** Links that the centres ask for with other teeth; null where the sprockets overlap. */
function needed({ scene }: Ground, { stage }: Chained, pitch: number, driver: number, driven: number): number | null {
  const geometry = scene.stages.find((one) => one.stage === stage)?.chain;
  if (!geometry) return null;
  try {
    const { centreDistance } = geometry;
    return chainLength.run({ pitch, teethDriver: driver, teethDriven: driven, centreDistance }).links;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** A seat that carries its tooth count in its name gets the new one. */
export function renamed(ground: Ground, seat: Seat, from: number, to: number): readonly Patch[] {
  const name = seat.name.replace(new RegExp(`(^|\\D)${from}(?!\\d)`), `$1${to}`);
  return name === seat.name ? [] : [put(ground, `${seat.address}/name`, name)];
}

/**
 * Even links for a chain that asks for other ones, and its adjuster set so that its slack is as before; where none reaches, as many links as
 * go round.
 * @param free links that are fitted over those asked for
 */
function refitted(ground: Ground, stage: Chained['stage'], needed: number, free: number): readonly Patch[] {
  const exact = needed + free;
  const counts = [2 * Math.floor(exact / 2), 2 * Math.ceil(exact / 2)].sort(
    (a, b) => Math.abs(a - exact) - Math.abs(b - exact),
  );
  for (const count of counts) {
    const set = takenUp(ground, stage, count - exact);
    if (set) return [put(ground, `${stage.address}/links`, count), ...set];
  }
  return [put(ground, `${stage.address}/links`, 2 * Math.ceil(needed / 2))];
}

/** Other teeth of a chain, with its links and its slack to suit. Null where they cannot go. */
export function teethPatches(
  ground: Ground,
  chained: Chained,
  driver: number,
  driven: number,
  pitch = chained.stage.size.pitch,
): readonly Patch[] | null {
  const { stage } = chained;
  const { address, teeth, links } = stage;
  const [before, after] = [
    needed(ground, chained, stage.size.pitch, teeth.driver, teeth.driven),
    needed(ground, chained, pitch, driver, driven),
  ];
  if (before === null || after === null) return null;
  const fitted = links === null ? null : refitted(ground, stage, after, links - before);
  return [
    ...(driver === teeth.driver ? [] : [put(ground, `${address}/teeth/driver`, driver)]),
    ...(driven === teeth.driven ? [] : [put(ground, `${address}/teeth/driven`, driven)]),
    ...(fitted ?? []),
    ...renamed(ground, chained.driver, teeth.driver, driver),
    ...renamed(ground, chained.driven, teeth.driven, driven),
  ];
}

const diameterOf = (pitch: number, teeth: number): number => pitch / Math.sin(Math.PI / teeth) + pitch / 2;

function stepTo(ground: Ground, chained: Chained, driver: number, driven: number): Step[] {
  const { stage } = chained;
  const { teeth, size } = stage;
  if (Math.min(driver, driven) < LEAST_TEETH) return [];
  const patches = teethPatches(ground, chained, driver, driven);
  if (!patches || patches.length === 0) return [];
  return [
    {
      what: `Fit ${stage.name} with ${driver} : ${driven} teeth instead of ${teeth.driver} : ${teeth.driven}`,
      patches,
      size: Math.max(change(teeth.driver, driver), change(teeth.driven, driven)),
      needs: { swing: diameterOf(size.pitch, Math.max(driver, driven)) },
    },
  ];
}

const MOST_TEETH = 10;
/** Fewer run too rough: common practice. */
const LEAST_TEETH = 11;

/** Both sprockets larger, or smaller, at nearly the same ratio. */
function resized(ground: Ground, chained: Chained, sign: 1 | -1): readonly Ladder[] {
  const { driver, driven } = chained.stage.teeth;
  return ladder(
    'buy',
    range(1, MOST_TEETH, 1).flatMap((k) => {
      const to = driver + sign * k;
      return stepTo(ground, chained, to, Math.round((driven * to) / driver));
    }),
  );
}

/** Either sprocket alone larger (+1) or smaller (−1), which changes the ratio. */
export function eitherSprocket(ground: Ground, chained: Chained, sign: 1 | -1): readonly Ladder[] {
  const { driver, driven } = chained.stage.teeth;
  return [
    ...ladder(
      'buy',
      range(1, MOST_TEETH, 1).flatMap((k) => stepTo(ground, chained, driver + sign * k, driven)),
    ),
    ...ladder(
      'buy',
      range(1, 2 * MOST_TEETH, 1).flatMap((k) => stepTo(ground, chained, driver, driven + sign * k)),
    ),
  ];
}

/** One tooth or more to gear the chains higher (+1: less turns of the engine) or lower. */
export const geared =
  (...signs: readonly (1 | -1)[]) =>
  (ground: Ground): readonly Ladder[] =>
    signs.flatMap((sign) =>
      chainsOf(ground).flatMap((chained) => {
        const { driver, driven } = chained.stage.teeth;
        return [
          ...ladder(
            'buy',
            range(1, MOST_TEETH, 1).flatMap((k) => stepTo(ground, chained, driver + sign * k, driven)),
          ),
          ...ladder(
            'buy',
            range(1, 2 * MOST_TEETH, 1).flatMap((k) => stepTo(ground, chained, driver, driven - sign * k)),
          ),
        ];
      }),
    );

/** Chains that pull on the shaft of a finding, with larger sprockets: the same torque with less pull. */
export function lessPull(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  return shaft
    ? stagesOn(ground, shaft)
        .filter(isChained)
        .flatMap((one) => resized(ground, one, 1))
    : [];
}

/** The chain of a finding. */
export const chainOf = (ground: Ground): Chained | undefined =>
  chainsOf(ground).find(({ stage }) => stage.address === ground.finding.address);

/** The chain of a finding with larger sprockets. */
export function largerSprockets(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  return found ? resized(ground, found, 1) : [];
}

/** The chain of a finding with smaller sprockets, or a smaller driven one. */
export function smallerSprockets(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found) return [];
  const { driver, driven } = found.stage.teeth;
  return [
    ...resized(ground, found, -1),
    ...ladder(
      'buy',
      range(1, 2 * MOST_TEETH, 1).flatMap((k) => stepTo(ground, found, driver, driven - k)),
    ),
  ];
}
