import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { importLog } from './import.ts';
import { type Readings, readChannels } from './read-run.ts';
import type { Run } from './run.ts';

/** The recordings of the example study, as they were logged. */
export const recordings = {
  step: 'examples/accelerator/runs/step/accelerator-step-telemetry.csv.gz',
  stair: 'examples/accelerator/runs/stair/accelerator-stair-telemetry.csv.gz',
};

/** One of them, imported anew from its log. */
export async function recordedRun(id: keyof typeof recordings): Promise<{ run: Run; readings: Readings }> {
  const study = await mkdtemp(join(tmpdir(), 'uprate-'));
  try {
    const run = (await importLog(study, recordings[id], { id }))!;
    return { run, readings: await readChannels(study, run) };
  } finally {
    await rm(study, { recursive: true });
  }
}
