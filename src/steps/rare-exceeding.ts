import type { BoardModel } from '../board/assemble.ts';
import type { DrawOptions } from '../metrology/draws.ts';
import { outputIndex, startValues } from '../metrology/evaluate.ts';
import type { Margin } from '../metrology/margin.ts';
import type { MonteCarlo } from '../metrology/monte-carlo.ts';
import { normalQuantile } from '../metrology/normal-quantile.ts';
import { normalSpace } from '../metrology/normal-space.ts';
import { type TailProbability, tailProbability } from '../metrology/tail.ts';

/** So many draws beyond a limit count its probability to a third; fewer don't. */
const ENOUGH = 10;
/** How far each input is moved by itself to see which margins it could bring down [standard deviations]. */
const FAR = 5;

/** A run; of one in blocks, the first block alone is what its seed draws by itself. */
type Run = MonteCarlo & { readonly firstBlock?: MonteCarlo };

/** The probability of exceeding a limit, where the draws of a run don't tell. */
export type RareExceeding = (margin: Margin) => TailProbability | 'remote' | null;

/**
 * The probability of exceeding a limit that too few draws of a run have exceeded to count it. Null where the count is good enough, where nothing is
 * uncertain, or where the methods contradict the run: its count then stays what is known. `remote`: so far away that there is nothing to estimate,
 * because neither the draws nor any input by itself, moved by five standard deviations, takes up half of the margin.
 */
export function rareExceeding(board: BoardModel, run: Run, draws: DrawOptions): RareExceeding {
  const lowest = lowestAlone(board, draws.joint);
  return ({ id, margin, u }) => {
    const sample = run.outputs.get(id);
    if (!sample || run.cancelled || !(margin > 0) || !(u > 0) || !Number.isFinite(u)) return null;
    const n = sample.values.length;
    const counted = sample.below(0).probability * n;
    if (counted >= ENOUGH) return null;
    // A run of n draws goes about as far as the quantile of 1/n, and eight standard deviations have to stay inside the margin.
    const drawn = (margin - sample.interval(1 - 2 / n).low) / margin;
    const alone = (margin - lowest[outputIndex(board, id)]) / margin;
    if (drawn < normalQuantile(1 - 1 / n) / 8 && alone < 0.5) return 'remote';
    const tail = tailProbability(board, id, { ...draws, run: run.firstBlock?.outputs.get(id) ?? sample });
    return tail.ending === 'disputed' && counted > 0 ? null : tail;
  };
}

/** The least value of each output when one input at a time is far from its best value [SI]; −∞ without a solution. */
function lowestAlone(board: BoardModel, joint: DrawOptions['joint']): Float64Array {
  const space = normalSpace(board, joint);
  const z = new Float64Array(space.ids.length);
  const x = startValues(board);
  const y = new Float64Array(board.outputs.length);
  const lowest = y.slice().fill(Number.POSITIVE_INFINITY);
  for (let d = 0; d < z.length; d++) {
    for (const far of [-FAR, FAR]) {
      z[d] = far;
      space.place(z, x);
      const solved = board.evaluate(x, y).ending === 'solved';
      for (let o = 0; o < y.length; o++) lowest[o] = Math.min(lowest[o], solved ? y[o] : Number.NEGATIVE_INFINITY);
    }
    z[d] = 0;
  }
  return lowest;
}
