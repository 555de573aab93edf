import { kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import type { Energy } from '../runs/energy.ts';
import { readChannels, readRun } from '../runs/read-run.ts';
import type { Channel, Run } from '../runs/run.ts';
import { showRun } from '../runs/show-run.ts';
import { averagedSeconds, type Window } from '../runs/windows.ts';
import type { Outcome } from './envelope.ts';
import { rowCount } from './import.ts';
import { locateStudy } from './load-study.ts';
import { runRuns } from './runs.ts';
import { writeTable } from './text-table.ts';

/** The `show` verb: one run's channels, energy and windows; without a name, the list of runs. */
export async function runShow(studyArgument: string, id: string | undefined): Promise<Outcome> {
  if (id === undefined) return runRuns(studyArgument);
  const { folder } = await locateStudy(studyArgument);
  const run = await readRun(folder, id);
  const { level, windows, energy } = showRun(run, await readChannels(folder, run));
  const powerless = run.channels.some(({ kind }) => kind === 'power')
    ? 'too few readings of power'
    : 'no channel of power';
  const text = [
    `run "${run.id}" from ${run.original}: ${rowCount(run.rows)} over ${run.duration.toFixed(1)} s${run.start ? `, from ${run.start}` : ''}`,
    channelTable(run),
    energyText(energy, powerless),
    level
      ? `windows told apart by ${level.name}; values are means of the last ${averagedSeconds} s, ± one standard uncertainty of the readings, without the sensor's own error`
      : `${powerless}: no windows can be told apart`,
    ...windows.map((window) => windowText(window, run)),
    ...run.notes.map((note) => `note: ${note}`),
  ];
  return {
    text: text.join('\n\n'),
    json: { run, energy, windows: windows.map((window) => windowJson(window, run)) },
    exit: 0,
  };
}

function channelTable(run: Run): string {
  const rows = run.channels.map(({ name, unit, kind, count, missing, least, greatest }) => [
    name,
    unit || '–',
    kind ?? 'not known',
    String(count),
    String(missing),
    least === null ? '' : String(least),
    greatest === null ? '' : String(greatest),
  ]);
  return writeTable(
    [
      { heading: 'channel' },
      { heading: 'unit' },
      { heading: 'kind' },
      { heading: 'readings', align: 'right' },
      { heading: 'missing', align: 'right' },
      { heading: 'least', align: 'right' },
      { heading: 'greatest', align: 'right' },
    ],
    rows,
    '  ',
  );
}

function energyText(energies: readonly Energy[], powerless: string): string {
  if (energies.length === 0) return `energy: ${powerless}`;
  const written = (joule: number, u: number | null) => writeValue(joule, u, 'kJ', 'energy');
  const lines = energies.map(({ channel, energy, u, counterChannel, counter, uCounter, closure, uClosure }) => {
    const own = `${channel}: ${written(energy, u)}`;
    if (counter === null || closure === null) return `  ${own}; no energy counter to hold it against`;
    const difference = writeValue(closure, uClosure, '%', 'ratio');
    return `  ${own}; ${counterChannel} counts ${written(counter, uCounter)}; difference ${difference}`;
  });
  const meaning =
    "energy by the trapezoidal rule; ± is what may have happened between readings, without the sensor's own error or a lag of its averaging";
  return [meaning, ...lines].join('\n');
}

function windowText(window: Window, run: Run): string {
  const rows = numbersOf(window, run).map(({ channel, value }) => [
    channel.name,
    written(value.mean, value.u, channel),
    `${value.readings} (${value.independent.toFixed(0)})`,
    value.settled ? 'settled' : 'not settled',
    value.why,
  ]);
  const head = `${window.id}: ${window.title}, from ${window.from.toFixed(1)} s to ${window.to.toFixed(1)} s`;
  const table = writeTable(
    [
      { heading: 'channel' },
      { heading: 'mean', align: 'right' },
      { heading: 'readings (independent)', align: 'right' },
      { heading: '' },
      { heading: 'why' },
    ],
    rows,
    '  ',
  );
  return `${head}\n${table}`;
}

function numbersOf(window: Window, run: Run) {
  return run.channels
    .filter(({ name, kind }) => window.channels[name] && kind !== 'energy')
    .map((channel) => ({ channel, value: window.channels[channel.name] }));
}

function written(mean: number, u: number | null, { kind, unit }: Channel): string {
  return kind ? writeValue(mean, u, unit, kind) : mean.toPrecision(4);
}

function windowJson({ channels, ...window }: Window, run: Run) {
  const values = numbersOf({ ...window, channels }, run).map(({ channel, value }) => ({
    channel: channel.name,
    unit: channel.kind ? kinds[channel.kind].siUnit : channel.unit,
    ...value,
  }));
  return { ...window, values };
}
