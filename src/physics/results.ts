import { type Fault, Refusal, refuse } from '../fault/fault.ts';
import { type Budget, budget } from '../metrology/budget.ts';
import { evaluateAt } from '../metrology/evaluate.ts';
import type { Model } from '../metrology/model.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import type { Sample } from '../metrology/sample.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { KindName } from '../quantity/kind.ts';

/** One result of a calculation, with why it is uncertain. */
export interface CalculatedOutput {
  readonly name: string;
  readonly title: string;
  readonly kind: KindName;
  readonly unit: string;
  /** At the inputs' best values [SI]. */
  readonly value: number;
  /** Standard uncertainty [SI]; null when no input has one. */
  readonly u: number | null;
  /** 95 % coverage interval from Monte Carlo [SI]. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  readonly method: 'exact' | 'first-order' | 'monte-carlo';
  /** First-order budget; null when no input has an uncertainty, or there are no sensitivities. */
  readonly budget: Budget | null;
}

/** How many draws a Monte Carlo run makes, by which seed, and whether those made are enough. */
export interface Draws {
  readonly samples: number;
  readonly seed: number;
  readonly enough?: () => boolean;
}

/** A model's outputs, and what has to be said about their uncertainty. */
export interface Results {
  readonly outputs: readonly CalculatedOutput[];
  readonly warnings: readonly Fault[];
  /** Draws of the Monte Carlo run; 0 when no input has an uncertainty. */
  readonly samples: number;
}

/**
 * Results at the inputs' best values, with uncertainty to first order and by Monte Carlo. Where the two disagree, Monte Carlo counts.
 * Refuses `calc/draws-lost` when most draws have no result.
 */
export function resultsOf(model: Model, draws: Draws): Results {
  const bare = model.inputs.filter(({ kind, spread }) => spread === null && kind !== 'count').map(({ id }) => id);
  const open: Fault[] =
    bare.length > 0 ? [{ code: 'calc/no-uncertainty', severity: 'open', data: { inputs: bare } }] : [];
  if (model.inputs.every(({ spread }) => spread === null))
    return { outputs: exactOutputs(model), warnings: open, samples: 0 };
  const { outputs, warnings, samples } = spreadOutputs(model, draws);
  return { outputs, warnings: [...open, ...warnings], samples };
}

/** The same without uncertainty. */
export function exactOutputs(model: Model): CalculatedOutput[] {
  const { y } = evaluateAt(model);
  return model.outputs.map(({ id, title, kind, unit }, o) => ({
    name: id,
    title,
    kind,
    unit,
    value: y[o],
    u: null,
    interval: null,
    method: 'exact',
    budget: null,
  }));
}

function spreadOutputs(model: Model, { samples, seed, enough }: Draws): Results {
  const warnings: Fault[] = [];
  const sens = sensitivities(model);
  const run = monteCarlo(model, { samples, seed, cancelled: enough });
  const lost = run.samples - run.endings.solved;
  if (lost > 0) {
    const data = { lost, samples: run.samples, runaway: run.endings.runaway };
    // An interval of the smaller part would speak for nothing.
    if (lost > run.samples / 2) throw new Refusal(refuse('calc/draws-lost', data));
    warnings.push({ code: 'calc/draws-lost', severity: 'warning', data });
  }
  const outputs = exactOutputs(model).map((output): CalculatedOutput => {
    const rows = budget(model, output.name, sens);
    const sample = run.outputs.get(output.name)!;
    const agree = rows !== null && methodsAgree(output.value, rows.u, sample);
    return {
      ...output,
      u: agree ? rows.u : sample.u,
      interval: sample.interval(0.95),
      method: agree ? 'first-order' : 'monte-carlo',
      budget: rows,
    };
  });
  const disagreeing = outputs.filter(({ method }) => method === 'monte-carlo').map(({ title }) => title);
  if (disagreeing.length > 0)
    warnings.push({ code: 'calc/methods-disagree', severity: 'warning', data: { outputs: disagreeing } });
  return { outputs, warnings, samples: run.samples };
}

/** The uncertainties within 5 %, and the mean within a fifth of the uncertainty from the best value (common practice, no source). */
function methodsAgree(value: number, u: number, sample: Sample): boolean {
  const rounding = 1e-12 * Math.abs(value);
  return (
    Math.abs(u - sample.u) <= 0.05 * sample.u + rounding && Math.abs(value - sample.mean) <= 0.2 * sample.u + rounding
  );
}
