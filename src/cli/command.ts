import { readFileSync } from 'node:fs';
import { Command, CommanderError, Option } from 'commander';
import { answer, type Streams } from './door.ts';
import type { Outcome } from './envelope.ts';
import { calendarDay, collect, examples, greatestSeed, STUDY, shareFrom, wholeNumber } from './option-values.ts';
import { addRecordingVerbs } from './recording-verbs.ts';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/**
 * Runs one command as given on a command line (without the program's own name): the exit code.
 * 0 done, 1 the study or the data refuse, 2 wrong usage.
 */
export async function runCommand(argv: readonly string[], streams: Streams): Promise<number> {
  let exit = 0;
  const program = new Command('uprate');

  /** Runs a verb's module, loaded only now: a command waits for nothing that it doesn't use. */
  const perform = async (verb: string, study: string | null, work: () => Promise<Outcome>) => {
    exit = await answer({ uprate: version, verb, study }, program.opts().json === true, streams, work);
  };

  program
    .description("Raise a computer board's power limit in small proven steps: currents, losses, temperatures, margins.")
    .version(version)
    .option('--json', 'one JSON document on standard output, SI numbers with their units')
    .configureOutput({ writeOut: streams.out, writeErr: streams.err })
    .exitOverride()
    .showHelpAfterError('Give --help to see how it is used.');

  const verb = (name: string, description: string) => program.command(name).description(description);

  verb('check', 'read a study and name everything in it that is wrong, open or without an uncertainty')
    .argument('[study]', STUDY, '.')
    .addHelpText('after', examples('uprate check', 'uprate check examples/mini-pc', 'uprate check mini-pc --json'))
    .action((study: string) => perform('check', study, async () => (await import('./check.ts')).runCheck(study)));

  verb('plan', 'compute each step: operating point, the limiter that holds, margins with their uncertainty')
    .argument('[study]', STUDY, '.')
    .option('--step <step>', 'only this step')
    .option('--budget <limit>', 'what makes the margin of this limit uncertain')
    .addOption(
      new Option('--by <group>', 'the budget by its inputs, or summed up').choices(['input', 'part', 'source']),
    )
    .option(
      '--global',
      'the budget without straight lines: over whole distributions, with what inputs do only together',
    )
    .option(
      '--samples <n>',
      'draws of the Monte Carlo, 1000 to 1000000, 20000 when left out; auto: until the near margins are accurate; 0: first order only',
      (text: string) => (text === 'auto' ? text : wholeNumber(1000, 1_000_000, 0)(text)),
    )
    .option('--seed <n>', 'seed of the Monte Carlo, 1 when left out', wholeNumber(0, greatestSeed))
    .option('--against <run>', 'beside the steady values measured in this run')
    .addOption(
      new Option('--reach', 'the highest power that each limit allows, on every heat path of the study').conflicts([
        'budget',
        'by',
        'global',
        'against',
      ]),
    )
    .option('--limiter <limiter>', 'with --reach: where the power is set; the one that holds when left out')
    .option('--confidence <share>', 'with --reach: of keeping a limit, 0.95 when left out', shareFrom(0.5, 0.999))
    .addHelpText(
      'after',
      examples(
        'uprate plan examples/mini-pc',
        'uprate plan examples/mini-pc --step stacked-9 --samples 5000 --seed 7',
        'uprate plan examples/accelerator --samples auto',
        'uprate plan examples/mini-pc --step stacked-9 --budget limits.skin',
        'uprate plan examples/mini-pc --step stacked-9 --budget limits.skin --by part',
        'uprate plan examples/mini-pc --step stacked-9 --budget limits.skin --global',
        'uprate plan examples/accelerator --against stair',
        'uprate plan examples/mini-pc --reach',
      ),
    )
    .action((study: string, options) =>
      perform('plan', study, async () =>
        (await import('./plan.ts')).runPlan(study, { ...options, progress: streams.progress }),
      ),
    );

  verb('advise', 'what to measure before a step: what each measurement would do for a margin, for its effort')
    .argument('[study]', STUDY, '.')
    .option('--step <step>', 'the step to be climbed; the second of the study when left out')
    .option('--limit <limit>', 'the limit whose margin is to be known better; the one that binds when left out')
    .option('--learnt', 'start from what the runs under `learning` have taught, not only from what is stated')
    .option('--all', 'show every measurement that was looked at')
    .option('--try <n>', 'try the first one on so many boards drawn from what is stated', wholeNumber(10, 10_000))
    .option('--seed <n>', 'seed of these boards, 1 when left out', wholeNumber(0, greatestSeed))
    .addHelpText(
      'after',
      examples(
        'uprate advise examples/mini-pc',
        'uprate advise examples/mini-pc --step stacked-12',
        'uprate advise examples/mini-pc --step stacked-9 --limit limits.skin --all',
        'uprate advise examples/mini-pc --step stacked-12 --try 50 --seed 7',
        'uprate advise mini-pc --json',
      ),
    )
    .action((study: string, options) =>
      perform('advise', study, async () => (await import('./advise.ts')).runAdvise(study, options)),
    );

  verb(
    'plate',
    "who carries the force of the cooler's screws: die, pads or stops; pressure, tilt, chance of no contact",
  )
    .argument('[study]', STUDY, '.')
    .option('--step <step>', 'only this step')
    .option('--svg <file>', 'draw the plate of this step, or of the last one, from above')
    .option('--samples <n>', 'draws, 4000 when left out; 0: first order only', wholeNumber(100, 1_000_000, 0))
    .option('--seed <n>', 'seed of the draws, 1 when left out', wholeNumber(0, greatestSeed))
    .addHelpText(
      'after',
      examples(
        'uprate plate examples/cooler',
        'uprate plate examples/cooler --step thick-pads',
        'uprate plate . --step thick-pads --svg plate.svg',
      ),
    )
    .action((study: string, options) =>
      perform('plate', study, async () => (await import('./plate.ts')).runPlate(study, options)),
    );

  verb('gate', 'go, hold or back before a step: every reason with its numbers, and what would change it')
    .argument('<study>', STUDY)
    .argument('<step>', 'the step to be climbed')
    .option('--samples <n>', 'draws, 1000 to 1000000, 20000 when left out', wholeNumber(1000, 1_000_000))
    .option('--seed <n>', 'seed of the draws, 1 when left out', wholeNumber(0, greatestSeed))
    .option('--today <day>', 'day to which the age of calibrations is counted, such as 2026-03-01', calendarDay)
    .addHelpText(
      'after',
      examples(
        'uprate gate examples/mini-pc stacked-22',
        'uprate gate mini-pc stacked-12 --samples 100000 --seed 7',
        'uprate gate mini-pc stacked-12 --json',
      ),
    )
    .action((study: string, step: string, options) =>
      perform('gate', study, async () =>
        (await import('./gate.ts')).runGate(study, step, { today: new Date().toISOString().slice(0, 10), ...options }),
      ),
    );

  verb(
    'sense',
    'what to solder at the sense points so that a limiter holds at another real power, from what is in stock',
  )
    .argument('[study]', STUDY, '.')
    .requiredOption('--limiter <limiter>', 'the limiter, by its id')
    .option('--target <power>', 'real power at its limit; again for each further step of a ladder', collect)
    .option('--hand <part>', 'look at what you would solder yourself instead; again for each part', collect)
    .option('--stock <file>', 'stock list; stock.yaml beside the study, or values commonly sold, when left out')
    .option('--step <step>', 'the step it starts from; the first of the study when left out')
    .option('--kinds <kinds>', 'any of replace,stack,divider; all when left out')
    .option('--top <n>', 'how many options to show; when left out 10, and 5 of a ladder', wholeNumber(1, 50))
    .option('--option <n>', 'the option to be told in full, the first when left out', wholeNumber(1, 50))
    .option('--meter <power>', 'standard uncertainty of your own power meter, for the low-load check')
    .option('--write', 'put the steps of the option told in full behind the last step of the study')
    .addHelpText(
      'after',
      examples(
        'uprate sense examples/mini-pc --limiter package-limit --target 65W',
        'uprate sense examples/mini-pc --limiter package-limit --target 62W --target 72W --target 80W --top 3',
        'uprate sense examples/mini-pc --limiter package-limit --target 65W --kinds stack --option 2',
        "uprate sense examples/mini-pc --limiter package-limit --hand 'core-sense + 22 mohm'",
        'uprate sense mini-pc --limiter package-limit --step stacked-9 --target 88W --write',
        "uprate sense mini-pc --limiter package-limit --target 65W --stock stock.yaml --meter '0.3 W' --json",
      ),
    )
    .action((study: string, options) =>
      perform('sense', study, async () => (await import('./sense.ts')).runSense(study, options)),
    );

  verb('cooling', 'the temperature lost over each layer, and what each change of the cooling buys at the same power')
    .argument('[study]', STUDY, '.')
    .option('--step <step>', 'only this step')
    .option('--from <node>', 'heat node where the way to ambient begins; the hottest one when left out')
    .option('--svg <file>', 'draw the stack of this step, or of the last one')
    .addHelpText(
      'after',
      examples(
        'uprate cooling examples/mini-pc --step stacked-12',
        'uprate cooling examples/cooler --from memory',
        'uprate cooling . --step new-paste --svg stack.svg',
      ),
    )
    .action((study: string, options) =>
      perform('cooling', study, async () => (await import('./cooling.ts')).runCooling(study, options)),
    );

  verb('calc', 'evaluate one formula of the catalogue, or solve it for an input; without a name, list them')
    .argument('[name]', 'the formula')
    .argument('[values...]', "its inputs as name=value, each with unit and uncertainty: a='5 mΩ ± 1 %'")
    .option('--search <words>', 'list only formulas with these words')
    .option('--solve <input>', 'the input that is unknown; give one result in its place')
    .option('--samples <n>', 'Monte Carlo draws', wholeNumber(100, 1e7))
    .option('--seed <n>', 'seed of the Monte Carlo draws', wholeNumber(0, greatestSeed))
    .addHelpText(
      'after',
      examples(
        'uprate calc --search ripple',
        'uprate calc parallel-resistance',
        "uprate calc parallel-resistance a='5 mΩ ± 1 %' b='22 mΩ ± 1 %'",
        "uprate calc parallel-resistance --solve b a='5 mΩ ± 1 %' resistance='4 mΩ'",
      ),
    )
    .action(async (name: string | undefined, values: string[], options) => {
      const { runCalc } = await import('./calc.ts');
      return perform('calc', null, async () => runCalc(name, values, options));
    });

  verb('number', 'what a number says as it is written: its distribution, mean, uncertainty, interval')
    .argument('<text>', 'number, unit and uncertainty, in quotes')
    .addHelpText(
      'after',
      examples("uprate number '100 mΩ ± 10 % (without ± 5 %)'", "uprate number '5.02(3) mΩ (10 readings)'"),
    )
    .action((text: string) => perform('number', null, async () => (await import('./number.ts')).runNumber(text)));

  addRecordingVerbs(verb, perform, streams);

  verb(
    'procedure',
    'the checklist of a step: isolate, change, inspect, measure, small load, full load; to print and to tick',
  )
    .argument('[study]', STUDY, '.')
    .requiredOption('--step <step>', 'the step to be climbed')
    .option('--tick <items...>', 'these items are done, by their number or name; stored with the time')
    .option('--untick <items...>', 'these items are not done after all')
    .option('--print <file>', 'write it to a page that can be printed: a name that ends in .html or .md')
    .option(
      '--low-load <power>',
      'true power of the check at a small load; 15 % of what the step lets through when left out',
    )
    .option('--resolution <power>', 'last digit of the power that the firmware shows; 0.1 W when left out')
    .addHelpText(
      'after',
      examples(
        'uprate procedure examples/mini-pc --step stacked-22',
        "uprate procedure examples/mini-pc --step stacked-22 --low-load '12 W'",
        'uprate procedure mini-pc --step stacked-22 --print checklist.html',
        'uprate procedure mini-pc --step stacked-22 --tick 1 2 back-up',
        'uprate procedure mini-pc --step stacked-22 --untick 2',
      ),
    )
    .action((study: string, options) =>
      perform('procedure', study, async () =>
        (await import('./procedure.ts')).runProcedure(study, { ...options, now: new Date() }),
      ),
    );

  verb('undo', 'the way back from a step to an earlier one: what is taken back, and what must then be measured')
    .argument('[study]', STUDY, '.')
    .requiredOption('--step <step>', 'where the board stands')
    .option('--to <step>', 'where it is to be; the board as delivered when left out')
    .addHelpText(
      'after',
      examples(
        'uprate undo examples/mini-pc --step stacked-9',
        'uprate undo examples/mini-pc --step stacked-12 --to stacked-22',
        'uprate undo mini-pc --step stacked-22 --json',
      ),
    )
    .action((study: string, options) =>
      perform('undo', study, async () => (await import('./undo.ts')).runUndo(study, options)),
    );

  verb('open', 'start the local server and open the study in the browser')
    .argument('[study]', STUDY, '.')
    .option('--host <address>', 'address to listen at; another than 127.0.0.1 lets other machines in', '127.0.0.1')
    .option('--port <n>', 'port to listen at; 0 takes a free one', wholeNumber(0, 65_535), 0)
    .option('--no-browser', "print the address, don't open a browser")
    .addHelpText('after', examples('uprate open examples/mini-pc', 'uprate open . --port 8200 --no-browser'))
    .action((study: string, options) =>
      perform('open', study, async () => (await import('./open.ts')).runOpen(study, options)),
    );

  try {
    if (argv.length === 0) {
      streams.err(program.helpInformation());
      return 2;
    }
    await program.parseAsync(argv, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? 0 : 2;
  }
  return exit;
}
