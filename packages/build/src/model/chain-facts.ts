import type { StageFile } from '../schema/path.ts';

type File = Extract<StageFile, { readonly kind: 'chain' }>;

/** How a chain is oiled. */
export type Oiled = NonNullable<File['oiled']>;
/** What a broken end would hit. */
export type Breaks = NonNullable<File['breaks']>;
