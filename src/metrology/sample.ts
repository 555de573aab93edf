/** A probability counted from draws, with what the counting leaves uncertain. */
export interface CountedProbability {
  readonly probability: number;
  /** Standard uncertainty from the number of draws, √(p(1−p)/n): an upper bound for low-discrepancy draws. */
  readonly u: number;
  /** 95 % interval from the number of draws; above 0 at its upper end even when nothing was counted. */
  readonly low: number;
  readonly high: number;
}

/**
 * The values one output took in a Monte Carlo run.
 * Draws for which the model has no solution stay in: as the worst case of a margin, and in every probability of a bad end.
 */
export class Sample {
  /** Values in the order they were drawn [SI]; NaN where the model had no solution. */
  readonly values: Float64Array;
  /** Draws without a solution. */
  readonly lost: number;
  /** Mean of the solved draws [SI]; NaN without one. */
  readonly mean: number;
  /** Standard deviation of the solved draws [SI]; NaN with fewer than two. */
  readonly u: number;
  readonly #worst: number;
  #sorted: Float64Array | null = null;

  /** @param margin whether the output is a margin: a draw without a solution then counts as −∞. */
  constructor(values: Float64Array, margin: boolean) {
    this.values = values;
    // Index loops: half of a run's time would go into callbacks and iterators here.
    let solved = 0;
    let sum = 0;
    for (let i = 0; i < values.length; i++) {
      const value = values[i];
      if (Number.isNaN(value)) continue;
      solved++;
      sum += value;
    }
    this.lost = values.length - solved;
    this.#worst = margin ? this.lost : 0;
    this.mean = sum / solved;
    let squares = 0;
    for (let i = 0; i < values.length; i++) {
      const distance = values[i] - this.mean;
      if (!Number.isNaN(distance)) squares += distance * distance;
    }
    this.u = solved > 1 ? Math.sqrt(squares / (solved - 1)) : Number.NaN;
  }

  /**
   * Probabilistically symmetric coverage interval [SI], JCGM 101:2008 7.7.
   * The lower end of a margin is −∞ where too many draws have no solution; the interval of any other output speaks of the solved draws only,
   * and is NaN without one.
   */
  interval(coverage = 0.95): { low: number; high: number } {
    const sorted = this.#sort();
    const m = sorted.length;
    if (m === 0) return { low: Number.NaN, high: Number.NaN };
    const q = Math.floor(coverage * m + 0.5);
    const r = Math.max(1, Math.floor((m - q + 1) / 2));
    return { low: sorted[r - 1], high: sorted[Math.min(m, r + q) - 1] };
  }

  /**
   * Shortest coverage interval [SI], JCGM 101:2008 7.7: of all pairs of sorted draws with the share between them, the pair that is nearest together; the middle one
   * of those that tie. For a single-peaked distribution; ends as for `interval`.
   */
  shortestInterval(coverage = 0.95): { low: number; high: number } {
    const sorted = this.#sort();
    const m = sorted.length;
    const q = Math.floor(coverage * m + 0.5);
    if (m - q < 1) return this.interval(coverage);
    let width = Number.POSITIVE_INFINITY;
    let first = 0;
    let last = 0;
    for (let r = 0; r + q < m; r++) {
      const here = sorted[r + q] - sorted[r];
      if (here < width) [width, first] = [here, r];
      if (here === width) last = r;
    }
    if (width === Number.POSITIVE_INFINITY) return this.interval(coverage);
    const r = Math.floor((first + last) / 2);
    return sorted[r + q] - sorted[r] === width
      ? { low: sorted[r], high: sorted[r + q] }
      : { low: sorted[first], high: sorted[first + q] };
  }

  /** Probability of a value under `threshold` [SI], or of no solution. */
  below(threshold: number): CountedProbability {
    let count = this.lost;
    for (const value of this.values) if (value < threshold) count++;
    return counted(count, this.values.length);
  }

  /** Probability of a value over `threshold` [SI], or of no solution. */
  above(threshold: number): CountedProbability {
    let count = this.lost;
    for (const value of this.values) if (value > threshold) count++;
    return counted(count, this.values.length);
  }

  #sort(): Float64Array {
    if (this.#sorted) return this.#sorted;
    const sorted = this.values.filter((value) => !Number.isNaN(value)).sort();
    this.#sorted = new Float64Array(sorted.length + this.#worst).fill(Number.NEGATIVE_INFINITY);
    this.#sorted.set(sorted, this.#worst);
    return this.#sorted;
  }
}

/**
 * Probability from `count` out of `n`, with Wilson's score interval (95 %).
 * Source: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212; recommended by Brown, Cai, DasGupta, Stat. Sci. 16 (2001) 101–133.
 */
export function counted(count: number, n: number): CountedProbability {
  const z = 1.959963984540054;
  const probability = count / n;
  const centre = (count + z ** 2 / 2) / (n + z ** 2);
  const half = ((z * Math.sqrt(n)) / (n + z ** 2)) * Math.sqrt(probability * (1 - probability) + z ** 2 / (4 * n));
  return {
    probability,
    u: Math.sqrt((probability * (1 - probability)) / n),
    low: Math.max(0, centre - half),
    high: Math.min(1, centre + half),
  };
}
