/**
 * Where a series changes its level: indices of the first value of each new level, the first one (0) included.
 *
 * Minimises Σ(y − mean of its segment)² + penalty·segments by pruned exact search (PELT); segments hold at least `least` values.
 * Source: R. Killick, P. Fearnhead, I. A. Eckley, J. Am. Stat. Assoc. 107 (2012) 1590–1598.
 */
export function changePoints(values: Float64Array, penalty: number, least: number): number[] {
  const n = values.length;
  const sum = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    sum[i + 1] = sum[i] + values[i];
    squares[i + 1] = squares[i] + values[i] ** 2;
  }
  const cost = (from: number, to: number) => squares[to] - squares[from] - (sum[to] - sum[from]) ** 2 / (to - from);
  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const last = new Int32Array(n + 1);
  best[0] = -penalty;
  let candidates = [0];
  for (let end = least; end <= n; end++) {
    for (const from of candidates) {
      if (end - from < least) continue;
      const total = best[from] + cost(from, end) + penalty;
      if (total < best[end]) {
        best[end] = total;
        last[end] = from;
      }
    }
    candidates = candidates.filter((from) => end - from < least || best[from] + cost(from, end) <= best[end]);
    candidates.push(end - least + 1);
  }
  const starts: number[] = [];
  for (let end = n; end > 0; end = last[end]) starts.unshift(last[end]);
  return starts;
}

/** Standard deviation of the noise from the differences of neighbours, unmoved by the few large ones where the level changes. */
export function noiseOf(values: Float64Array): number {
  const differences = Float64Array.from({ length: Math.max(0, values.length - 1) }, (_, i) =>
    Math.abs(values[i + 1] - values[i]),
  ).sort();
  // Median absolute deviation of a normal distribution is 0.6745 of its standard deviation; a difference has √2 of it.
  return differences.length === 0 ? 0 : differences[Math.floor(differences.length / 2)] / 0.6745 / Math.SQRT2;
}
