/** Stages come and go with their shafts, so that the path stays closed from engine to wheel. */
import { parseInput } from '@oddwheel/quantity/range';
import type { Json, JsonObject } from '../document/json.ts';
import { isJsonObject } from '../document/json.ts';
import type { Patch } from '../document/patch.ts';
import { toField } from '../fields.ts';
import type { Seat, Shaft } from '../model/model.ts';
import { SEAT_OF_STAGE } from '../read/path-references.ts';
import { nodeAt, type SchemaNode } from '../schema/describe.ts';
import type { Field, Session } from '../session-types.ts';
import { branchOfKind, formFields, kindsOf, makeValue, NEW_KEY } from './form.ts';
import { newId } from './ids.ts';
import { refusal, takeOut } from './remove.ts';
import { placeShaft, type StageSize } from './stage-place.ts';
import { typedValue } from './typed.ts';
import type { Answers, EditRequest, Form, StructureEdit } from './types.ts';
import { small } from './words.ts';

const STAGES = '/path/stages';
const NEW_STAGE = `${STAGES}/${NEW_KEY}`;
const SHAFT_NAME = `/path/shafts/${NEW_KEY}/name`;
/** Heading over what is asked of the shaft that comes with a stage. */
const NEW_SHAFT = 'Its new shaft';
const BODY = `/path/shafts/${NEW_KEY}/seats/bearing/body`;

const entryNode = (session: Session, at: string): SchemaNode => {
  const node = nodeAt(session.build, at)?.additionalProperties;
  if (typeof node !== 'object') throw new Error(`${at} is no map.`);
  return node;
};

/** Kinds of stage that the build file knows. */
export const stageKinds = (session: Session): readonly string[] => kindsOf(entryNode(session, STAGES)) ?? [];

const stageBranch = (session: Session, kind: string) => branchOfKind(entryNode(session, STAGES), kind);

const bodyNode = (session: Session): SchemaNode | undefined => {
  const shaft = entryNode(session, '/path/shafts');
  const seat = shaft.properties?.seats?.additionalProperties;
  return typeof seat === 'object' ? branchOfKind(seat, 'bearing')?.properties?.body : undefined;
};

/** The next of Shaft A, Shaft B, … that no shaft has. */
function shaftName(session: Session): string {
  const names = new Set(session.evaluation.model.shafts.map((shaft) => shaft.name));
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `Shaft ${letter}`).find((name) => !names.has(name));
  return free ?? `Shaft ${names.size + 1}`;
}

/** The form for a new stage: its sizes, its name and its shaft's, and what carries the shaft's bearings. */
export function stageForm(session: Session, kind: string): Form {
  const branch = stageBranch(session, kind);
  const fields: Field[] = branch
    ? formFields(session, STAGES, branch, kind, true).filter(
        ({ address }) => address !== `${NEW_STAGE}/from` && address !== `${NEW_STAGE}/to`,
      )
    : [];
  const module = branch?.properties?.module;
  const body = bodyNode(session);
  const extra = (
    address: string,
    node: SchemaNode | undefined,
    name: string,
    text: string | null,
    optional = false,
    group: string | null = null,
  ) => {
    const facts = node?.['x-field'];
    if (node && facts)
      fields.push(
        toField(session, address, node, { ...facts, name }, { name: group, address: null }, { text, optional }),
      );
  };
  extra(`${NEW_STAGE}/module`, module, module?.['x-field']?.name ?? '', null, true);
  const shaft = entryNode(session, '/path/shafts').properties?.name;
  extra(SHAFT_NAME, shaft, 'Name of the shaft', shaftName(session), false, NEW_SHAFT);
  extra(BODY, body, 'Its bearings are carried by', null, false, NEW_SHAFT);
  return { title: `Add ${small(kind)}`, fields };
}

const millimetres = (m: number): string => `${Number((m * 1000).toFixed(1))} mm`;

const rounded = (x: number): number => Number(x.toFixed(6)) + 0;

/** Splits "shaft/seat" and finds both in the model. */
function find(session: Session, reference: string): { readonly shaft: Shaft; readonly seat: Seat } {
  const [shaftId, seatId] = reference.split('/');
  const shaft = session.evaluation.model.shafts.find((one) => one.id === shaftId);
  const seat = shaft?.seats.find((one) => one.id === seatId);
  if (!shaft || !seat) throw new Error(`There is no seat ${reference}.`);
  return { shaft, seat };
}

const FITS: Readonly<Record<string, readonly string[]>> = {
  'sprocket line': ['sprocket', 'pulley'],
  'gear position': ['gear'],
};

