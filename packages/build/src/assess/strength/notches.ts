import type { Seat, Shaft, Value } from '../../model/model.ts';
import { type Stretch, widthOf } from './diameters.ts';

/** A row of the table of notches, or one that a method gives. */
type NotchSort =
  | 'shoulder'
  | 'ring-groove'
  | 'keyway-end-milled'
  | 'keyway-disc-milled'
  | 'cross-hole'
  | 'spline'
  | 'thread'
  | 'weld-toe'
  | 'press-fit';

/** A notch of a shaft: typed, or told by how a part is held, by a joint or by a step of the diameter. */
export interface ShaftNotch {
  readonly sort: NotchSort;
  readonly name: string;
  readonly address: string;
  readonly station: number;
  /** At the root; null where it is not known. */
  readonly radius: Value | null;
  /** Diameter of the seat that it is cut into; null for the thinnest that stands there. */
  readonly cutInto: number | null;
}

const TYPED = {
  shoulder: 'shoulder',
  'ring groove': 'ring-groove',
  'keyway, end milled': 'keyway-end-milled',
  'keyway, disc milled': 'keyway-disc-milled',
  'press fit': 'press-fit',
  'cross hole': 'cross-hole',
  spline: 'spline',
  thread: 'thread',
  'weld toe': 'weld-toe',
} as const satisfies Readonly<Record<Shaft['notches'][number]['kind'], NotchSort>>;

/** What holds a part leaves a notch at its edge. */
const BY_HOLD: Readonly<Partial<Record<string, readonly [NotchSort, string]>>> = {
  'retaining ring': ['ring-groove', 'ring groove beside'],
  nut: ['thread', 'thread beside'],
  'press fit': ['press-fit', 'edge of the press fit of'],
  weld: ['weld-toe', 'weld at'],
};

const BY_JOIN: Readonly<Partial<Record<string, NotchSort>>> = {
  spline: 'spline',
  key: 'keyway-end-milled',
  weld: 'weld-toe',
  'press fit': 'press-fit',
  pin: 'cross-hole',
};

/** A typed notch this near to one of the same sort is that one. */
const SAME = 3e-3;

function ofSeat(seat: Seat): ShaftNotch[] {
  const { held } = seat;
  const width = widthOf(seat);
  if (!held) return [];
  return (
    [
      [held.towardStart, -1],
      [held.towardEnd, 1],
    ] as const
  ).flatMap(([by, side]) => {
    const found = by === null ? undefined : BY_HOLD[by];
    if (!found) return [];
    const [sort, words] = found;
    return [
      {
        sort,
        name: `the ${words} ${seat.name}`,
        address: held.address,
        station: seat.station + (side * width) / 2,
        radius: null,
        // A ring, a nut or a press fit of this part goes on its own diameter; the bar may be thinner only beyond it.
        cutInto: seat.diameter,
      },
    ];
  });
}

/** Notches of a shaft but for its steps: those typed, then those that holds and joints leave. */
export function notchesOf(shaft: Shaft): readonly ShaftNotch[] {
  const typed = shaft.notches.map(
    (notch): ShaftNotch => ({
      sort: TYPED[notch.kind],
      name: notch.name,
      address: notch.address,
      station: notch.station,
      radius: notch.radius,
      cutInto: null,
    }),
  );
  const told = [
    ...shaft.seats.flatMap(ofSeat),
    ...shaft.joins.flatMap((join): ShaftNotch[] => {
      const sorts = new Set([BY_JOIN[join.torqueBy], BY_JOIN[join.axialBy], BY_JOIN[join.centredBy]]);
      return [...sorts].flatMap((sort) =>
        sort
          ? [{ sort, name: join.name, address: join.address, station: join.station, radius: null, cutInto: null }]
          : [],
      );
    }),
  ];
  return [
    ...typed,
    ...told.filter(
      (one) => !typed.some(({ sort, station }) => sort === one.sort && Math.abs(station - one.station) <= SAME),
    ),
  ];
}

/** A step of the diameter. */
export interface ShaftStep {
  readonly notch: ShaftNotch;
  readonly large: number;
  readonly small: number;
  readonly bore: number;
}

const LEAST_STEP = 1e-5;
/** Larger over smaller diameter where a shoulder is typed and no step is drawn there. */
const UNDRAWN = 1.2;

/** Steps of the diameter, each with the fillet of the shoulder that is typed next to it; then shoulders typed where no step is drawn. */
export function stepsOf(
  stretches: readonly Stretch[],
  notches: readonly ShaftNotch[],
  show: (metres: number) => string,
): readonly ShaftStep[] {
  const shoulders = notches.filter(({ sort }) => sort === 'shoulder');
  const taken = new Set<ShaftNotch>();
  const steps = stretches.slice(1).flatMap((after, k): ShaftStep[] => {
    const before = stretches[k] as Stretch;
    if (Math.abs(after.diameter - before.diameter) < LEAST_STEP) return [];
    const [thin, thick] = after.diameter < before.diameter ? [after, before] : [before, after];
    const near = shoulders.find(({ station }) => Math.abs(station - after.from) <= SAME);
    if (near) taken.add(near);
    const notch: ShaftNotch = {
      sort: 'shoulder',
      name: near?.name ?? `the step from ${show(thin.diameter)} to ${show(thick.diameter)}`,
      address: near?.address ?? thin.address,
      station: after.from,
      radius: near?.radius ?? null,
      cutInto: null,
    };
    return [{ notch, large: thick.diameter, small: thin.diameter, bore: thin.bore }];
  });
  const undrawn = shoulders.flatMap((notch): ShaftStep[] => {
    if (taken.has(notch)) return [];
    const here = stretches.filter(({ from, to }) => from - SAME <= notch.station && notch.station <= to + SAME);
    const thin = here.reduce<Stretch | null>(
      (least, one) => (least && least.diameter <= one.diameter ? least : one),
      null,
    );
    return thin ? [{ notch, large: UNDRAWN * thin.diameter, small: thin.diameter, bore: thin.bore }] : [];
  });
  return [...steps, ...undrawn];
}
