import type { Patch } from '../document/patch.ts';
import type { Fault } from '../fault.ts';
import { nodeAt, pointerKey, pointerKeys, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { above } from './ids.ts';
import { isOptional, raised, removePatches } from './place.ts';
import type { StructureEdit } from './types.ts';
import { nameAt, ownerOf, small } from './words.ts';

/** Who uses something: its address and what it is called there. */
interface User {
  readonly address: string;
  readonly name: string;
}

/** Everything that names the thing at an address, so that it cannot simply go. */
function users(session: Session, address: string): readonly User[] {
  const [room, sort, id = '', seats, seat = ''] = pointerKeys(address);
  const { stages, shafts, adjusters = {} } = session.build.path;
  const inMap = <T>(map: Readonly<Record<string, T>>, at: string, uses: (entry: T) => boolean): User[] =>
    Object.entries(map)
      .filter(([, entry]) => uses(entry))
      .map(([key]) => `${at}/${pointerKey(key)}`)
      .map((user) => ({ address: user, name: nameAt(session, user) }));
  if (address.startsWith('/brief/shop/stock/')) {
    const stock = pointerKeys(address).at(-1);
    return inMap(shafts, '/path/shafts', (shaft) => shaft.stock === stock);
  }
  const reference =
    room === 'path' && sort === 'shafts' && seats === 'seats' && seat !== ''
      ? `${id}/${seat}`
      : address.startsWith('/brief/engine/output/seats/')
        ? `output/${pointerKeys(address).at(-1)}`
        : null;
  if (reference === null) return [];
  return [
    ...inMap(stages, '/path/stages', (stage) => stage.from === reference || stage.to === reference),
    ...inMap(adjusters, '/path/adjusters', (one) => one.of === reference || one.moves === reference),
  ];
}

/** What goes along with things that are taken out: the notes on them, the overrides of their findings, and what a picture shows. */
export function attached(
  session: Session,
  gone: readonly string[],
): { readonly addresses: readonly string[]; readonly also: readonly string[] } {
  const within = (place: string): boolean => gone.some((at) => place === at || place.startsWith(`${at}/`));
  const { notes = {}, pictures = {}, overrides = {} } = session.build;
  const noted = Object.keys(notes).filter(within);
  const shown = Object.entries(pictures).filter(
    ([id, { of }]) => of !== undefined && within(of) && !within(`/pictures/${id}`),
  );
  const overridden = Object.keys(overrides).filter((key) => within(key.slice(key.indexOf(':') + 1)));
  return {
    addresses: [
      ...noted.map((key) => `/notes/${pointerKey(key)}`),
      ...shown.map(([id]) => `/pictures/${id}/of`),
      ...overridden.map((key) => `/overrides/${pointerKey(key)}`),
    ],
    also: [
      ...noted.map((key) => `The note on ${nameAt(session, key)} goes too.`),
      ...shown.map(([, { name }]) => `The picture “${name}” stays, and shows no part any more.`),
      ...overridden.map(
        (key) => `The design reserve of your own for ${nameAt(session, key.slice(key.indexOf(':') + 1))} goes too.`,
      ),
    ],
  };
}

/** Takes out what is there and all that hangs on it, as one edit. */
export function takeOut(
  session: Session,
  name: string,
  gone: readonly string[],
  others: readonly Patch[] = [],
  also: readonly string[] = [],
): StructureEdit {
  const along = attached(session, gone);
  const removed = removePatches(session, [...along.addresses, ...gone]);
  return {
    ok: true,
    name,
    patches: [...raised(session), ...others, ...removed],
    also: [...also, ...along.also],
    shows: null,
  };
}

export const refusal = (
  address: string,
  problem: string,
  read: string,
  accepted: string,
): Extract<StructureEdit, { readonly ok: false }> => ({
  ok: false,
  faults: [{ code: 'edit.remove', address, problem, read, accepted } satisfies Fault],
});

/** Takes out an entry, an optional group, or a row; refused, with the users named, while something else still names it. */
export function removeAt(session: Session, address: string): StructureEdit {
  const name = nameAt(session, address);
  if (valueAt(session.build, address) === undefined)
    return refusal(address, 'Nothing is at this address.', address, 'The address of something in the build.');
  const list = valueAt(session.build, above(address));
  if (Array.isArray(list)) {
    const least = nodeAt(session.build, above(address))?.minItems ?? 0;
    if (list.length <= least)
      return refusal(address, `At least ${least} must stay.`, name, 'Change it, or add another first.');
  } else if (!isOptional(session, address)) {
    return refusal(address, `${name} belongs to every build.`, name, 'Change its values.');
  }
  if (/^\/path\/shafts\/[^/]+$/.test(address))
    return refusal(
      address,
      `The path runs over ${name}.`,
      name,
      'Take out the stage before or after it; its shaft goes with it.',
    );
  const using = users(session, address);
  if (using.length > 0)
    return refusal(
      address,
      `${using.map((user) => user.name).join(', ')} still ${using.length > 1 ? 'use' : 'uses'} ${name}.`,
      using.map((user) => user.address).join(', '),
      'First choose something else there, or take that out.',
    );
  return takeOut(session, `Take ${small(name)} out of ${ownerOf(session, address)}`, [address]);
}
