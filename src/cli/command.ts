import { readFileSync } from 'node:fs';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { isDay } from '../study/schema/gate.ts';
import { answer, type Streams } from './door.ts';
import type { Outcome } from './envelope.ts';

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

  verb('import', 'read text logs into a run of the study')
    .argument('<study>', STUDY)
    .argument('<files...>', 'the logs')
    .option('--id <name>', 'name of the run; made from the name of the log when left out')
    .option('--time <heading>', 'heading of the time column')
    .option('--delimiter <character>', 'what stands between the fields: , ; | or \\t')
    .option('--unit <heading=unit>', 'unit of a column; once for each', collect)
    .option('--text <heading>', 'a column that holds words; once for each', collect)
    .option('--allow-cut', 'leave out a last line that was cut off')
    .option('--dry', 'show what is found, store nothing')
    .addHelpText(
      'after',
      examples(
        'uprate import mini-pc log.csv --id baseline',
        'uprate import mini-pc before.csv after.csv',
        'uprate import mini-pc log.csv --unit temp=degC --dry',
      ),
    )
    .action((study: string, files: string[], options) =>
      perform('import', study, async () =>
        (await import('./import.ts')).runImport(study, files, { ...options, progress: streams.progress }),
      ),
    );

  verb(
    'record',
    'record into a run of the study; a rehearsal plays a virtual board, so that the job can be tried before touching the real one',
  )
    .argument('<study>', STUDY)
    .requiredOption('--source <source>', 'where the readings come from: rehearsal')
    .option('--step <step>', 'the step that is played; the first of the study when left out')
    .option(
      '--load <shares>',
      "loads one after the other, as shares of the full demand; '10 %,100 %,10 %' when left out",
    )
    .option('--hold <time>', 'how long each load lasts; 30 min when left out')
    .option(
      '--seed <n>',
      'which virtual board: the same seed is the same board at every step; 1 when left out',
      wholeNumber(0, greatestSeed),
    )
    .option('--id <name>', 'name of the run; made from the step when left out')
    .addHelpText(
      'after',
      examples(
        'uprate record mini-pc --source rehearsal',
        "uprate record mini-pc --source rehearsal --step stacked-22 --load '100 %' --hold '45 min' --id full-load",
        'uprate record mini-pc --source rehearsal --seed 7 --id baseline',
      ),
    )
    .action((study: string, options) =>
      perform('record', study, async () =>
        (await import('./record.ts')).runRecord(study, { ...options, progress: streams.progress }),
      ),
    );

  verb('runs', 'list the runs of a study')
    .argument('[study]', STUDY, '.')
    .addHelpText('after', examples('uprate runs', 'uprate runs examples/accelerator'))
    .action((study: string) => perform('runs', study, async () => (await import('./runs.ts')).runRuns(study)));

  verb('show', 'show one run: its channels, windows, steady values and energy')
    .argument('<study>', STUDY)
    .argument('[run]', 'the run, as `runs` names it; without it, all of them')
    .addHelpText('after', examples('uprate show examples/accelerator step', 'uprate show . step-1 --json'))
    .action((study: string, run: string | undefined) =>
      perform('show', study, async () => (await import('./show.ts')).runShow(study, run)),
    );

  verb('fit', "learn the study's inputs from what was measured; shows before and after")
    .argument('[study]', STUDY, '.')
    .option('--write', 'put the updated inputs into the study, each with its source')
    .option('--robust', 'an outlier pulls no harder than a reading at 1.345 of its uncertainty')
    .option(
      '--posterior <n>',
      'draws from what is known after the fit, where its uncertainties bend',
      wholeNumber(1000, 1_000_000),
    )
    .option('--seed <n>', 'seed of these draws, 1 when left out', wholeNumber(0, greatestSeed))
    .addHelpText(
      'after',
      examples(
        'uprate fit examples/accelerator',
        'uprate fit mini-pc --write',
        'uprate fit examples/accelerator --robust',
        'uprate fit examples/accelerator --posterior 20000 --seed 7',
      ),
    )
    .action((study: string, options) =>
      perform('fit', study, async () => (await import('./fit.ts')).runFit(study, options)),
    );

  verb('compare', 'compare readings before and after a change: difference, ratio, and whether they show one')
    .argument('[samples...]', 'files with one number a line, what was before first; with --study, two runs')
    .option('--before <numbers>', 'what was before, separated by commas')
    .option('--after <numbers>', 'what came after; again for each further sample', collect)
    .option('--paired', 'the readings of both belong together, line by line')
    .option('--confidence <percent>', 'of all intervals, 50 to 99.99, 95 when left out', numberBetween(50, 99.99))
    .option('--quantile <share>', 'compare this quantile as well: 0.01 is the lowest hundredth', numberBetween(0, 1))
    .option(
      '--definition <n>',
      'definition of the quantile by Hyndman and Fan, 1 to 9, 8 when left out',
      wholeNumber(1, 9),
    )
    .option('--seed <n>', 'seed of the bootstrap, 1 when left out', wholeNumber(0, greatestSeed))
    .option('--study <study>', 'compare two runs of this study, window by window')
    .option('--channel <name>', 'the channel of the runs; the power that tells windows apart when left out')
    .addHelpText(
      'after',
      examples(
        'uprate compare before.txt after.txt',
        'uprate compare --before 101.2,99.8,100.5 --after 104.1,105.0,103.6',
        'uprate compare --before 10.1,12.4,9.8 --after 10.6,12.7,10.4 --paired',
        'uprate compare before.txt after.txt --quantile 0.01 --json',
        'uprate compare --study examples/accelerator step stair',
      ),
    )
    .action((samples: string[], options) =>
      perform('compare', options.study ?? null, async () =>
        (await import('./compare.ts')).runCompare(samples, options),
      ),
    );

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

const greatestSeed = 2 ** 32 - 1;

const STUDY = "the study's folder, or its study.yaml";

function examples(...lines: string[]): string {
  return `\nExamples:\n${lines.map((line) => `  $ ${line}`).join('\n')}`;
}

function collect(value: string, before: readonly string[] = []): string[] {
  return [...before, value];
}

/** A number from `least` to `most`. */
function numberBetween(least: number, most: number): (text: string) => number {
  return (text) => {
    const number = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    if (number >= least && number <= most) return number;
    throw new InvalidArgumentError(`A number from ${least} to ${most} is expected.`);
  };
}

/** A day of the calendar, year first. */
function calendarDay(text: string): string {
  if (isDay(text)) return text;
  throw new InvalidArgumentError('Year, month and day are expected, such as 2026-03-01.');
}

/** A share between two ends, both allowed. */
function shareFrom(least: number, most: number) {
  return (text: string) => {
    const value = Number(text);
    if (text.trim() === '' || !(value >= least && value <= most))
      throw new InvalidArgumentError(`It has to be from ${least} to ${most}.`);
    return value;
  };
}

/** A whole number from `least` to `most`, or `other`. */
function wholeNumber(least: number, most: number, other = least): (text: string) => number {
  return (text) => {
    const number = /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
    if ((number >= least && number <= most) || number === other) return number;
    const or = other === least ? '' : `, or ${other}`;
    throw new InvalidArgumentError(`A whole number from ${least} to ${most}${or} is expected.`);
  };
}
