import { floatNeeded } from '@oddwheel/mechanics/bearing/float-needed';
import { BEARING_LIMITS } from '@oddwheel/tables/bearing-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Model, Seat } from '../../../model/model.ts';
import type { Used } from '../../geometry/types.ts';
import { takes } from '../../strength/bearing-loads.ts';
import type { Link } from '../../strength/thrust-links.ts';
import { type ThrustPath, thrustPaths } from '../../strength/thrust-path.ts';
import type { Check, Outcome, Scene, Subject } from '../check.ts';
import { measured } from '../measured.ts';
import { notSaid } from './bearings.ts';
import { shaftIndex, shaftUses } from './shafts.ts';

/** Shafts on two bearings or more. */
const heldSubjects = (model: Model): Subject[] =>
  model.shafts
    .filter(({ seats }) => seats.filter(({ kind }) => kind === 'bearing').length > 1)
    .map(({ address, name }) => ({ address, element: name, stage: null }));

const { expansion = Number.NaN, degrees = Number.NaN, stack = Number.NaN } = rowInSi(BEARING_LIMITS, 'growth');
const GROWTH = 'bearing-limits/growth';
/** Bearings that lie this close need no way to grow. */
const TOGETHER = 1e-4;

/** Way that one bearing needs along the shaft, for growth and tolerances. */
function floatOf(seats: readonly Seat[], address: string): { readonly float: number; readonly used: Used } | null {
  const stations = seats.map(({ station }) => station);
  const spacing = Math.max(...stations) - Math.min(...stations);
  if (!(spacing > TOGETHER)) return null;
  const input = { spacing, expansion, warmer: degrees, stack };
  const output = floatNeeded.run(input);
  const origins = { spacing: `${address}/seats`, expansion: GROWTH, warmer: GROWTH, stack: GROWTH };
  return { float: output.float, used: { method: floatNeeded, input, output, origins } };
}

const list = (seats: readonly Seat[]): string =>
  seats.length <= 1
    ? (seats[0]?.name ?? '')
    : `${seats
        .slice(0, -1)
        .map(({ name }) => name)
        .join(', ')} and ${seats.at(-1)?.name}`;

/** One bearing holds the shaft along its length, and the others let it grow. */
export const bearingLocates: Check = {
  id: 'bearing.location',
  title: 'one bearing fixed, the others free along the shaft',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(BEARING_LIMITS, 'growth') },
  atWorst: 'thin',
  perCase: false,
  subjects: heldSubjects,
  run: (scene, subject) => {
    const structure = scene.strength.shafts[shaftIndex(scene.model, subject)];
    if (!structure) return null;
    const seats = structure.bearings.map(({ seat }) => seat);
    const found = seats.map((seat) => ({ seat, start: takes(seat, 'start'), end: takes(seat, 'end') }));
    if (found.some(({ start, end }) => start === 'not said' || end === 'not said'))
      return { kind: 'unknown', missing: notSaid(structure) };
    const need = floatOf(seats, structure.shaft.address);
    const way = scene.show('length', need?.float ?? 0);
    const fixed = found.filter(({ start, end }) => start === 'yes' && end === 'yes').map(({ seat }) => seat);
    const holding = found.filter(({ start, end }) => start === 'yes' || end === 'yes').map(({ seat }) => seat);
    const free = seats.filter((seat) => !holding.includes(seat));
    const ways = (['start', 'end'] as const).filter((one) => !found.some((bearing) => bearing[one] === 'yes'));
    const plain = (holds: boolean, says: string): Outcome => ({
      kind: 'plain',
      holds,
      says: () => says,
      uses: [],
      used: () => (need ? [need.used] : []),
    });
    if (ways.length > 0)
      return plain(
        false,
        `No bearing holds the shaft toward its ${ways.join(' or its ')}: it can walk out of its place.`,
      );
    const sloped = seats.filter(({ bearing }) => bearing?.facts && bearing.facts.kind !== 'deep groove');
    if (sloped.length > 0)
      return sloped.length === 2 && seats.length === 2 && holding.length === 2
        ? plain(
            true,
            `${list(sloped)} are set against each other: set their play with ${way} of growth and tolerances in mind.`,
          )
        : plain(
            false,
            `${list(sloped)}: an angular contact or tapered bearing takes push one way only, so two must face each other, both held, with no other that holds the shaft.`,
          );
    if (fixed.length === 1 && holding.length === 1)
      return plain(
        true,
        `${list(fixed)} holds the shaft both ways; ${list(free)} must be free along it by ${way} at least, for its growth and the tolerances.`,
      );
    const [one, other] = holding;
    if (fixed.length === 0 && holding.length === 2 && one && other)
      return plain(
        true,
        `${one.name} holds the shaft one way and ${other.name} the other: leave ${way} of way between them, for its growth and the tolerances.`,
      );
    return plain(
      false,
      `${list(holding)} hold the shaft against each other: as it grows they push with all they have. Free all but one by ${way} at least.`,
    );
  },
};

