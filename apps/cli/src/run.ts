import { Command, CommanderError, Option } from 'commander';
import { type CheckOptions, check } from './check/check.ts';
import type { HoldOptions } from './hold-verb.ts';
import { BAD, DONE, type ExitCode, type Io } from './io.ts';
import { newBuild } from './new-build.ts';
import type { RatiosOptions } from './ratios/ratios.ts';
import { reckonVerb } from './reckon-verb.ts';
import { declareTrue } from './true/declare.ts';
import { VERSION } from './version.ts';

const EXIT_CODES = `
Exit codes: 0 done; 1 check found something that fails; 2 bad input or usage.`;

const CAUTION = `
The numbers are design aids: local codes, inspection and licensed practice decide.`;

const examples = (...lines: string[]): string =>
  `\n${lines.length > 1 ? 'Examples' : 'Example'}:\n${lines.map((line) => `  ${line}`).join('\n')}\n`;

/** The command line as declared; `done` takes the exit code of the verb that ran. */
function declare(io: Io, done: (code: ExitCode) => void): Command {
  const program = new Command('oddwheel')
    .description('The bench for one-off drives: from this engine and that wheel to a reduction drive that is proved.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('--help', 'show this help')
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => void io.stdout.write(text),
      writeErr: (text) => void io.stderr.write(text),
      getOutHelpWidth: () => 100,
      getErrHelpWidth: () => 100,
    })
    .showHelpAfterError('(oddwheel --help shows the verbs, oddwheel VERB --help one of them)')
    .addHelpText(
      'after',
      examples('oddwheel new hauler', 'oddwheel check hauler', 'oddwheel open hauler') + EXIT_CODES + CAUTION,
    );

  program
    .command('new')
    .argument('<folder>', 'folder to make; it must not be there yet, or be empty')
    .description('start a build from a demo build, or from one that the bench saved as one file')
    .option('--like <name>', 'demo build to start from, or a saved file ending in .zip', 'marsh-hauler')
    .option('--json', 'print what was made as JSON')
    .addHelpText(
      'after',
      examples('oddwheel new hauler --like marsh-hauler', 'oddwheel new hauler --like Marsh-hauler.oddwheel.zip'),
    )
    .action(async (folder: string, options: { like: string; json?: true }) =>
      done(await newBuild(io, folder, options)),
    );

  program
    .command('check')
    .argument('[folder]', 'folder of the build', '.')
    .description('assess the build: the path, the gears, then the findings')
    .option('--gear <gear>', 'gear that the path is shown in, e.g. 2')
    .option('--speed <speed>', 'road speed that the path is shown at, e.g. "18 km/h"')
    .option('--beside <folder>', 'another build to put beside it, such as the donor vehicle')
    .option('--shafts [case]', 'tell each shaft along its length, in a load case or in the worst of each')
    .option('--json', 'print the whole assessment as JSON')
    .addHelpText(
      'after',
      examples(
        'oddwheel check hauler',
        'oddwheel check hauler --gear 2 --speed "18 km/h"',
        'oddwheel check hauler --beside donor',
        'oddwheel check hauler --shafts 1/start',
        'oddwheel check hauler --json',
      ) + EXIT_CODES,
    )
    .action(async (folder: string, options: CheckOptions) => done(await check(io, folder, options)));

  program
    .command('hold')
    .argument('[folder]', 'folder of the build', '.')
    .argument('[finding]', 'finding, check or address; without it the first five that are short')
    .description('find the smallest changes that make a finding hold')
    .option('--all', 'try every finding that is short of its reserve; this takes a while')
    .option('--json', 'print the proposals as JSON')
    .addHelpText(
      'after',
      examples(
        'oddwheel hold hauler',
        'oddwheel hold hauler bearing.static',
        'oddwheel hold hauler shaft.slope:/path/shafts/shaft-b --json',
      ),
    )
    .action(async (folder: string, finding: string | undefined, options: HoldOptions) => {
      const { holdVerb } = await import('./hold-verb.ts');
      done(await holdVerb(io, folder, finding, options));
    });

  program
    .command('ratios')
    .argument('[folder]', 'folder of the build', '.')
    .description('rank the trains that the targets ask for and the build has room for')
    .option('--best <count>', 'how many to list; 10 when left out')
    .option('--order <words>', 'what counts first, second …: ratio, links, wrap, buy, wear, chordal, mass')
    .option('--targets <words>', 'targets that set the ratio: cruise, top speed, pull, climb, feel')
    .option('--shelf', 'only trains whose parts are on the shelf')
    .option('--swap <stage>', 'print what other teeth would do in this stage, e.g. chain-1 or chain-1/driven')
    .option('--teeth <range>', 'with --swap: teeth to try, e.g. 13..19, or shelf')
    .option('--speed <speed>', 'road speed that engine speeds are told at, e.g. "40 km/h"')
    .option('--json', 'print the answer as JSON')
    .addHelpText(
      'after',
      examples(
        'oddwheel ratios hauler',
        'oddwheel ratios hauler --order ratio,buy,mass --best 5',
        'oddwheel ratios hauler --swap chain-2/driver --teeth 13..17',
      ),
    )
    .action(async (folder: string, options: RatiosOptions) => {
      const { ratios } = await import('./ratios/ratios.ts');
      done(await ratios(io, folder, options));
    });

  program
    .command('open')
    .argument('[folder]', 'folder of the build', '.')
    .description('serve the bench on 127.0.0.1 and open the browser')
    .option('--port <number>', 'port to listen on; 4717 or the next free one when left out')
    .option('--lan', 'serve the workshop’s network too; each device is paired with a code')
    .option('--no-browser', 'do not open a browser')
    .option('--json', 'print the address as one line of JSON')
    .addHelpText('after', examples('oddwheel open hauler', 'oddwheel open hauler --lan --port 5000'))
    .action(async (folder: string, options: { port?: string; lan?: true; browser: boolean; json?: true }) => {
      const { openVerb } = await import('./open-verb.ts');
      done(await openVerb(io, folder, options));
    });

  program
    .command('reckon')
    .argument('[method]', 'id of the method, e.g. chain.length')
    .description('run one method alone: JSON in on standard input, JSON out')
    .addOption(new Option('--list', 'name all methods with one line each').conflicts('schema'))
    .option('--schema', 'print the JSON Schemas of its input and output')
    .option('--json', 'with --list: print the list as JSON; a method’s answer always is JSON')
    .addHelpText(
      'after',
      examples(
        'oddwheel reckon --list',
        'oddwheel reckon chain.length --schema',
        'oddwheel reckon chain.length < in.json',
      ),
    )
    .action(async (method: string | undefined, options: { list?: true; schema?: true; json?: true }) =>
      done(await reckonVerb(io, method, options)),
    );

  declareTrue(program, io, done);

  return program;
}

/**
 * Runs the command once.
 * @param argv arguments after the program's name
 * @returns the exit code: 0 done, 1 `check` found something that fails, 2 bad input or usage
 */
export async function runCli(argv: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = DONE;
  const program = declare(io, (given) => {
    code = given;
  });
  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? DONE : BAD;
  }
  return code;
}
