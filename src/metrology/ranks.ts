/** Ranks of numbers from 1 for the smallest, in the order given; equal numbers share the mean of their ranks. */
export function ranksOf(values: ArrayLike<number>): number[] {
  const order = Array.from(values, (_, i) => i).sort((a, b) => values[a] - values[b]);
  const ranks = new Array<number>(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from + 1;
    while (to < order.length && values[order[to]] === values[order[from]]) to++;
    for (let i = from; i < to; i++) ranks[order[i]] = (from + 1 + to) / 2;
    from = to;
  }
  return ranks;
}
