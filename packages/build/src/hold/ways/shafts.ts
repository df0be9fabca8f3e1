/** Stronger and stiffer shafts. */
import type { Patch } from '../../document/patch.ts';
import type { Seat, Shaft } from '../../model/model.ts';
import {
  change,
  type Ground,
  inInches,
  type Ladder,
  ladder,
  lengthText,
  type Needs,
  put,
  range,
  type Step,
  typedAt,
} from '../ladder.ts';
import { cornerOf, diametersAbove, type Listed, largerBores, radiiAbove, strongerSteels } from '../sizes.ts';
import { bearingPatches } from './bearing-patches.ts';
import { and, bearingsOf, half, isDonors, lengthOf, loadsOf, shaftOf, shaftsOfStage, wayToward } from './parts.ts';

/** Most that a diameter is raised, as a factor. */
const MOST = 1.7;

const turnedTo = (shaft: Shaft, diameter: number): Needs => ({
  swing: diameter,
  turned: lengthOf(shaft),
  bar: { diameter, length: lengthOf(shaft), given: shaft.stock?.diameter ?? null },
});

/** One seat of a part, turned larger; its hub is bored to suit. */
export function thickerSeat(ground: Ground, shaft: Shaft, seat: Seat): readonly Ladder[] {
  const address = `${seat.address}/diameter`;
  const from = seat.diameter;
  if (from === null || shaft.pieces || typedAt(ground, address) === undefined) return [];
  return ladder(
    're-cut',
    diametersAbove(from, MOST, inInches(ground, address)).map((to): Step => {
      const text = lengthText(ground, address, to);
      return {
        what: `Turn ${shaft.name} to ${text} at ${seat.name} and bore its hub to suit, instead of ${typedAt(ground, address)}`,
        patches: [put(ground, address, text)],
        size: change(from, to),
        needs: turnedTo(shaft, to),
      };
    }),
  );
}

/** One typed stretch of a shaft, turned larger where no bearing sits. */
function thickerPieces(ground: Ground, shaft: Shaft): readonly Ladder[] {
  const carried = bearingsOf(shaft);
  return (shaft.pieces ?? []).flatMap((piece) => {
    const under = carried.some(
      (seat) => seat.station + half(seat) > piece.from && seat.station - half(seat) < piece.to,
    );
    const address = `${piece.address}/diameter`;
    if (under) return [];
    return ladder(
      're-cut',
      diametersAbove(piece.diameter, MOST, inInches(ground, address)).map((to): Step => {
        const text = lengthText(ground, address, to);
        return {
          what: `Turn ${shaft.name} to ${text} from station ${ground.show('length', piece.from)} to ${ground.show('length', piece.to)}, instead of ${typedAt(ground, address)}`,
          patches: [put(ground, address, text)],
          size: change(piece.diameter, to),
          needs: turnedTo(shaft, to),
        };
      }),
    );
  });
}

/** The whole shaft thicker: every seat one size or more up, with bearings of a larger bore. */
function thickerWhole(ground: Ground, shaft: Shaft): readonly Ladder[] {
  if (shaft.pieces) return [];
  const carried = bearingsOf(shaft).map((seat) => ({ seat, larger: largerBores(seat.bearing?.facts?.row ?? '') }));
  const parts = loadsOf(shaft).flatMap((seat) => {
    const address = `${seat.address}/diameter`;
    const typed = typedAt(ground, address) !== undefined && seat.diameter !== null;
    return typed ? [{ seat, address, sizes: diametersAbove(seat.diameter ?? 0, 3, inInches(ground, address)) }] : [];
  });
  const steps = Math.min(6, ...carried.map(({ larger }) => larger.length), ...parts.map(({ sizes }) => sizes.length));
  if (carried.length === 0 || !Number.isFinite(steps)) return [];
  return ladder(
    're-make',
    range(1, steps, 1).map((n): Step => {
      const bearings = carried.flatMap(({ seat, larger }) => {
        const to = larger[n - 1];
        return to ? [{ seat, to }] : [];
      });
      const patches = [
        ...bearings.flatMap(({ seat, to }) => bearingPatches(ground, seat, to)),
        ...parts.flatMap(({ address, sizes }): Patch[] => {
          const si = sizes[n - 1];
          return si === undefined ? [] : [put(ground, address, lengthText(ground, address, si))];
        }),
      ];
      const diameters = [
        ...bearings.map(({ to }) => to.facts.bore),
        ...parts.flatMap(({ sizes }) => sizes[n - 1] ?? []),
      ];
      return {
        what: `Make all of ${shaft.name} thicker by ${n === 1 ? 'one size' : `${n} sizes`}, on ${and(bearings.map(({ to }) => to.row))}`,
        patches,
        size: n * 0.12,
        needs: { ...turnedTo(shaft, Math.max(...diameters)), pressed: lengthOf(shaft) },
        ...tooWide(bearings),
      };
    }),
  );
}

/** A bearing that leaves no web in its plate. */
export function tooWide(
  bearings: readonly { readonly seat: Seat; readonly to: Listed }[],
): { readonly never: string } | Record<string, never> {
  const found = bearings.find(({ seat, to }) => {
    const plate = seat.bearing?.plate;
    return plate ? to.facts.outside >= plate.width : false;
  });
  return found ? { never: `${found.seat.bearing?.plate?.name} are no wider than a ${found.to.row}` } : {};
}

