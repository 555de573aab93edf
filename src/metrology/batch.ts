import type { Batch, Ending, Model } from './model.ts';

/** The model's own batch, or its evaluation one lane after the other. */
export function batchOf(model: Model): Batch {
  return model.batch ?? oneByOne(model);
}

function oneByOne(model: Model): Batch {
  const lanes = 16;
  const columns = (count: number) => Array.from({ length: count }, () => new Float64Array(lanes));
  const inputs = columns(model.inputs.length);
  const outputs = columns(model.outputs.length);
  const endings = new Array<Ending>(lanes).fill('unsettled');
  const x = new Float64Array(inputs.length);
  const y = new Float64Array(outputs.length);
  return {
    lanes,
    inputs,
    outputs,
    endings,
    evaluate(count) {
      for (let s = 0; s < count; s++) {
        for (let i = 0; i < x.length; i++) x[i] = inputs[i][s];
        endings[s] = model.evaluate(x, y).ending;
        for (let i = 0; i < y.length; i++) outputs[i][s] = endings[s] === 'solved' ? y[i] : Number.NaN;
      }
    },
  };
}
