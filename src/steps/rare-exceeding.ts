import type { BoardModel } from '../board/assemble.ts';
import type { DrawOptions } from '../metrology/draws.ts';
import type { Margin } from '../metrology/margin.ts';
import type { MonteCarlo } from '../metrology/monte-carlo.ts';
import { normalQuantile } from '../metrology/normal-quantile.ts';
import { type TailProbability, tailProbability } from '../metrology/tail.ts';

/** So many draws beyond a limit count its probability to a third; fewer don't. */
const ENOUGH = 10;

/**
 * The probability of exceeding a limit that too few draws of a run have exceeded to count it. Null where the count is good enough, where nothing is uncertain,
 * or where the methods contradict the run: its count then stays what is known. `remote`: so far away that there is nothing to estimate.
 */
export function rareExceeding(
  board: BoardModel,
  margin: Margin,
  run: MonteCarlo,
  draws: DrawOptions,
): TailProbability | 'remote' | null {
  const sample = run.outputs.get(margin.id);
  if (!sample || run.cancelled || !(margin.margin > 0) || !(margin.u > 0) || !Number.isFinite(margin.u)) return null;
  const n = sample.values.length;
  const { low } = sample.interval(1 - 2 / n);
  const counted = sample.below(0).probability * n;
  if (counted >= ENOUGH) return null;
  // A run of n draws goes about as far as the quantile of 1/n. Where that took up less than this part of the margin, eight standard deviations don't
  // reach the limit, nor do seven of a quantity that is spread by a tenth in its logarithm.
  const usedUp = (margin.margin - low) / margin.margin;
  if (usedUp < normalQuantile(1 - 1 / n) / 8) return 'remote';
  const tail = tailProbability(board, margin.id, { ...draws, run: sample });
  return tail.ending === 'disputed' && counted > 0 ? null : tail;
}
