import type { Command } from 'commander';
import type { ExitCode, Io } from '../io.ts';
import { type AddOptions, trueAdd } from './add.ts';
import { type ShowOptions, trueNext, trueShow } from './show.ts';

const ADD_HELP = `
Examples:
  oddwheel true add hauler --body '{ "part": "jackshaft", "seats": { "a": "20 mm", "b": "180 mm" },
    "goal": { "station": "260 mm", "tir": "3 thou" } }'
  oddwheel true add hauler --readings dial.csv --body '{ "part": "jackshaft", "station": "260 mm",
    "setup": "own bearings", "unit": "thou", "step": 0.5, "sign": "out" }'
  oddwheel true add hauler --body '{ "part": "jackshaft", "way": "bead",
    "bead": { "clock": "6:30", "length": "8 mm" } }'
  oddwheel true add hauler --strike desk.7
`;

/** Declares the verb `true` and what can be done with it. */
export function declareTrue(program: Command, io: Io, done: (code: ExitCode) => void): void {
  const verb = program.command('true').description('measure run-out and bring it down');
  verb
    .command('add')
    .argument('[folder]', 'folder of the build', '.')
    .description('put a part, a set of dial readings, a round of correction or a strike on the record')
    .option('--body <json>', 'the entry; read from standard input when left out')
    .option('--readings <file>', 'CSV file with the readings of the set: mark in degrees, dial')
    .option('--strike <id>', 'strike out an entry; it stays in the file')
    .option('--device <name>', 'who keeps the record: letters, digits, "-" and "_"', 'desk')
    .option('--taken <time>', 'when it was measured, such as 2031-05-04T16:20:00Z; now when left out')
    .option('--json', 'print the id as JSON')
    .addHelpText('after', ADD_HELP)
    .action(async (folder: string, { body, ...options }: Omit<AddOptions, 'set'> & { body?: string }) =>
      done(await trueAdd(io, folder, body === undefined ? options : { ...options, set: body })),
    );
  for (const [name, says, run] of [
    ['show', 'run-out of each part against its two seats, and the shape of its fault', trueShow],
    ['next', 'the next correction of each part', trueNext],
  ] as const)
    verb
      .command(name)
      .argument('[folder]', 'folder of the build', '.')
      .description(says)
      .option('--part <id>', 'this part alone')
      .option('--unit <unit>', 'unit that TIR is told in: thou, mm or µm', 'thou')
      .option('--json', 'print it as JSON')
      .addHelpText('after', `\nExample:\n  oddwheel true ${name} hauler\n`)
      .action(async (folder: string, options: ShowOptions) => done(await run(io, folder, options)));
}
