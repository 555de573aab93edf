import type { Candidate } from '../../src/metrology/advice.ts';
import { advise } from '../../src/metrology/advice.ts';
import { drawsOf } from '../../src/metrology/draws.ts';
import { outputIndex, startValues } from '../../src/metrology/evaluate.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import { randomStream } from '../../src/numeric/random.ts';
import { beside } from '../../src/steps/beside.ts';
import { candidatesOf } from '../../src/steps/candidates.ts';
import { readInstrument } from '../../src/steps/instrument.ts';
import { planStep } from '../../src/steps/plan.ts';
import { assembled } from './bench.ts';
import { randomStudy } from './random-study.ts';

export interface AdviceOutcome {
  readonly seed: number;
  readonly limit: string;
  /** The measurement advised first, and the best one by brute force. */
  readonly advised: string;
  readonly best: string;
  /** What the advised one takes off per hour, over what the best one does; both by brute force [1]. */
  readonly share: number;
  readonly candidates: number;
}

/** Draws of a brute-force try, and the equally filled bins that the readings fall into. */
const draws = 8192;
const bins = 32;

/**
 * Advice for the binding margin of the second step of a random board, against brute force: many boards drawn from what the study states, the margin and
 * the reading of every candidate worked out for each, and the variance that the margin still has among boards with nearly the same reading.
 */
export function tryAdvice(seed: number): AdviceOutcome | null {
  const study = randomStudy(seed);
  const [present, next] = [assembled(study.steps[0]), assembled(study.steps[1])];
  const { margins, binding } = planStep(study, study.steps[1].id, { samples: 0, seed });
  const limit = next.limits.find(({ id }) => id === binding);
  if (!limit || margins.length === 0) return null;
  const instruments = Object.entries(study.instruments).map(([id, entry]) => readInstrument(present, id, entry));
  const both = beside(next, present, instruments);
  const margin = next.outputs[limit.marginOutput].id;
  const candidates = candidatesOf(study, next, present, both);
  const [first] = advise(both, margin, candidates, sensitivities(both))!;

  const drawn = drawsOf(both, { seed }, draws);
  drawn.fill(0);
  const x = startValues(both);
  const y = new Float64Array(both.outputs.length);
  const noise = randomStream(seed);
  const margins1: number[] = [];
  const readings = candidates.map((): number[] => []);
  const places = candidates.map(({ what }) =>
    'input' in what ? both.inputs.findIndex(({ id }) => id === what.input) : outputIndex(both, what.output),
  );
  const place = outputIndex(both, margin);
  for (let s = 0; s < draws; s++) {
    for (let k = 0; k < drawn.inputs.length; k++) x[drawn.inputs[k]] = drawn.columns[k][s];
    if (both.evaluate(x, y).ending !== 'solved') continue;
    margins1.push(y[place]);
    candidates.forEach(({ what, u }, c) => {
      readings[c].push(('input' in what ? x[places[c]] : y[places[c]]) + u * noise.normal());
    });
  }
  const whole = varianceOf(margins1);
  const gains = candidates.map(({ effort }, c) => (whole - varianceWithin(margins1, readings[c])) / effort);
  const best = gains.indexOf(Math.max(...gains));
  const advised = candidates.findIndex((candidate: Candidate) => candidate.id === first.candidate.id);
  return {
    seed,
    limit: limit.id,
    advised: candidates[advised].id,
    best: candidates[best].id,
    share: gains[advised] / gains[best],
    candidates: candidates.length,
  };
}

/** Mean variance of `values` among those whose readings lie in the same bin. */
function varianceWithin(values: readonly number[], readings: readonly number[]): number {
  const order = [...readings.keys()].sort((one, other) => readings[one] - readings[other]);
  const size = Math.floor(order.length / bins);
  let sum = 0;
  for (let b = 0; b < bins; b++) sum += varianceOf(order.slice(b * size, (b + 1) * size).map((i) => values[i]));
  return sum / bins;
}

function varianceOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}
