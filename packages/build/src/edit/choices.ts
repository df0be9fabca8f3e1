import { tableKeys } from '../model/rows.ts';
import { SEAT_OF_STAGE } from '../read/path-references.ts';
import { isRecord, pointerKeys, type SchemaNode, valueAt } from '../schema/describe.ts';
import type { FieldFacts } from '../schema/field.ts';
import type { Session } from '../session-types.ts';
import { above, lastKey } from './ids.ts';
import { nameAt } from './words.ts';

/** Words that a field takes, with a name for each where the word alone says little. */
export interface Choices {
  readonly words: readonly string[];
  readonly names: readonly string[] | null;
}

const plain = (words: readonly string[]): Choices => ({ words, names: null });
const named = (pairs: readonly (readonly [string, string])[]): Choices => ({
  words: pairs.map(([word]) => word),
  names: pairs.map(([, name]) => name),
});

const seatsOf = (session: Session, fits: (kind: string) => boolean): (readonly [string, string])[] =>
  session.evaluation.model.shafts.flatMap((shaft) =>
    shaft.seats
      .filter((seat) => fits(seat.kind))
      .map((seat) => [`${shaft.id}/${seat.id}`, `${shaft.name}, ${seat.name}`] as const),
  );

const CARRIES = new Set(Object.values(SEAT_OF_STAGE));

/** What an adjuster can set or move. */
function adjusterChoices(session: Session, key: string, sets: unknown): Choices {
  const { stages, shafts } = session.evaluation.model;
  const slack = stages
    .filter((stage) => stage.kind === 'chain' || stage.kind === 'belt')
    .map((stage) => [stage.id, stage.name] as const);
  const whole = shafts.map((shaft) => [shaft.id, shaft.name] as const);
  if (key === 'moves') return named([...whole, ...seatsOf(session, (kind) => CARRIES.has(kind))]);
  if (sets === 'slack') return named(slack);
  if (sets === 'gear position') return named(seatsOf(session, (kind) => kind === 'gear'));
  if (sets === 'sprocket line') return named(seatsOf(session, (kind) => kind === 'sprocket' || kind === 'pulley'));
  return named([...slack, ...seatsOf(session, (kind) => CARRIES.has(kind) && kind !== 'joint')]);
}

/** What a picture can show: the parts of the brief, and what stands on the path. */
function pictureChoices(session: Session): Choices {
  const parts = Object.keys(session.build.brief).map((key) => `/brief/${key}`);
  const columns = session.assessment.path.map((element) => [element.address, element.name] as const);
  const known = new Set(columns.map(([address]) => address));
  // What the builder chose at another place, such as a seat or the adjusters, keeps its name here.
  const others = Object.values(session.build.pictures ?? {}).flatMap(({ of }) =>
    of === undefined || known.has(of) || parts.includes(of) ? [] : [[of, nameAt(session, of)] as const],
  );
  return named([
    ...columns,
    ...parts
      .filter((at) => !known.has(at))
      .map((at) => [at, lastKey(at).replace(/^./, (c) => c.toUpperCase())] as const),
    ...new Map(others),
  ]);
}

/**
 * The words that a field accepts; null where it takes any text.
 *
 * @param kind kind of the stage whose end the field names; found in the build where it is not given
 */
export function choicesOf(
  session: Session,
  address: string,
  node: SchemaNode,
  facts: FieldFacts,
  kind: unknown = valueAt(session.build, `${above(address)}/kind`),
): Choices | null {
  if (node.enum) return plain(node.enum);
  if (facts.table) return plain(tableKeys(facts.table));
  if (facts.refersTo) {
    const map = valueAt(session.build, facts.refersTo);
    if (!isRecord(map)) return plain([]);
    return named(
      Object.entries(map).map(([id, entry]) => [
        id,
        isRecord(entry) && typeof entry.name === 'string' ? entry.name : id,
      ]),
    );
  }
  if (facts.seat) {
    const wanted = typeof kind === 'string' ? SEAT_OF_STAGE[kind] : undefined;
    return named(seatsOf(session, (seat) => seat === wanted));
  }
  const keys = pointerKeys(address);
  if (keys[0] === 'path' && keys[1] === 'adjusters' && (keys[3] === 'of' || keys[3] === 'moves'))
    return adjusterChoices(session, keys[3], valueAt(session.build, `${above(address)}/sets`));
  if (keys[0] === 'pictures' && keys[2] === 'of') return pictureChoices(session);
  return null;
}
