import { listRuns } from '../runs/read-run.ts';
import type { Outcome } from './envelope.ts';
import { locateStudy } from './load-study.ts';
import { writeTable } from './text-table.ts';

/** The `runs` verb: the recordings of a study. */
export async function runRuns(studyArgument: string): Promise<Outcome> {
  const { folder } = await locateStudy(studyArgument);
  const runs = await listRuns(folder);
  if (runs.length === 0)
    return { text: 'no runs yet: `uprate import STUDY FILE` reads a log into one', json: { runs }, exit: 0 };
  const rows = runs.map((run) => [
    run.id,
    run.start ?? 'no clock',
    `${run.duration.toFixed(1)} s`,
    String(run.rows),
    String(run.channels.length),
    run.original,
  ]);
  const text = writeTable(
    [
      { heading: 'run' },
      { heading: 'start (UTC)' },
      { heading: 'length', align: 'right' },
      { heading: 'rows', align: 'right' },
      { heading: 'channels', align: 'right' },
      { heading: 'from' },
    ],
    rows,
  );
  return { text, json: { runs }, exit: 0 };
}
