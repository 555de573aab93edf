import type { Command } from 'commander';
import type { Streams } from './door.ts';
import type { Outcome } from './envelope.ts';
import { collect, examples, greatestSeed, numberBetween, STUDY, wholeNumber } from './option-values.ts';

/** Starts a verb; runs one and answers. */
export type Verb = (name: string, description: string) => Command;
export type Perform = (verb: string, study: string | null, work: () => Promise<Outcome>) => Promise<void>;

/** The verbs about what is recorded: into runs, out of them, learnt from them, compared. */
export function addRecordingVerbs(verb: Verb, perform: Perform, streams: Streams): void {
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
}
