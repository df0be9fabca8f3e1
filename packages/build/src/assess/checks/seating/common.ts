import { formatQuantity, THIN_SPACE, TRUE_MINUS } from '@oddwheel/quantity/format';
import type { Check, Outcome, Scene } from '../check.ts';
import { type BearingAt, bearingAt, bearingSubjects } from '../strength/bearings.ts';

/** Bearings that the builder seats: all but those of the donor’s own engine. */
export const seated: Check['subjects'] = (model) => {
  const own = new Set(
    model.shafts.flatMap(({ seats }) =>
      seats
        .filter(({ body, bearing }) => body !== 'engine' || bearing?.plate != null || bearing?.seating != null)
        .map(({ address }) => address),
    ),
  );
  return bearingSubjects(model).filter(({ address }) => own.has(address));
};

/** Runs a check on a bearing that is known; the checks of bearings say where one is not. */
export const onSeated =
  (run: (at: BearingAt, scene: Scene, load: Parameters<Check['run']>[2]) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    const found = bearingAt(scene, subject.address);
    return found?.kind === 'known' ? run(found.at, scene, load) : null;
  };

export const plainly = (
  holds: boolean,
  says: () => string,
  more: Partial<Pick<Extract<Outcome, { kind: 'plain' }>, 'uses' | 'used'>> = {},
): Outcome => ({ kind: 'plain', holds, says, uses: [], used: () => [], ...more });

const signed = (microns: number): string => `${microns < 0 ? TRUE_MINUS : microns > 0 ? '+' : ''}${Math.abs(microns)}`;

/** Limits from the nominal size, as the trade writes them: "k5, +2 to +13 µm". */
export const limitsText = ({
  code,
  lower,
  upper,
}: {
  readonly code: string;
  readonly lower: number;
  readonly upper: number;
}): string =>
  `${code}, ${signed(Math.round(lower * 1e7) / 10)} to ${signed(Math.round(upper * 1e7) / 10)}${THIN_SPACE}µm`;

/** A play in the unit of run-outs, in two figures: more would say what no fit keeps. */
export const fine = ({ model }: Scene, si: number): string =>
  formatQuantity(si, 'length', model.units.runOut, { digits: 2 });
