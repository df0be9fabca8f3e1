import type { Json } from '@oddwheel/build/document/json';
import { appendedLines } from '@oddwheel/build/document/ndjson';
import type { Fault } from '@oddwheel/build/fault';
import { bodyFaults } from '@oddwheel/build/true/read-body';
import { lastOf, nextCounter, readTrue } from '@oddwheel/build/true/record';
import type { Outbox, Waiting } from '@oddwheel/store/browser-outbox';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { RunOutClient } from '../link/host-client.ts';
import { type Draft, readDraft } from './draft.ts';

/** The record of run-out as the page has it. */
export interface RunOutState {
  /** The record has been read, or is known to be out of reach. */
  readonly ready: boolean;
  /** The record with all that waits here. */
  readonly text: string;
  /** Sets of readings that stand on it. */
  readonly sets: number;
  /** Ids of entries that wait to be kept for good. */
  readonly waiting: readonly string[];
  /** Entries that wait for another build, by its name. */
  readonly elsewhere: readonly { readonly build: string; readonly count: number }[];
  readonly online: boolean;
  /** What waits here outlasts a reload. */
  readonly lasting: boolean;
  /** The set that is being keyed in. */
  readonly draft: Draft | null;
  readonly trouble: string | null;
}

/** The record of run-out of the build on the page, and what can be done with it. */
export interface RunOut {
  readonly store: StoreApi<RunOutState>;
  /** Turns to the record of a build, by the name that it is kept under; and sends what waits for it. */
  readonly turnTo: (build: string) => Promise<void>;
  /** Puts a part, a set, a round or a strike on the record; gives what is wrong with it. */
  readonly add: (kind: string, body: Json) => Promise<readonly Fault[]>;
  readonly setDraft: (draft: Draft | null) => void;
  /** Gives what waits for another build to this one. */
  readonly adopt: (build: string) => Promise<void>;
  readonly dismissTrouble: () => void;
}

interface Parts {
  readonly client: RunOutClient;
  readonly outbox: Outbox;
  /** Permanent name of this device. */
  readonly device: string;
  /** The time, ISO 8601. */
  readonly now: () => string;
}

const RETRY_AFTER = 2000;
const DRAFT = 'run-out draft';
const recordNote = (build: string): string => `run-out record ${build}`;

/** Runs one piece of work after the other, whatever becomes of each. */
function queue(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const run = last.then(work);
    last = run.catch(() => undefined);
    return run;
  };
}

