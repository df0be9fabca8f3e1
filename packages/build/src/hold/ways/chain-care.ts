/** Chains and belts beyond their size: oiling, closing link, guard, and the width of a belt. */
import { BELT_PROFILES } from '@oddwheel/tables/belt-profiles';
import { rowInSi } from '@oddwheel/tables/table';
import {
  change,
  type Ground,
  inInches,
  type Ladder,
  ladder,
  put,
  type Step,
  single,
  tradeText,
  typedAt,
} from '../ladder.ts';
import { stageOf } from './parts.ts';
import { chainOf, eitherSprocket } from './train.ts';

const OILING = ['drip or brush', 'oil bath or stream'] as const;
const OILED = {
  'drip or brush': 'by drip or brush, often',
  'oil bath or stream': 'by an oil bath or stream, in a closed case',
} as const;

/** Better oiling, the least work first. */
export function oiledBetter(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found) return [];
  const { address, name, oiled } = found.stage;
  if (oiled === 'sealed rings' || oiled === 'oil bath or stream') return [];
  return ladder(
    're-make',
    OILING.filter((one) => one !== oiled).map(
      (one, k): Step => ({
        what: `Oil ${name} ${OILED[one]}`,
        patches: [put(ground, `${address}/oiled`, one)],
        size: 0.1 + 0.2 * k,
      }),
    ),
  );
}

/** A riveted link in the place of a joining link, which slips on and is weaker. */
export function riveted(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (found?.stage.joint !== 'joining link') return [];
  return single('adjust', {
    what: `Close ${found.stage.name} with a riveted link instead of a joining link`,
    patches: [put(ground, `${found.stage.address}/joint`, 'riveted link')],
    size: 0.05,
  });
}

/** A guard that holds a broken end. */
export function guarded(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found || found.stage.breaks === 'its guard') return [];
  return single('re-make', {
    what: `Close ${found.stage.name} in a steel guard that holds a broken end`,
    patches: [put(ground, `${found.stage.address}/breaks`, 'its guard')],
    size: 0.3,
  });
}

/** One sprocket larger by itself, which changes the ratio. */
export const eitherLarger = (ground: Ground): readonly Ladder[] => {
  const found = chainOf(ground);
  return found ? eitherSprocket(ground, found, 1) : [];
};

/** Usual widths of belts, mm and inches: common practice. */
const WIDTHS = [10, 16, 20, 25, 32, 40, 50, 60, 75, 85, 100, 115, 125, 150].map((mm) => mm * 1e-3);
const WIDTHS_INCH = [0.25, 0.375, 0.5, 0.75, 1, 1.5, 2, 3, 4, 5].map((inch) => inch * 0.0254);

/** A wider belt, and one of a profile of the same pitch that bears more. */
export function betterBelt(ground: Ground): readonly Ladder[] {
  const stage = stageOf(ground);
  if (stage?.kind !== 'belt') return [];
  const { address, name, width, profile, pitch } = stage;
  const at = `${address}/width`;
  const pulls = (key: string): number => rowInSi(BELT_PROFILES, key).at0 ?? Number.NaN;
  const known = profile !== null && Object.hasOwn(BELT_PROFILES.rows, profile);
  const stronger = known
    ? Object.keys(BELT_PROFILES.rows).filter(
        (key) => Math.abs((rowInSi(BELT_PROFILES, key).pitch ?? 0) / pitch - 1) < 0.01 && pulls(key) > pulls(profile),
      )
    : [];
  return [
    ...(width === null
      ? []
      : ladder(
          'buy',
          (inInches(ground, at) ? WIDTHS_INCH : WIDTHS)
            .filter((si) => si > width * 1.001)
            .map((si): Step => {
              const text = tradeText(ground, at, si);
              return {
                what: `Run ${name} on a belt ${text} wide instead of ${typedAt(ground, at)}, with pulleys to suit`,
                patches: [put(ground, at, text)],
                size: change(width, si),
              };
            }),
        )),
    ...stronger.flatMap((key) =>
      single('buy', {
        what: `Run ${name} on profile ${key} instead of ${profile}, with pulleys to suit`,
        patches: [put(ground, `${address}/profile`, key)],
        size: 0.3,
      }),
    ),
  ];
}
