import type { Model, Status } from './model.ts';

/** Best values of a model's inputs, in their order [SI]. */
export function startValues(model: Model): Float64Array {
  return Float64Array.from(model.inputs, (input) => input.value);
}

/** One evaluation, with results of its own: nothing in it changes when the model is evaluated again. */
export interface Evaluation {
  /** Outputs in the model's order [SI]; NaN throughout unless `status.ending` is `solved`. */
  readonly y: Float64Array;
  readonly status: Readonly<Status>;
}

/** Evaluates a model once, at its best values or at `x` [SI]. For single looks; loops call `model.evaluate` with their own arrays. */
export function evaluateAt(model: Model, x: Float64Array = startValues(model)): Evaluation {
  if (x.length !== model.inputs.length) throw new Error(`${x.length} values for ${model.inputs.length} inputs`);
  const y = new Float64Array(model.outputs.length);
  const status = { ...model.evaluate(x, y) };
  if (status.ending !== 'solved') y.fill(Number.NaN);
  return { y, status };
}

/** Position of an output; throws for an id the model doesn't have. */
export function outputIndex(model: Model, id: string): number {
  const index = model.outputs.findIndex((output) => output.id === id);
  if (index < 0)
    throw new Error(`no output "${id}"; there are: ${model.outputs.map((output) => output.id).join(', ')}`);
  return index;
}
