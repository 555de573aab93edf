import { Refusal, refuse } from '../fault/fault.ts';
import { readChannels, readRun } from '../runs/read-run.ts';
import { levelChannel, windowsOf } from '../runs/windows.ts';
import type { MeasuredWindow } from '../steps/learn.ts';

/** The windows of a run as observations: mean and uncertainty of each channel, and whether it has settled. */
export async function measuredWindows(studyFolder: string, id: string): Promise<MeasuredWindow[]> {
  const run = await readRun(studyFolder, id);
  const readings = await readChannels(studyFolder, run);
  const level = levelChannel(run, readings);
  if (!level) throw new Refusal(refuse('run/no-power', { run: id }));
  return windowsOf(run, readings, level).map((window) => ({
    run: id,
    id: window.id,
    title: window.title,
    channels: Object.fromEntries(
      Object.entries(window.channels)
        .filter(([, { mean, u }]) => !Number.isNaN(mean) && u !== null)
        .map(([name, { mean, u, settled, why }]) => [name, { mean, u: u!, settled, why }]),
    ),
  }));
}
