/**
 * Where a series changes its level or its noise: indices of the first value of each new segment, the first one (0) included.
 *
 * Minimises Σ over segments of n·ln(s² + floor²) + penalty by pruned exact search (PELT): n values, s² variance about the segment's own mean.
 * A loud level next to a quiet one needs no common noise. Segments hold at least `least` values; `floor` is a noise that says nothing.
 * Source: R. Killick, P. Fearnhead, I. A. Eckley, J. Am. Stat. Assoc. 107 (2012) 1590–1598: algorithm, and cost for a change in mean and variance.
 */
export function changePoints(values: Float64Array, penalty: number, least: number, floor: number): number[] {
  const n = values.length;
  const cost = normalCost(values, floor);
  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const last = new Int32Array(n + 1);
  best[0] = -penalty;
  let candidates = [0];
  for (let end = Math.min(least, n); end <= n; end++) {
    for (const from of candidates) {
      const total = best[from] + cost(from, end) + penalty;
      if (total < best[end]) {
        best[end] = total;
        last[end] = from;
      }
    }
    candidates = candidates.filter((from) => best[from] + cost(from, end) <= best[end]);
    const next = end + 1 - least;
    if (next >= least) candidates.push(next);
  }
  const starts: number[] = [];
  for (let end = n; end > 0; end = last[end]) starts.unshift(last[end]);
  return starts;
}

/** Cost of the segment from one index up to another. Sums are taken about the first value, so that they keep their digits. */
function normalCost(values: Float64Array, floor: number): (from: number, to: number) => number {
  const sum = new Float64Array(values.length + 1);
  const squares = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) {
    const value = values[i] - values[0];
    sum[i + 1] = sum[i] + value;
    squares[i + 1] = squares[i] + value * value;
  }
  return (from, to) => {
    const count = to - from;
    const mean = (sum[to] - sum[from]) / count;
    const variance = Math.max(0, (squares[to] - squares[from]) / count - mean * mean);
    return count * Math.log(variance + floor * floor);
  };
}