/** Parts whose strength is not in the build yet. */
const BEYOND = 'The screws and tubes behind the plates are not worked out here.';

/** "Toward its end 1.2 kN push: nut of pinion 14 on the shaft, front plates (bears 6.4 kN)." */
function trace({ way, push, links }: ThrustPath, { show }: Scene): string {
  if (push === 0) return `Toward its ${way} nothing pushes.`;
  const parts = links.map(({ name, state, capacity }) =>
    state === 'bears' && capacity !== null ? `${name} (bears ${show('force', capacity)})` : name,
  );
  return `Toward its ${way} ${show('force', push)} push through ${parts.join(', ')}.`;
}

const share = ({ demand, capacity }: Link): number => (capacity === null ? 0 : demand / capacity);

/** Every push along a shaft finds its way to a plate, both ways, through parts that bear it. */
export const thrustPasses: Check = {
  id: 'bearing.thrust',
  title: 'way of the push along the shaft',
  consequence: 'loses drive',
  wanted: { reserve: 1.5, from: 'stated default of this project: rounded corners tip a retaining ring' },
  atWorst: 'fails',
  perCase: false,
  subjects: heldSubjects,
  run: (scene, subject) => {
    const k = shaftIndex(scene.model, subject);
    const structure = scene.strength.shafts[k];
    if (!structure) return null;
    const paths = thrustPaths(scene, k);
    if ('missing' in paths) return { kind: 'unknown', missing: paths.missing };
    const links = paths.flatMap((path) => path.links);
    const uses = [...shaftUses(structure), ...new Set(links.flatMap((link) => link.uses))];
    const pushed = paths.some(({ push }) => push > 0);
    const traced = (): string =>
      pushed
        ? [...paths.map((path) => trace(path, scene)), BEYOND].join(' ')
        : 'Nothing pushes along it, and it is held both ways.';
    const gaps = links.filter(({ state }) => state === 'gap');
    if (gaps.length > 0)
      return {
        kind: 'plain',
        holds: false,
        says: () =>
          `Nothing stops ${[...new Set(gaps.map(({ name }) => name))].join('; nor ')}.${pushed ? ` ${traced()}` : ''}`,
        uses,
        used: () => [],
      };
    const open = links.flatMap(({ state, missing }) => (state === 'open' ? missing : []));
    if (open.length > 0) return { kind: 'unknown', missing: open };
    const worst = links.reduce<Link | null>((most, one) => (share(one) > (most ? share(most) : 0) ? one : most), null);
    if (!worst || worst.capacity === null) return { kind: 'plain', holds: true, says: traced, uses, used: () => [] };
    const { capacity, demand, name, used, origin } = worst;
    return measured(
      { name: 'push', value: demand, kind: 'force', use: 'force' },
      { name, value: capacity, kind: 'force', use: 'force' },
      () =>
        `Weakest is ${name}: ${scene.show('force', demand)} on it, and it bears ${scene.show('force', capacity)}. ${traced()}`,
      uses,
      () => used,
      { capacity: origin, demand: 'greatest push over all cases, forces carried through the path' },
    );
  },
};
