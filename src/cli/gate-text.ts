import { type Fault, sayFault } from '../fault/fault.ts';
import type { CountedProbability } from '../metrology/sample.ts';
import { percent } from '../steps/gate.ts';
import type { GateAdvice } from '../steps/gate-advice.ts';
import type { LadderVerdict } from '../steps/gate-ladder.ts';
import type { Study } from '../study/study.ts';
import { plural, writeTable } from './text-table.ts';

interface GateFindings {
  readonly study: Study;
  readonly step: string;
  readonly verdict: LadderVerdict;
  readonly advice: ReadonlyMap<string, GateAdvice>;
  readonly samples: number;
  readonly seed: number;
  readonly runs: readonly string[];
}

/** Limits that are shown, the likeliest exceeded first. */
const SHOWN = 10;

/** A verdict for people: the word first, then every reason with what would change it, then what it rests on. */
export function describeGate(findings: GateFindings): string {
  const { verdict, advice } = findings;
  const reasons = verdict.reasons.map((fault, i) => reason(fault, i + 1, advice));
  return [heading(findings), reasons.join('\n'), evidence(findings), limits(findings), cautions]
    .filter((part) => part !== '')
    .join('\n\n');
}

function heading({ step, verdict }: GateFindings): string {
  const { standing } = verdict.evidence;
  if (verdict.verdict === 'go') return `GO to ${step}: nothing speaks against it. The board stands at ${standing}.`;
  const count = plural(verdict.reasons.length, 'reason');
  if (verdict.verdict === 'back') return `BACK from ${standing}, where the board stands: ${count} against ${step}.`;
  return `HOLD before ${step}: ${count}. The board stands at ${standing}.`;
}

function reason(fault: Fault, number: number, advice: GateFindings['advice']): string {
  const { found, expected, remedy } = sayFault(fault);
  const measurement = fault.code === 'gate/too-likely' ? advice.get(String(fault.data.limit)) : undefined;
  const [first] = fault.code === 'gate/too-likely-together' ? advice.values() : [];
  const change = measurement
    ? sayAdvice(measurement)
    : first?.measurement
      ? `begin with the likeliest, ${first.limit}: ${sayAdvice(first)}`
      : remedy;
  const indent = ' '.repeat(`${number}. `.length);
  return [
    `${number}. ${found}`,
    ...(expected ? [`${indent}wanted: ${expected}`] : []),
    ...(change ? [`${indent}what would change it: ${change}`] : []),
  ].join('\n');
}

function sayAdvice({ measurement, now, after, enough }: GateAdvice): string {
  if (!measurement)
    return 'no single measurement: the best values themselves are too near to the limit; improve the cooling, or take a smaller step';
  const { title, by, attains, hours } = measurement;
  const time = hours < 1 ? `${Math.round(60 * hours)} min` : `${Number(hours.toFixed(1))} h`;
  const falls = `${title} (${by}, to ±${attains.text}, ${time}); if the reading bears out the best values, the probability falls from ${percent(now)} to ${after < 1e-4 ? 'less than 0.01 %' : `about ${percent(after)}`}`;
  return enough ? falls : `${falls}, which isn't enough by itself: improve the cooling as well, or take a smaller step`;
}

function evidence({ study, verdict, runs }: GateFindings): string {
  const { learnt, predicted, standing } = verdict.evidence;
  if (runs.length === 0) return '';
  const used = learnt ? `; ${plural(learnt.used.length, 'steady reading')} learnt from` : '';
  const rows = predicted.map(({ window, instrument, ...row }) => [
    window,
    study.instruments[instrument]?.title ?? instrument,
    row.predicted.text,
    row.measured.text,
    row.difference.text,
    row.size.toFixed(1),
  ]);
  const table = writeTable(
    [
      { heading: 'window' },
      { heading: 'instrument' },
      { heading: 'predicted', align: 'right' },
      { heading: 'measured', align: 'right' },
      { heading: 'measured − predicted', align: 'right' },
      { heading: 'in uncertainties', align: 'right' },
    ],
    rows,
    '  ',
  );
  return [
    `recorded below this step: ${plural(runs.length, 'run')} (${runs.join(', ')})${used}`,
    ...(rows.length > 0
      ? [`predicted for ${standing} from what was known before it, and measured there:\n${table}`]
      : []),
  ].join('\n\n');
}

function limits({ step, verdict, samples, seed }: GateFindings): string {
  const { together } = verdict;
  if (!together) return '';
  const distance = ({ margin }: { margin: { value: number; u: number | null } }) => margin.value / (margin.u ?? 1e-9);
  const sorted = [...verdict.limits].sort(([, a], [, b]) => b.probability - a.probability || distance(a) - distance(b));
  const rows = sorted
    .slice(0, SHOWN)
    .map(([id, limit]) => [
      limit.title,
      id,
      limit.margin.text,
      `${limit.interval.low.text} to ${limit.interval.high.text}`,
      ...chance(limit),
    ]);
  const table = writeTable(
    [
      { heading: 'limit' },
      { heading: '' },
      { heading: 'margin', align: 'right' },
      { heading: '95 %', align: 'right' },
      { heading: 'exceeded', align: 'right' },
      { heading: '95 % of the count', align: 'right' },
    ],
    [...rows, ['any of them', '', '', '', ...chance(together)]],
    '  ',
  );
  return `the closest of ${plural(verdict.limits.size, 'limit')} at ${step} (${samples} draws, seed ${seed}; ± is one standard uncertainty):\n${table}`;
}

function chance({ probability, low, high }: CountedProbability): string[] {
  // Nothing counted leaves a rounding of the interval's end, no probability.
  const end = low < 1e-9 ? '0 %' : percent(low);
  return [probability === 0 ? 'never' : percent(probability), `${end} to ${percent(high)}`];
}

const cautions = `A go is no promise: it says that nothing known here speaks against the step. The manufacturer's ratings win over these figures.
Before any change to the board: unplug the adapter, disconnect the battery, let capacitors discharge; back up data; never test unattended.`;
