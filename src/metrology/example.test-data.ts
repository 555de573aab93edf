import type { Spread } from '../quantity/spread.ts';
import type { Ending, Hold, Model } from './model.ts';

interface Example {
  /** Value and what is known about it, by input id. */
  readonly inputs: Readonly<Record<string, readonly [value: number, spread: Spread | null]>>;
  /** Function of the inputs in the order above, by output id. */
  readonly outputs: Readonly<Record<string, (x: Float64Array) => number>>;
  /** Held under the output `limit`, by the margin's output id. */
  readonly margins?: Readonly<Record<string, string>>;
  readonly ending?: (x: Float64Array) => Ending;
}

/** A model of a few plain functions, for tests. */
export function exampleModel({ inputs, outputs, margins = {}, ending = () => 'solved' }: Example): Model {
  const functions = Object.values(outputs);
  const status = { ending: 'solved' as Ending, residual: 0, passes: 1 };
  const plain = { kind: 'ratio', unit: '1' } as const;
  const holdOf = (id: string): Hold | undefined =>
    margins[id] ? { side: 'under', valueOutput: margins[id], thresholdOutput: 'limit', reason: 'example' } : undefined;
  return {
    inputs: Object.entries(inputs).map(([id, [value, spread]]) => ({ id, ...plain, value, spread, source: 'example' })),
    outputs: Object.keys(outputs).map((id) => ({ id, ...plain, title: id, hold: holdOf(id) })),
    evaluate(x, y) {
      status.ending = ending(x);
      for (let i = 0; i < y.length; i++) y[i] = status.ending === 'solved' ? functions[i](x) : Number.NaN;
      return status;
    },
  };
}

export const normal = (u: number): Spread => ({ shape: 'normal', u });
export const logNormal = (sigma: number): Spread => ({ shape: 'log-normal', sigma });
/** Rectangle of standard uncertainty `u` around `value`. */
export const rectangle = (value: number, u: number): Spread => ({
  shape: 'rectangular',
  low: value - Math.sqrt(3) * u,
  high: value + Math.sqrt(3) * u,
});
