import { type DrawOptions, drawsOf } from './draws.ts';
import { outputIndex, startValues } from './evaluate.ts';
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
  const { inputs, columns } = draws;
  const x = startValues(model);
  const y = new Float64Array(model.outputs.length);

  let done = 0;
  let cancelled = false;
  while (done < samples && !cancelled) {
    draws.fill(done);
    const end = Math.min(BLOCK, samples - done);
    for (let s = 0; s < end; s++) {
      for (let k = 0; k < inputs.length; k++) x[inputs[k]] = columns[k][s];
      const { ending } = model.evaluate(x, y);
      endings[ending]++;
      const solved = ending === 'solved';
      for (let k = 0; k < kept.length; k++) values[k][done + s] = solved ? y[kept[k]] : Number.NaN;
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
