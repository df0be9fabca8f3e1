import type { EditRequest, Form, StructureEdit } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Hold, HoldProgress } from '@oddwheel/build/hold/types';
import { proxy } from 'comlink';
import type { Actions } from '../state/actions.ts';
import type { RemoteModel } from '../worker/remote.ts';

/** A change of structure that can be made. */
export type Planned = Extract<StructureEdit, { readonly ok: true }>;

/** What the inspector asks and does to add things and take them out. */
export interface StructureTools {
  readonly form: (at: string, kind: string | null) => Promise<Form>;
  /** Turns a wanted change into an edit, without making it. */
  readonly plan: (request: EditRequest) => Promise<StructureEdit>;
  /** Makes the edit, all of it or none. */
  readonly make: (edit: Pick<Planned, 'name' | 'patches'>) => Promise<Fault | null>;
  /** Looks for changes that make a finding hold; null when it gave up. */
  readonly hold: (finding: string, tell: (progress: HoldProgress) => void) => Promise<Hold | null>;
  readonly stopHold: () => void;
  /** Shows what stands at an address, with the focus in its first field. */
  readonly reveal: (address: string) => void;
  readonly putPicture: (bytes: Uint8Array) => Promise<string>;
  readonly pictureUrl: (hash: string) => Promise<string>;
}

export function structureTools(model: RemoteModel, actions: Actions): StructureTools {
  return {
    form: (at, kind) => model.form(at, kind),
    plan: (request) => model.structureEdit(request),
    make: ({ name, patches }) => actions.applyEdit(name, patches, patches.length > 1),
    hold: (finding, tell) => model.hold(finding, proxy(tell)),
    stopHold: () => void model.stopHold(),
    reveal: actions.reveal,
    putPicture: actions.putPicture,
    pictureUrl: actions.pictureUrl,
  };
}
