import { type Energy, energyOf } from './energy.ts';
import type { Readings } from './read-run.ts';
import type { Channel, Run } from './run.ts';
import { levelChannel, type Window, windowsOf } from './windows.ts';

/** What a run has to say: its channels, its windows, its energy. */
export interface ShownRun {
  readonly run: Run;
  /** The channel that the windows are told apart by; null where no channel is a power. */
  readonly level: Channel | null;
  readonly windows: readonly Window[];
  readonly energy: readonly Energy[];
}

/** Works out a run from its readings. */
export function showRun(run: Run, readings: Readings): ShownRun {
  const level = levelChannel(run, readings);
  const windows = level ? windowsOf(run, readings, level) : [];
  return { run, level, windows, energy: energyOf(run, readings) };
}