/** Adjusters that no longer fit once a seat is of another kind, or once these references are gone. */
function misfits(
  session: Session,
  seat: string,
  kind: string,
  gone: (reference: string) => boolean,
): readonly string[] {
  return Object.entries(session.build.path.adjusters ?? {})
    .filter(
      ([, { sets, of, moves }]) => gone(of) || gone(moves) || (of === seat && !(FITS[sets]?.includes(kind) ?? true)),
    )
    .map(([id]) => id);
}

const adjusterNotes = (session: Session, ids: readonly string[]): readonly string[] =>
  ids.map((id) => `The adjuster “${session.build.path.adjusters?.[id]?.name}” goes too.`);

const seatPatches = (seat: Seat, kind: string, name: string): readonly Patch[] => [
  ...(seat.kind === kind ? [] : [{ op: 'set', at: `${seat.address}/kind`, value: kind } as const]),
  ...(seat.name === name ? [] : [{ op: 'set', at: `${seat.address}/name`, value: name } as const]),
];

const seatName = (kind: string, teeth: number): string => (teeth > 0 ? `${kind} ${teeth}` : kind);

/** Sizes of a new stage as its place needs them. */
function sizeOf(kind: string, stage: JsonObject): StageSize {
  const teeth = isJsonObject(stage.teeth) ? stage.teeth : {};
  const metres = (value: Json | undefined): number | null => {
    const read = typeof value === 'string' ? parseInput(value, 'length') : null;
    return read?.ok ? read.si : null;
  };
  return {
    kind,
    driver: Number(teeth.driver ?? 0),
    driven: Number(teeth.driven ?? 0),
    chain: typeof stage.chain === 'string' ? stage.chain : null,
    pitch: metres(stage.pitch),
    module: metres(stage.module),
  };
}

/** The filled form as a stage, with the seats that it sits on; all faults at once. */
function newStage(session: Session, kind: string, answers: Answers, ends: { from: string; to: string }) {
  const branch = stageBranch(session, kind);
  if (!branch)
    return refusal(NEW_STAGE, 'There is no such kind of stage.', kind, `One of ${stageKinds(session).join(', ')}.`);
  const made = makeValue(branch, NEW_STAGE, kind, {
    ...answers,
    [`${NEW_STAGE}/from`]: ends.from,
    [`${NEW_STAGE}/to`]: ends.to,
  });
  const faults = made.ok ? [] : [...made.faults];
  for (const [address, name] of [
    [SHAFT_NAME, 'A name for the shaft'],
    [BODY, 'What carries the bearings'],
  ] as const)
    if ((answers[address] ?? '').trim() === '')
      faults.push({ code: 'edit.required', address, problem: `${name} is wanted.`, read: '', accepted: '' });
  const at = `${NEW_STAGE}/module`;
  const moduleText = answers[at]?.trim() ?? '';
  const node = branch.properties?.module;
  const module = moduleText !== '' && node?.['x-field'] ? typedValue(at, moduleText, node, node['x-field']) : null;
  if (module && !module.ok) faults.push(module.fault);
  if (faults.length > 0 || !made.ok || !isJsonObject(made.value)) return { ok: false, faults } as const;
  return { ok: true, stage: module?.ok ? { ...made.value, module: module.value } : made.value } as const;
}

/**
 * Puts a new stage into the path beside another, with a new shaft between: the new stage takes over the seat that it comes to stand at, and
 * the other stage moves to the new shaft.
 */
