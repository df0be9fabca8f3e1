/** Parts moved out of each other's way. */
import { clearancesOf } from '../../assess/clearance/clearance.ts';
import { change, type Ground, type Ladder, ladder, range } from '../ladder.ts';
import { sameBore } from '../sizes.ts';
import { bearingPatches } from './bearing-patches.ts';
import { shiftedMesh, shiftedPart } from './chains.ts';
import { longer } from './fields.ts';
import { isDonors, lengthOf, meshed } from './parts.ts';

/** Addresses of the two parts that come nearest at the element of a finding. */
function pairOf({ scene, finding }: Ground): readonly string[] {
  const row = clearancesOf(scene, null).rows.find(({ element }) => element === finding.address);
  return row ? [row.first.address, row.second.address] : [];
}

/** A bearing of less outside diameter on the same seat of its shaft. */
function slimmer(ground: Ground, address: string): readonly Ladder[] {
  return ground.model.shafts.flatMap((shaft) =>
    shaft.seats.flatMap((seat) => {
      const facts = seat.bearing?.facts;
      if (seat.address !== address || isDonors(ground, shaft) || !facts?.bore || !facts.outside) return [];
      const { bore, outside, row } = facts;
      return ladder(
        'buy',
        sameBore(bore)
          .filter((one) => one.facts.outside < outside)
          .reverse()
          .map((one) => ({
            what: `Fit a ${one.row} at ${seat.name} of ${shaft.name} instead of the ${row ?? 'one that is fitted'}`,
            patches: bearingPatches(ground, seat, one),
            size: change(outside, one.facts.outside),
            needs: { pressed: lengthOf(shaft) },
          })),
      );
    }),
  );
}

/** Hubs at the ends of a shaft, which ends where they do, made shorter. */
function shorterEnds(ground: Ground, address: string): readonly Ladder[] {
  return ground.model.shafts.flatMap((shaft) => {
    if (shaft.address !== address || shaft.pieces) return [];
    const sorted = [...shaft.seats].sort((a, b) => a.station - b.station);
    return [sorted[0], sorted.at(-1)].flatMap((seat) =>
      seat && seat.kind !== 'bearing'
        ? longer(ground, `${seat.address}/width`, seat.width, {
            parts: range(0.05, 0.6, 0.05).map((part) => -part),
            says: (to, from) =>
              `Face ${seat.name} of ${shaft.name} to ${to} instead of ${from}, with the end of the shaft`,
            effort: 're-cut',
          })
        : [],
    );
  });
}

/** The two parts that come nearest, moved apart along their shafts; a chain goes with both its sprockets. */
export function movedApart(ground: Ground): readonly Ladder[] {
  const { model } = ground;
  return pairOf(ground).flatMap((address) => {
    const seats = model.shafts.flatMap((shaft) =>
      shaft.seats.filter((seat) => seat.address === address).map((seat) => ({ shaft, seat })),
    );
    const stages = model.stages.flatMap((stage, k) => {
      const own =
        stage.address === address ||
        [stage.from, stage.to].some((ref) => address.endsWith(`${ref.shaft}/seats/${ref.seat}`));
      return own && (stage.kind === 'chain' || stage.kind === 'belt') ? (meshed(model, k) ?? []) : [];
    });
    return [
      ...seats
        .filter(({ seat }) => seat.kind === 'bearing')
        .flatMap(({ shaft, seat }) => shiftedPart(ground, shaft, seat)),
      ...stages.flatMap((one) => ([1, -1] as const).flatMap((sign) => shiftedMesh(ground, one, sign))),
      ...slimmer(ground, address),
      ...shorterEnds(ground, address),
    ];
  });
}
