import type { Fault } from '../fault.ts';
import { FORMAT } from '../schema/build-file.ts';

/** Lifts a build from one format to the next; pure, and gets a value of its own to change. */
export interface Migration {
  readonly from: number;
  readonly lift: (build: Record<string, unknown>) => Record<string, unknown>;
}

/** One entry for each format older than the present one, oldest first. */
export const MIGRATIONS: readonly Migration[] = [
  // Format 2 adds adjusters, idlers, sizes of seats and bearings, spirals, what couplings take; all of it may be blank.
  { from: 1, lift: (build) => build },
  // Format 3 adds the vehicle on the road, space, the arm on its stand, largest sprockets, a speedometer, pictures; all may be blank.
  { from: 2, lift: (build) => build },
  // Format 4 adds what strength asks for: steels, diameters, notches, joints, bearings by number, plates, duty, loads; all may be blank.
  { from: 3, lift: (build) => build },
];

export type Migrated =
  | { readonly ok: true; readonly value: Record<string, unknown>; readonly from: number }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const formatFault = (code: string, problem: string, read: unknown, newest: number): Migrated => ({
  ok: false,
  faults: [
    {
      code,
      address: '/format',
      problem,
      read: read === undefined ? 'nothing' : JSON.stringify(read),
      accepted: `A whole number from 1 to ${newest}: "format": ${newest}`,
    },
  ],
});

/**
 * Brings a build to the present format, step by step.
 * A newer format, or none, is a fault: such a file is never rewritten.
 */
export function migrate(
  value: unknown,
  migrations: readonly Migration[] = MIGRATIONS,
  newest: number = FORMAT,
): Migrated {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return {
      ok: false,
      faults: [
        {
          code: 'shape.type',
          address: '',
          problem: 'A build is a group of named values.',
          read: JSON.stringify(value).slice(0, 60),
          accepted: 'A file that begins with { "format": 4, "name": … }',
        },
      ],
    };
  const format: unknown = 'format' in value ? value.format : undefined;
  if (format === undefined) return formatFault('format.missing', 'The file does not say its format.', format, newest);
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1)
    return formatFault('format.bad', 'The format is not a number that this file could have.', format, newest);
  if (format > newest)
    return formatFault(
      'format.newer',
      `The file is of format ${format}, newer than this Oddwheel reads. It is left as it is; use a newer Oddwheel.`,
      format,
      newest,
    );
  let build: Record<string, unknown> = JSON.parse(JSON.stringify(value));
  for (let at = format; at < newest; at += 1) {
    const step = migrations.find((migration) => migration.from === at);
    if (!step) return formatFault('format.no-way', `There is no way from format ${at} to ${at + 1}.`, format, newest);
    build = { ...step.lift(build), format: at + 1 };
  }
  return { ok: true, value: build, from: format };
}
