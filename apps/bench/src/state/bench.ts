import type { Assessment, Here } from '@oddwheel/build/assess/types';
import type { Structure } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import type { Explanation, Field } from '@oddwheel/build/session-types';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Sync } from '../link/sync.ts';
import type { StepId } from '../steps/steps.ts';
import type { Shelf } from '../worker/keeper-api.ts';
import type { Part } from '../worker/model-api.ts';
import type { Mode } from './actions.ts';
import { type Look, ownerOf } from './look.ts';

/** Everything that the page shows. */
export interface BenchState {
  readonly assessment: Assessment | null;
  readonly parts: readonly Part[];
  /** Hash of the build on the page. */
  readonly hash: string;
  /** What is wrong with the file on the disk; empty when it can be read. */
  readonly fileFaults: readonly Fault[];
  readonly sync: Sync | null;
  /** The builds that the page keeps itself; null where a host serves one. */
  readonly shelf: Shelf | null;
  /** The host serves a folder without a build. */
  readonly empty: boolean;
  /** Hash of the build when it was last saved as one file. */
  readonly savedAs: string | null;
  readonly look: Look;
  /** Fields of the element in the inspector, and what can be added to it and taken out. */
  readonly fields: {
    readonly address: string;
    readonly fields: readonly Field[];
    readonly structure: Structure;
  } | null;
  /** Working of the opened finding, once it is built. */
  readonly explanation: Explanation | null;
  /** Load case that the opened finding is worked for; null for the one that governs. */
  readonly workedCase: string | null;
  /** What the slider was asked for, until the model has answered. */
  readonly asked: Here | null;
  /** The model has worked on one thing for longer than a moment: numbers on the page are of before. */
  readonly working: boolean;
  /** Result of the last edit, for a screen reader. */
  readonly said: string;
  readonly toast: { readonly id: number; readonly text: string } | null;
  /** Something the page could not do. */
  readonly trouble: string | null;
  readonly mode: Mode;
  /** Whether the path strip is open on the steps that are about its numbers, and on the others. */
  readonly strip: { readonly numbers: boolean; readonly others: boolean };
  readonly singleKeys: boolean;
}

export type BenchStore = StoreApi<BenchState>;

/** The page before anything is read. */
export function createBenchStore(look: Look, mode: Mode, singleKeys: boolean): BenchStore {
  return createStore<BenchState>(() => ({
    assessment: null,
    parts: [],
    hash: '',
    fileFaults: [],
    sync: null,
    shelf: null,
    empty: false,
    savedAs: null,
    look,
    fields: null,
    explanation: null,
    workedCase: null,
    asked: null,
    working: false,
    said: '',
    toast: null,
    trouble: null,
    mode,
    strip: { numbers: true, others: false },
    singleKeys,
  }));
}

/** The element or part of the build that an address belongs to; null when it belongs to none. */
export function elementOf(state: Pick<BenchState, 'assessment' | 'parts'>, address: string): string | null {
  const known = [...(state.assessment?.path ?? []), ...state.parts].map((one) => one.address);
  // The build's own name has its place beside its units.
  return ownerOf(address === '/name' || address === '/about' ? '/units' : address, known);
}

/** The element in the inspector: the chosen one, else the one that breaks first, else the first of the path. */
export function elementInView(state: BenchState): string | null {
  const { look, assessment } = state;
  if (!assessment) return null;
  const first = assessment.findings[0];
  return (
    (look.element === null ? null : elementOf(state, look.element)) ??
    (first ? elementOf(state, first.address) : null) ??
    assessment.path[0]?.address ??
    null
  );
}

/** Name of an element or a part of the build, as its column or cell says it. */
export function nameOfElement(state: BenchState, address: string): string {
  const { assessment, parts } = state;
  const found = assessment?.path.find((one) => one.address === address) ?? parts.find((one) => one.address === address);
  return found?.name ?? address;
}

/** Ratios and Strength are about the numbers of the path; there its strip stands open unless it was folded. */
export function stripKind(step: StepId): keyof BenchState['strip'] {
  return step === 'ratios' || step === 'strength' ? 'numbers' : 'others';
}
