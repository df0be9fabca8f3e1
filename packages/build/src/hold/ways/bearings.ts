/** Other bearings, and how they are held. */
import type { Seat, Shaft } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, put, type Step } from '../ladder.ts';
import { type Listed, largerBores, sameBore } from '../sizes.ts';
import { bearingPatches } from './bearing-patches.ts';
import { bearingsOf, isDonors, lengthOf, seatAt, shaftOf } from './parts.ts';
import { tooWide } from './shafts.ts';

/** The bearing of a finding with its shaft; null for the gearbox's own, which stays. */
function own(ground: Ground): { readonly seat: Seat; readonly shaft: Shaft } | null {
  const seat = seatAt(ground, ground.finding.address);
  const shaft = shaftOf(ground);
  return seat?.kind === 'bearing' && shaft && !isDonors(ground, shaft) ? { seat, shaft } : null;
}

const fitted = (ground: Ground, shaft: Shaft, seat: Seat, to: Listed, from: string, size: number): Step => ({
  what: `Fit a ${to.row} at ${seat.name} of ${shaft.name} instead of the ${from}`,
  patches: bearingPatches(ground, seat, to),
  size,
  needs: { pressed: lengthOf(shaft) },
  ...tooWide([{ seat, to }]),
});

/** Bearings that go on the same seat of the shaft and bear more at rest. */
export function strongerBearing(ground: Ground): readonly Ladder[] {
  const found = own(ground);
  const facts = found?.seat.bearing?.facts;
  const bore = facts?.bore ?? found?.seat.diameter ?? null;
  if (!found || !facts || bore === null || facts.kind !== 'deep groove') return [];
  const { seat, shaft } = found;
  const from = facts.row ?? 'one that is fitted';
  const same = sameBore(bore)
    .filter((one) => one.facts.static > facts.static * 1.0001 && one.facts.dynamic > facts.dynamic * 1.0001)
    .sort((a, b) => a.facts.static - b.facts.static);
  const size = (one: Listed): number => change(facts.outside ?? one.facts.outside, one.facts.outside);
  return [
    ...ladder(
      'buy',
      same.map((one) => fitted(ground, shaft, seat, one, from, size(one))),
    ),
    ...ladder(
      're-make',
      [...new Map(strongerLarger(facts.row).map((one) => [one.row, one])).values()]
        .filter((one) => one.facts.static > facts.static)
        .map((one) => fitted(ground, shaft, seat, one, from, size(one))),
    ),
  ];
}

/** The same series with a larger bore, then the next heavier series from there, by what they bear. */
function strongerLarger(row: string | null): readonly Listed[] {
  const larger = largerBores(row ?? '');
  return larger
    .flatMap((one) => [one, ...sameBore(one.facts.bore).filter(({ facts }) => facts.static > one.facts.static)])
    .sort((a, b) => a.facts.static - b.facts.static);
}

/** A lighter bearing on the same seat: its balls roll with less load on it, and it turns faster. */
export function lighterBearing(ground: Ground): readonly Ladder[] {
  const found = own(ground);
  const facts = found?.seat.bearing?.facts;
  const bore = facts?.bore ?? null;
  if (!found || !facts || bore === null || facts.kind !== 'deep groove') return [];
  const lighter = sameBore(bore)
    .filter((one) => one.facts.static < facts.static)
    .sort((a, b) => b.facts.static - a.facts.static);
  return ladder(
    'buy',
    lighter.map((one) =>
      fitted(
        ground,
        found.shaft,
        found.seat,
        one,
        facts.row ?? 'one that is fitted',
        change(facts.static, one.facts.static),
      ),
    ),
  );
}

/** A seal that rubs less lets it turn faster. */
export function otherSeal(ground: Ground): readonly Ladder[] {
  const found = own(ground);
  if (found?.seat.bearing?.seal !== 'rubbing seals') return [];
  return ladder('buy', [
    {
      what: `Fit ${found.seat.name} of ${found.shaft.name} with shields instead of rubbing seals`,
      patches: [put(ground, `${found.seat.address}/seal`, 'shields')],
      size: 0.05,
    },
  ]);
}

/** One bearing held both ways, the others free. */
export function oneHeld(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  if (!shaft || isDonors(ground, shaft)) return [];
  const carried = bearingsOf(shaft);
  return carried.flatMap((fixed) =>
    ladder('re-cut', [
      {
        what: `Hold ${shaft.name} by ${fixed.name} both ways, and let the outer ring of the other slide`,
        patches: carried.flatMap((seat) => {
          const holds = seat === fixed;
          return [
            put(ground, `${seat.address}/held`, { towardStart: 'shoulder', towardEnd: 'retaining ring' }),
            put(
              ground,
              `${seat.address}/ring`,
              holds
                ? { towardStart: 'shoulder', towardEnd: 'retaining ring' }
                : { towardStart: 'nothing', towardEnd: 'nothing' },
            ),
          ];
        }),
        size: 0.1,
      },
    ]),
  );
}
