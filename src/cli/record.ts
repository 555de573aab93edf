import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { toUnit } from '../quantity/convert.ts';
import { readQuantity } from '../quantity/read.ts';
import { play, rehearsalBench, type Stretch } from '../rehearsal/play.ts';
import type { BenchInstrument } from '../rehearsal/virtual-bench.ts';
import { unitOfHeading } from '../runs/header-unit.ts';
import { importLog } from '../runs/import.ts';
import { readInstrument } from '../steps/instrument.ts';
import { stepOf } from '../steps/plan.ts';
import type { Step, Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';

export interface RecordCommandOptions {
  readonly source: string;
  readonly step?: string;
  readonly load?: string;
  readonly hold?: string;
  readonly seed?: number;
  readonly id?: string;
  readonly progress?: (text: string) => void;
}

/** A little, then everything, then a little again. */
const usualLoads = '10 %,100 %,10 %';
const usualHold = '30 min';

/** The `record` verb with the source `rehearsal`: a virtual board and its instruments play a step into a run of the study. */
export async function runRecord(studyArgument: string, options: RecordCommandOptions): Promise<Outcome> {
  if (options.source !== 'rehearsal')
    throw new Refusal(refuse('record/no-such-source', { source: options.source, known: ['rehearsal'] }));
  const { study, folder } = await loadStudy(studyArgument);
  const step = stepOf(study, namedStep(study, options.step ?? study.steps[0].id));
  const stretches = stretchesOf(options.load ?? usualLoads, options.hold ?? usualHold);
  const seed = options.seed ?? 1;
  const assembly = assembleBoard(step);
  if (!assembly.ok) throw new Refusal(assembly.faults);
  const channels = channelsOf(study, assembly.board);
  if (channels.length === 0) throw new Refusal(refuse('record/no-instruments', { file: study.file }));

  const scratch = await mkdtemp(join(tmpdir(), 'uprate-rehearsal-'));
  try {
    const log = join(scratch, `rehearsal-${step.id}.csv`);
    const { rows, off } = await writeLog(log, study, step, channels, stretches, seed, options.progress);
    if (rows === 0) throw new Refusal(refuse('record/no-steady-start', { step: step.id, seed }));
    const told = `a rehearsal: played by a virtual board (seed ${seed}) at step ${step.id}; nothing in it was measured`;
    const ended = off === null ? [] : [`the virtual machine switched itself off after ${off} s`];
    const run = await importLog(folder, log, {
      id: options.id,
      time: 'time_s',
      units: Object.fromEntries(channels.map(({ instrument, unit }) => [instrument.channel, unit])),
      notes: [told, ...ended],
      progress: options.progress,
    });
    const text = [
      `stored as run "${run!.id}": ${rows} rows, ${channels.length} channels`,
      ...run!.notes.map((note) => `note: ${note}`),
      `The same seed is the same board at every step: \`uprate record ${studyArgument} --source rehearsal --seed ${seed} --step …\``,
    ];
    return { text: `${text.join('\n')}\n`, json: { run, seed, step: step.id, off }, exit: 0 };
  } finally {
    await rm(scratch, { recursive: true, force: true });
  }
}

interface PlayedChannel {
  readonly instrument: BenchInstrument;
  readonly kind: BoardModel['outputs'][number]['kind'];
  readonly unit: string;
}

/** Instruments of the study as they hang on a virtual board; each in the unit of its heading, or else of what it shows. */
function channelsOf(study: Study, board: BoardModel): PlayedChannel[] {
  return Object.entries(study.instruments).map(([id, entry]) => {
    const read = readInstrument(board, id, entry);
    const { kind, unit } = board.outputs[board.indexOfOutput(read.shows)];
    const heading = unitOfHeading(read.channel);
    const instrument = { ...read, temperature: kind === 'temperature' };
    return { instrument, kind, unit: heading?.kind === kind ? heading.unit : unit };
  });
}

async function writeLog(
  file: string,
  study: Study,
  step: Step,
  channels: readonly PlayedChannel[],
  stretches: readonly Stretch[],
  seed: number,
  progress?: (text: string) => void,
): Promise<{ rows: number; off: number | null }> {
  const bench = rehearsalBench(
    study,
    channels.map(({ instrument }) => instrument),
    seed,
  );
  const whole = stretches.reduce((sum, { seconds }) => sum + seconds, 0);
  const lines = [['time_s', ...channels.map(({ instrument }) => instrument.channel)].map(quoted).join(',')];
  let rows = 0;
  let off: number | null = null;
  const handle = await open(file, 'wx');
  try {
    for (const { time, readings, state } of play(bench, step, stretches)) {
      const values = channels.map(({ instrument, unit, kind }) => toUnit(readings.get(instrument.id)!, unit, kind));
      lines.push([time, ...values.map((value) => Number(value.toPrecision(9)))].join(','));
      rows++;
      if (state !== 'running') off ??= time;
      if (lines.length < 500) continue;
      progress?.(`rehearsing: ${((100 * rows) / whole).toFixed(0)} %`);
      await handle.write(`${lines.splice(0).join('\n')}\n`);
    }
    await handle.write(`${lines.join('\n')}\n`);
  } finally {
    await handle.close();
  }
  return { rows, off };
}

const quoted = (heading: string) => (/[",\n]/.test(heading) ? `"${heading.replaceAll('"', '""')}"` : heading);

/** "10 %, 100 %" and "30 min" as stretches of equal length. */
function stretchesOf(loads: string, hold: string): Stretch[] {
  const length = readQuantity(hold, 'time');
  const seconds = length.ok ? Math.round(length.quantity.value) : 0;
  if (!(seconds >= 10 && seconds <= 24 * 3600)) throw new Refusal(refuse('record/bad-hold', { text: hold }));
  return loads.split(',').map((text) => {
    const read = readQuantity(text.trim(), 'ratio');
    const load = read.ok ? read.quantity.value : 0;
    if (!(load > 0 && load <= 1)) throw new Refusal(refuse('record/bad-load', { text: text.trim() }));
    return { load, seconds };
  });
}
