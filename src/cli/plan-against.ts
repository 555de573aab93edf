import { type PredictedWindow, predictWindows } from '../steps/learn.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { learnFromRuns, windowsOfRun } from './fit.ts';
import { writeTable } from './text-table.ts';

/** `plan --against RUN`: what the board, learnt from the study's own runs, predicts for each window of another run. */
export async function planAgainst(study: Study, folder: string, run: string): Promise<Outcome> {
  const learnt = await learnFromRuns(study, folder);
  const windows = await windowsOfRun(study, folder, run);
  const rows = predictWindows(study, study.steps[0], learnt, windows);
  const from = study.learning!.from;
  const seen = from.includes(run) ? `run "${run}" is one of those the board was learnt from: this is no test\n` : '';
  const text = [
    `${seen}predicted from ${from.join(', ')}, measured in ${run}; power is set to what was measured in each window`,
    writeTable(
      [
        { heading: 'window' },
        { heading: 'power', align: 'right' },
        { heading: 'instrument' },
        { heading: 'predicted', align: 'right' },
        { heading: 'measured', align: 'right' },
        { heading: 'measured − predicted', align: 'right' },
        { heading: 'in uncertainties', align: 'right' },
        { heading: '' },
      ],
      rows.map(cells),
    ),
    ...rows.filter(({ settled }) => !settled).map(({ window, instrument, why }) => `${window}, ${instrument}: ${why}`),
  ];
  return { text: text.join('\n\n'), json: { learntFrom: from, against: run, windows: rows }, exit: 0 };
}

function cells(row: PredictedWindow): string[] {
  return [
    row.window,
    row.power.text,
    row.instrument,
    row.predicted.text,
    row.measured.text,
    row.difference.text,
    row.size.toFixed(1),
    row.settled ? 'settled' : 'not settled',
  ];
}
