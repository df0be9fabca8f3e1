import { raised } from '../edit/place.ts';
import { typedNumber } from '../model/value.ts';
import { valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import type { Coordinate, Datum, NoDatum, Placed, PlacedPoint, Placing } from './types.ts';

const AXES = ['x', 'y', 'z'] as const;

function coordinate(session: Session, address: string): Coordinate | null {
  const text = valueAt(session.build, address);
  return typeof text === 'string' ? { address, text, si: typedNumber('length', text) } : null;
}

/** The point at an address; null where the file has none. */
function pointAt(session: Session, address: string, name: string): readonly PlacedPoint[] {
  const [x, y, z] = AXES.map((axis) => coordinate(session, `${address}/${axis}`));
  return x && y && z ? [{ name, coordinates: [x, y, z] }] : [];
}

function shaftsAndSeats(session: Session): readonly Placed[] {
  return session.evaluation.model.shafts.flatMap((shaft): Placed[] => [
    {
      address: shaft.address,
      name: shaft.name,
      kind: 'shaft',
      points: pointAt(session, `${shaft.address}/origin`, ''),
      station: null,
    },
    ...shaft.seats.flatMap((seat): Placed[] => {
      const station = coordinate(session, `${seat.address}/station`);
      if (!station) return [];
      const { origin, direction } = shaft;
      return [
        {
          address: seat.address,
          name: `${seat.name} on ${shaft.name}`,
          kind: 'seat',
          points: [],
          station: { coordinate: station, shaft: shaft.address, origin, along: direction },
        },
      ];
    }),
  ]);
}

/** Everything of a build that has a place of its own, in the order of the path, then what stands around it. */
function allPlaced(session: Session): readonly Placed[] {
  const { model } = session.evaluation;
  const idlers = model.stages.flatMap((stage): Placed[] =>
    stage.kind === 'chain' && stage.idler
      ? [
          {
            address: stage.idler.address,
            name: `idler of ${stage.name}`,
            kind: 'idler',
            points: pointAt(session, `${stage.idler.address}/at`, ''),
            station: null,
          },
        ]
      : [],
  );
  const keepOuts = model.space.keepOuts.map(
    ({ address, name }): Placed => ({
      address,
      name,
      kind: 'keep-out',
      points: [
        ...pointAt(session, `${address}/least`, 'One corner'),
        ...pointAt(session, `${address}/most`, 'Corner across'),
      ],
      station: null,
    }),
  );
  const tubes = model.space.tubes.map(
    ({ address, name }): Placed => ({
      address,
      name,
      kind: 'tube',
      points: [...pointAt(session, `${address}/from`, 'One end'), ...pointAt(session, `${address}/to`, 'Other end')],
      station: null,
    }),
  );
  const pivot: readonly Placed[] = model.suspension
    ? [
        {
          address: model.suspension.address,
          name: 'pivot of the swinging arm',
          kind: 'pivot',
          points: pointAt(session, `${model.suspension.address}/pivot`, ''),
          station: null,
        },
      ]
    : [];
  return [...shaftsAndSeats(session), ...idlers, ...pivot, ...keepOuts, ...tubes];
}

/** Places that a tape measure starts from in a shop. */
function datumsOf(session: Session): { readonly datums: readonly Datum[]; readonly without: readonly NoDatum[] } {
  const { model, middle } = session.evaluation;
  const { rollOut, show } = middle.scene;
  const datums: Datum[] = [{ id: 'wheel centre', name: 'the wheel’s centre', at: [0, 0, 0], from: '' }];
  const without: NoDatum[] = [];
  if (rollOut === null) without.push({ name: 'the floor', why: 'the roll-out of the wheel is not given' });
  else {
    const radius = rollOut / (2 * Math.PI);
    const range = model.wheel.rollOut && model.wheel.rollOut.hi > model.wheel.rollOut.lo;
    datums.push({
      id: 'floor',
      name: 'the floor',
      at: [null, null, -radius],
      from: `loaded wheel, radius ${show('length', radius)} from its roll-out${range ? ', middle of the range' : ''}`,
    });
  }
  const { contact } = model.vehicle;
  if (contact === 'two, rear driven' || contact === 'three, single rear driven')
    datums.push({
      id: 'centreline',
      name: 'the centreline',
      at: [null, 0, null],
      from: 'the middle of the driven wheel, which runs on it',
    });
  else
    without.push({
      name: 'the centreline',
      why:
        contact === null
          ? 'which wheels touch the ground is not given'
          : 'the driven wheel stands off it, and the build does not say on which side',
    });
  if (model.suspension) datums.push({ id: 'pivot', name: 'the arm’s pivot', at: model.suspension.pivot, from: '' });
  return { datums, without };
}

/** What can be moved, and what positions can be told from. */
export function placingOf(session: Session): Placing {
  return { placed: allPlaced(session), ...datumsOf(session), raise: raised(session) };
}