/** The record of run-out: entries go into the browser first, and from there to whatever keeps the build, once each. */
export function createRunOut({ client, outbox, device, now }: Parts): RunOut {
  const store = createStore<RunOutState>(() => ({
    ready: false,
    text: '',
    sets: 0,
    waiting: [],
    elsewhere: [],
    online: true,
    lasting: outbox.lasting,
    draft: null,
    trouble: null,
  }));
  let wanted: string | null = null;
  let build: string | null = null;
  /** The record as what keeps the build last gave it. */
  let kept = '';
  /** Ids that were refused: they stay here, and are not sent again before the page is loaded anew. */
  const refused = new Set<string>();
  // What is kept in the browser never waits for the network: two queues.
  const inTurn = queue();
  const inNetworkTurn = queue();

  const own = async (): Promise<readonly Waiting[]> => (await outbox.all()).filter((one) => one.build === build);

  /** Shows the record with what waits here. Part of a turn. */
  const show = async (more: Partial<RunOutState> = {}): Promise<void> => {
    const all = await outbox.all();
    const mine = all.filter((one) => one.build === build);
    const others = [...new Set(all.filter((one) => one.build !== build).map((one) => one.build))];
    const entries = mine.map(({ entry }) => entry);
    const text = entries.length === 0 ? kept : kept + appendedLines(kept, entries);
    store.setState({
      ...(text === store.getState().text ? {} : { text, sets: readTrue(text).sets.length }),
      waiting: mine.map(({ id }) => id),
      elsewhere: others.map((name) => ({ build: name, count: all.filter((one) => one.build === name).length })),
      ready: true,
      ...more,
    });
  };

  /** Reads the record anew. What was acknowledged is let go of once it was seen there. */
  const refresh = async (acknowledged: readonly string[] = []): Promise<void> => {
    if (build === null) return;
    const name = build;
    const text = await client.read();
    const noted = text === null && kept === '' ? await outbox.noted(recordNote(name)) : undefined;
    await inTurn(async () => {
      if (name !== build) return;
      if (text === null) {
        if (typeof noted === 'string') kept = noted;
        return show({ online: false });
      }
      if (text !== kept) await outbox.note(recordNote(name), text);
      kept = text;
      await outbox.remove(acknowledged);
      await show({ online: true });
    });
  };

  const newId = async (): Promise<string> => {
    const least = nextCounter(store.getState().text, device);
    return `${device}.${await outbox.nextNumber(least)}`;
  };

  /** Another entry has the id of this one, as after the browser lost its numbers: it gets a new one, and keeps its place. */
  const renumber = async (one: Waiting): Promise<void> => {
    const id = await newId();
    const others = (await own()).flatMap((other) =>
      other.entry.after === one.id ? [{ ...other, entry: { ...other.entry, after: id } }] : [],
    );
    await outbox.put([{ ...one, id, entry: { ...one.entry, id } }, ...others]);
    await outbox.remove([one.id]);
    await show();
  };

  const send = async (): Promise<void> => {
    const sent = (await own()).filter(({ id }) => !refused.has(id));
    if (sent.length === 0) return;
    const answer = await client.add(sent.map(({ entry }) => entry));
    if (!answer) return store.setState({ online: false });
    await refresh(answer.acknowledged);
    for (const fault of answer.refused) {
      const one = sent[Number(/^\/(\d+)/.exec(fault.address)?.[1])];
      if (!one || refused.has(one.id)) continue;
      if (fault.code === 'true.clash') await inTurn(() => renumber(one));
      else {
        refused.add(one.id);
        store.setState({
          trouble: `An entry is kept here but not taken there: ${fault.problem} Read: ${fault.read}. Accepted: ${fault.accepted}.`,
        });
      }
    }
    if (answer.refused.some(({ code }) => code === 'true.clash')) await send();
  };

  const trouble = (why: unknown): void =>
    store.setState({ trouble: `The browser did not keep it: ${why instanceof Error ? why.message : String(why)}` });
  const go = (work: () => Promise<void>): void => void inNetworkTurn(work).catch(trouble);
  const catchUp = (): void => go(async () => refresh().then(send));

  let listening = false;
  const listen = (): void => {
    if (listening) return;
    listening = true;
    client.listen(
      () => go(() => refresh()),
      (up) => {
        if (up) catchUp();
        else store.setState({ online: false });
      },
    );
    setInterval(() => {
      // Without anything to send, the stream of events tells when the connection is back.
      if (store.getState().waiting.some((id) => !refused.has(id))) catchUp();
    }, RETRY_AFTER);
  };

  return {
    store,
    turnTo: async (name) => {
      if (name === wanted) return;
      wanted = name;
      await inTurn(async () => {
        build = name;
        kept = '';
        store.setState({ ready: false, draft: readDraft(await outbox.noted(DRAFT), name) });
      });
      await inNetworkTurn(() => refresh());
      listen();
      go(send);
    },
    add: (kind, body) =>
      inTurn(async () => {
        const faults = bodyFaults(kind, body);
        if (faults.length > 0 || build === null) return faults;
        const taken = now();
        const entry = {
          id: await newId(),
          kind,
          taken,
          logged: taken,
          after: afterOf(store.getState().text, kind, body),
          body,
        };
        await outbox.put([{ id: entry.id, build, entry }]);
        await show();
        return faults;
      }).then((faults) => {
        if (faults.length === 0) go(send);
        return faults;
      }),
    setDraft: (draft) => {
      store.setState({ draft });
      const note = draft === null || build === null ? null : ({ ...draft, build } as unknown as Json);
      inTurn(() => outbox.note(DRAFT, note)).catch(trouble);
    },
    adopt: (from) =>
      inTurn(async () => {
        const to = build;
        if (to === null) return;
        const moved = (await outbox.all()).filter((one) => one.build === from);
        await outbox.put(moved.map((one) => ({ ...one, build: to })));
        await show();
      }).then(() => go(send)),
    dismissTrouble: () => store.setState({ trouble: null }),
  };
}

/** The entry that a new one comes after, so that the sequence holds whoever sends first. */
function afterOf(text: string, kind: string, body: Json): string | null {
  const part = typeof body === 'object' && body !== null && 'part' in body ? body.part : undefined;
  if (typeof part !== 'string') return null;
  const record = readTrue(text);
  return kind === 'true-part' ? (record.parts.get(part)?.id ?? null) : lastOf(record, part);
}
