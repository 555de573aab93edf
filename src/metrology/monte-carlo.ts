import { batchOf } from './batch.ts';
import { type DrawOptions, drawsOf } from './draws.ts';
import { outputIndex } from './evaluate.ts';
import type { Ending, Model } from './model.ts';
import { Sample } from './sample.ts';

export interface MonteCarloOptions extends DrawOptions {
  readonly samples: number;
  /** Outputs whose values are kept; by default all. */
  readonly outputs?: readonly string[];
  /** Asked after every block; true ends the run with what there is. */
  readonly cancelled?: () => boolean;
  readonly progress?: (done: number, total: number) => void;
}

/** What a Monte Carlo run found. */
export interface MonteCarlo {
  readonly seed: number;
  /** Draws made; fewer than asked for when cancelled. */
  readonly samples: number;
  readonly cancelled: boolean;
  /** How the evaluations ended. All but `solved` count as exceeding every limit. */
  readonly endings: Readonly<Record<Ending, number>>;
  /** Values by output id. */
  readonly outputs: ReadonlyMap<string, Sample>;
}

/** Draws made between two looks at `cancelled`. */
const BLOCK = 512;

/** Propagates the inputs' distributions through a model, JCGM 101:2008 clauses 5 and 7, on a scrambled Sobol sequence. */
export function monteCarlo(model: Model, options: MonteCarloOptions): MonteCarlo {
  const { samples, seed } = options;
  if (!(samples >= 2)) throw new Error(`a Monte Carlo run needs at least 2 samples, not ${samples}`);
  const kept = (options.outputs ?? model.outputs.map((output) => output.id)).map((id) => outputIndex(model, id));
  const values = kept.map(() => new Float64Array(samples));
  const endings: Record<Ending, number> = { solved: 0, runaway: 0, infeasible: 0, unsettled: 0 };
  const draws = drawsOf(model, options, BLOCK);
  const batch = batchOf(model);

  let done = 0;
  let cancelled = false;
  while (done < samples && !cancelled) {
    draws.fill(done);
    const end = Math.min(BLOCK, samples - done);
    // Whoever was told of the progress may have evaluated the model, and left its numbers in the columns.
    model.inputs.forEach(({ value }, i) => {
      batch.inputs[i].fill(value);
    });
    for (let first = 0; first < end; first += batch.lanes) {
      const count = Math.min(batch.lanes, end - first);
      for (let k = 0; k < draws.inputs.length; k++)
        copy(draws.columns[k], first, batch.inputs[draws.inputs[k]], 0, count);
      batch.evaluate(count);
      for (let s = 0; s < count; s++) endings[batch.endings[s]]++;
      for (let k = 0; k < kept.length; k++) copy(batch.outputs[kept[k]], 0, values[k], done + first, count);
    }
    done += end;
    options.progress?.(done, samples);
    cancelled = done < samples && (options.cancelled?.() ?? false);
  }

  const outputs = new Map(
    kept.map((index, k) => {
      const output = model.outputs[index];
      return [output.id, new Sample(done < samples ? values[k].slice(0, done) : values[k], output.hold !== undefined)];
    }),
  );
  return { seed, samples: done, cancelled, endings, outputs };
}

/** A loop, because a view to copy from would be made anew each time. */
function copy(source: Float64Array, from: number, target: Float64Array, to: number, count: number): void {
  for (let s = 0; s < count; s++) target[to + s] = source[from + s];
}