function strongerSteel(ground: Ground, shaft: Shaft): readonly Ladder[] {
  const { steel } = shaft;
  const thickest = Math.max(0, ...shaft.seats.map(({ diameter }) => diameter ?? 0));
  const address = `${shaft.address}/material`;
  const from = steel.key ?? 'a steel that is not told';
  return ladder(
    'buy',
    strongerSteels(steel.tensile.si, steel.yield.si, thickest).map(
      ({ key, tensile }): Step => ({
        what: `Turn ${shaft.name} from ${key} instead of ${from}`,
        patches: [put(ground, address, key)],
        size: change(steel.tensile.si, tensile),
        needs: { turned: lengthOf(shaft) },
      }),
    ),
  );
}

function smootherSurface(ground: Ground, shaft: Shaft): readonly Ladder[] {
  const finer = ['as forged', 'hot rolled', 'machined or cold drawn', 'ground'];
  const now = finer.indexOf(shaft.surface);
  return ladder(
    're-cut',
    finer.slice(now + 1).map(
      (surface, k): Step => ({
        what: surface === 'ground' ? `Grind the surface of ${shaft.name}` : `Turn the surface of ${shaft.name} clean`,
        patches: [put(ground, `${shaft.address}/surface`, surface)],
        size: 0.1 * (k + 1),
      }),
    ),
  );
}

/** Half a millimetre is what a blank radius is taken as, or less. */
const BLANK_RADIUS = 2e-4;

/** Larger radius at a shoulder; beside a bearing it stays under the bearing's own corner. */
function rounderShoulders(ground: Ground, shaft: Shaft): readonly Ladder[] {
  return shaft.notches
    .filter(({ kind }) => kind === 'shoulder')
    .flatMap((notch) => {
      const beside = bearingsOf(shaft).filter((seat) => Math.abs(seat.station - notch.station) < half(seat) + 5e-3);
      const corners = beside.flatMap((seat) => cornerOf(seat.bearing?.facts?.row ?? null) ?? []);
      const most = corners.length > 0 ? Math.min(...corners) - 1e-5 : 4e-3;
      const from = notch.radius?.si ?? BLANK_RADIUS;
      const address = `${notch.address}/radius`;
      return ladder(
        're-cut',
        radiiAbove(from, most).map((to): Step => {
          const text = lengthText(ground, address, to);
          return {
            what: `Turn a radius of ${text} at the ${notch.name} of ${shaft.name}`,
            patches: [put(ground, address, text)],
            size: 0.02 * (to / BLANK_RADIUS),
          };
        }),
      );
    });
}

/** Step of a bearing along its shaft, m. */
const MOVE = 2e-3;
const MOST_MOVED = 0.04;

/** A bearing moved along the shaft toward the nearest load, or away from it. */
export function movedBearings(ground: Ground, shaft: Shaft): readonly Ladder[] {
  if (isDonors(ground, shaft)) return [];
  const span = lengthOf(shaft);
  return bearingsOf(shaft).flatMap((seat) =>
    [1, -1].flatMap((sign) => {
      const address = `${seat.address}/station`;
      const way = Math.min(MOST_MOVED, wayToward(shaft, seat, seat.station + sign * MOST_MOVED));
      const toward = loadsOf(shaft)
        .filter(({ station }) => Math.sign(station - seat.station) === sign)
        .sort((a, b) => Math.abs(a.station - seat.station) - Math.abs(b.station - seat.station))[0];
      return ladder(
        're-cut',
        range(MOVE, way, MOVE).map((by): Step => {
          const text = lengthText(ground, address, seat.station + sign * by);
          return {
            what: `Move ${seat.name} of ${shaft.name} ${ground.show('length', by)} ${toward ? `toward ${toward.name}` : 'outward'}, to station ${text}`,
            patches: [put(ground, address, text)],
            size: by / span,
          };
        }),
      );
    }),
  );
}

/** Larger diameters, seat by seat and as a whole. */
export function thickerShaft(ground: Ground): readonly Ladder[] {
  const shafts = ground.finding.address.startsWith('/path/stages/') ? shaftsOfStage(ground) : [shaftOf(ground)];
  return shafts.flatMap((shaft) =>
    !shaft || isDonors(ground, shaft)
      ? []
      : [
          ...loadsOf(shaft).flatMap((seat) => thickerSeat(ground, shaft, seat)),
          ...thickerPieces(ground, shaft),
          ...thickerWhole(ground, shaft),
        ],
  );
}

/** Better steel, surface and shoulders. */
export function strongerShaft(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  if (!shaft || isDonors(ground, shaft)) return [];
  return [...strongerSteel(ground, shaft), ...smootherSurface(ground, shaft), ...rounderShoulders(ground, shaft)];
}

/** Bearings nearer to what loads the shaft. */
export function nearerBearings(ground: Ground): readonly Ladder[] {
  const shafts = ground.finding.address.startsWith('/path/stages/') ? shaftsOfStage(ground) : [shaftOf(ground)];
  return shafts.flatMap((shaft) => (shaft ? movedBearings(ground, shaft) : []));
}
