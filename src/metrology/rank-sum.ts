import { normalBelow } from './probability.ts';
import { ranksOf } from './ranks.ts';

/** Whether the readings of one sample tend to be larger than those of another, by their ranks alone. */
export interface RankSum {
  /** Pairs in which the second sample's reading is the larger, ties counted half. */
  readonly u: number;
  /** u as a share of all pairs: how often a reading of the second sample is the larger. */
  readonly share: number;
  /** Probability of a share at least this far from a half, either way, if both samples came from one distribution. */
  readonly chance: number;
}

/**
 * Rank-sum test of two independent samples, normal approximation with continuity and tie correction. Null when all readings are the same.
 * Sources: F. Wilcoxon, Biometrics Bulletin 1 (1945) 80–83; H. B. Mann, D. R. Whitney, Ann. Math. Stat. 18 (1947) 50–60.
 */
export function rankSum(before: ArrayLike<number>, after: ArrayLike<number>): RankSum | null {
  const [m, n] = [before.length, after.length];
  const all = [...Array.from(before), ...Array.from(after)];
  const ranks = ranksOf(all);
  const u = ranks.slice(m).reduce((sum, rank) => sum + rank, 0) - (n * (n + 1)) / 2;
  const counts = new Map<number, number>();
  for (const value of all) counts.set(value, (counts.get(value) ?? 0) + 1);
  let ties = 0;
  for (const t of counts.values()) ties += t ** 3 - t;
  const total = m + n;
  const variance = ((m * n) / 12) * (total + 1 - ties / (total * (total - 1)));
  if (!(variance > 0)) return null;
  const away = Math.max(0, Math.abs(u - (m * n) / 2) - 0.5);
  return { u, share: u / (m * n), chance: Math.min(1, 2 * normalBelow(-away / Math.sqrt(variance))) };
}