export function insertStage(session: Session, request: Extract<EditRequest, { do: 'insert stage' }>): StructureEdit {
  const { kind, answers, side } = request;
  const moved = session.build.path.stages[request.stage];
  if (!moved)
    return refusal(`${STAGES}/${request.stage}`, 'There is no such stage.', request.stage, 'A stage of the path.');
  const { shafts, stages } = session.build.path;
  const shaftText = answers[SHAFT_NAME]?.trim() ?? '';
  const shaftId = newId(shaftText, ['output', ...Object.keys(shafts)], 'shaft');
  const [keptEnd, otherEnd] = side === 'before' ? [moved.from, moved.to] : [moved.to, moved.from];
  const newKind = SEAT_OF_STAGE[kind] ?? '';
  const oldKind = SEAT_OF_STAGE[moved.kind] ?? '';
  const ids = newKind === oldKind ? [`${newKind}-1`, `${oldKind}-2`] : [newKind, oldKind];
  const newSeat = `${shaftId}/${ids[0]}`;
  const ends = side === 'before' ? { from: keptEnd, to: newSeat } : { from: newSeat, to: keptEnd };
  const read = newStage(session, kind, answers, ends);
  if (!read.ok) return read;

  const size = sizeOf(kind, read.stage);
  const kept = find(session, keptEnd);
  const other = find(session, otherEnd);
  const place = placeShaft(size, kept.shaft, kept.seat, other.shaft, other.seat);
  const [atKept, atNew] = side === 'before' ? [size.driver, size.driven] : [size.driven, size.driver];
  const body = answers[BODY]?.trim() ?? '';
  const bearing = (name: string, station: number) => ({ kind: 'bearing', name, station: millimetres(station), body });
  const shaft = {
    name: shaftText,
    origin: { x: millimetres(place.origin[0]), y: millimetres(place.origin[1]), z: millimetres(place.origin[2]) },
    direction: place.direction.map(rounded),
    seats: {
      'bearing-1': bearing('bearing 1', place.bearings[0]),
      [ids[0] as string]: { kind: newKind, name: seatName(newKind, atNew), station: millimetres(place.newStage) },
      [ids[1] as string]: { kind: oldKind, name: kept.seat.name, station: millimetres(place.oldStage) },
      'bearing-2': bearing('bearing 2', place.bearings[1]),
    },
  };
  const name = String(read.stage.name);
  const stageId = newId(name, Object.keys(stages), 'stage');
  const order = Object.keys(stages);
  const next = side === 'before' ? request.stage : (order[order.indexOf(request.stage) + 1] ?? null);
  const driven = moved.to.split('/')[0] ?? '';
  const unfit = misfits(session, keptEnd, newKind, () => false);
  const patches: readonly Patch[] = [
    ...seatPatches(kept.seat, newKind, seatName(newKind, atKept)),
    { op: 'set', at: `/path/shafts/${shaftId}`, value: shaft, before: driven },
    { op: 'set', at: `${STAGES}/${request.stage}/${side === 'before' ? 'from' : 'to'}`, value: `${shaftId}/${ids[1]}` },
    { op: 'set', at: `${STAGES}/${stageId}`, value: read.stage, before: next },
  ];
  const also = [
    `${shaftText} stands at a first place; draw it to size in the layout.`,
    `${moved.name} moves from ${kept.shaft.name} to ${shaftText}; bring its two ends into line.`,
    ...adjusterNotes(session, unfit),
  ];
  const done = takeOut(
    session,
    `Add ${small(kind)} “${name}” ${side} ${moved.name}`,
    unfit.map((id) => `/path/adjusters/${id}`),
    patches,
    also,
  );
  return done.ok ? { ...done, shows: `${STAGES}/${stageId}` } : done;
}

/**
 * Takes a stage out with the shaft that it drives, or, at the wheel, with the shaft that drives it; the stage beyond joins the shaft that
 * stays.
 */
export function removeStage(session: Session, id: string): StructureEdit {
  const { stages, shafts } = session.build.path;
  const stage = stages[id];
  const address = `${STAGES}/${id}`;
  if (!stage) return refusal(address, 'There is no such stage.', id, 'A stage of the path.');
  if (Object.keys(stages).length < 2)
    return refusal(address, `${stage.name} is the only stage.`, stage.name, 'Add another stage first.');
  const [from, to] = [find(session, stage.from), find(session, stage.to)];
  const last = to.shaft.seats.some((seat) => seat.kind === 'wheel');
  const [kept, gone] = last ? ([from, to].reverse() as [typeof to, typeof from]) : [from, to];
  const moved = Object.entries(stages).find(
    ([other, one]) => other !== id && (last ? one.to : one.from).startsWith(`${gone.shaft.id}/`),
  );
  if (!moved)
    return refusal(address, `No other stage joins ${gone.shaft.name}.`, stage.name, 'Change the stage instead.');
  const [movedId, movedStage] = moved;
  const movedSeat = find(session, last ? movedStage.to : movedStage.from).seat;
  const keptReference = `${kept.shaft.id}/${kept.seat.id}`;
  const within = (reference: string): boolean =>
    reference === id || reference === gone.shaft.id || reference.startsWith(`${gone.shaft.id}/`);
  const unfit = misfits(session, keptReference, movedSeat.kind, within);
  const patches: readonly Patch[] = [
    ...seatPatches(kept.seat, movedSeat.kind, movedSeat.name),
    { op: 'set', at: `${STAGES}/${movedId}/${last ? 'to' : 'from'}`, value: keptReference },
  ];
  const out = [address, `/path/shafts/${gone.shaft.id}`, ...unfit.map((one) => `/path/adjusters/${one}`)];
  const also = [
    `${shafts[gone.shaft.id]?.name ?? gone.shaft.name} goes with it.`,
    `${movedStage.name} joins ${kept.shaft.name}; bring its two ends into line.`,
    ...adjusterNotes(session, unfit),
  ];
  const name = `Take ${small(stage.name)} and ${small(gone.shaft.name)} out of the path`;
  const done = takeOut(session, name, out, patches, also);
  return done.ok ? { ...done, shows: `${STAGES}/${movedId}` } : done;
}
