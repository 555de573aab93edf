import { budget } from '../../src/metrology/budget.ts';
import { normalQuantile } from '../../src/metrology/normal-quantile.ts';
import { withPosterior } from '../../src/metrology/posterior.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import type { Planted } from '../../src/rehearsal/planted.ts';
import { learn } from '../../src/steps/learn.ts';
import { atPresentAmbient } from '../../src/steps/present-ambient.ts';
import type { Study } from '../../src/study/study.ts';
import { assembled, makeBench, windowsAt } from './bench.ts';

/** What is predicted for the next step and held against the virtual truth. */
export const predicted = {
  'die temperature': 'heat.nodes.die.temperature',
  'stage temperature': 'heat.nodes.stages.temperature',
  'memory temperature': 'heat.nodes.memory.temperature',
  'case temperature': 'heat.nodes.case.temperature',
  'real power': 'limiters.package.real',
} as const;

export type PredictedName = keyof typeof predicted;

export interface Played {
  /** Whether the 95 % interval holds the truth, and the distance in standard uncertainties; null without a result. */
  readonly outcomes: Readonly<Record<PredictedName, { readonly inside: boolean; readonly size: number }>> | null;
  /** Whether the fit complains that model and measurements disagree. */
  readonly misfit: boolean;
}

/** Baseline, fit, prediction of the next step, beside the truth of the next step. */
export function playNextStep(
  seed: number,
  departing: boolean,
  plant?: (study: Study, pick: number) => Planted,
): Played {
  const made = makeBench(seed, departing, plant);
  const { study, bench } = made;
  const windows = windowsAt(made, 0);
  const truth = bench.truth(study.steps[1]);
  // A board that never comes to rest is seen at once.
  if (!windows) return { outcomes: null, misfit: true };
  const learnt = learn(study, study.steps[0], windows);
  const { fit } = learnt;
  const misfit = fit.ending !== 'converged' || fit.misfit !== null;
  if (fit.ending !== 'converged' || !truth) return { outcomes: null, misfit };
  // As the tool predicts windows: first order, with the covariance that the fit leaves.
  const board = assembled(study.steps[1]);
  const model = withPosterior(atPresentAmbient(board, study, learnt), fit);
  const sens = sensitivities(model);
  const outcomes = Object.entries(predicted).map(([name, output]) => {
    const { u } = budget(model, output, sens, fit.joint)!;
    const size = (truth.get(output)! - sens.y0[board.indexOfOutput(output)]) / u;
    return [name, { inside: Math.abs(size) <= normalQuantile(0.975), size }] as const;
  });
  return { outcomes: Object.fromEntries(outcomes) as Record<PredictedName, { inside: boolean; size: number }>, misfit };
}
