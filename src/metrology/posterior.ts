import type { Fit } from './fit.ts';
import type { Input, Model } from './model.ts';

/**
 * A model with its inputs as a fit left them. Use the fit's `joint` with it in `budget` and `monteCarlo`: the inputs are correlated now,
 * and taken as independent they'd give a wrong uncertainty.
 */
export function withPosterior(model: Model, fit: Fit): Model {
  const fitted = new Map(fit.inputs.map((each) => [each.id, each]));
  const inputs = model.inputs.map((input): Input => {
    const found = fitted.get(input.id);
    return found ? { ...input, value: found.value, spread: found.spread, source: 'fitted' } : input;
  });
  const { outputs, batch } = model;
  return { inputs, outputs, evaluate: (x, y) => model.evaluate(x, y), batch };
}
