/**
 * Probabilities of several tests, adjusted so that the chance of even one false alarm among all stays what it is for one: the k-th smallest times
 * n − k + 1, never less than the one before, never above 1. In the order given.
 * Source: S. Holm, "A simple sequentially rejective multiple test procedure", Scand. J. Stat. 6 (1979) 65–70.
 */
export function adjustByHolm(chances: readonly number[]): number[] {
  let least = 0;
  return inRisingOrder(chances, (chance, k, n) => {
    least = Math.max(least, Math.min(1, (n - k) * chance));
    return least;
  });
}

/**
 * Probabilities of several tests, adjusted so that the share of false alarms among all alarms stays what it is for one: the k-th smallest
 * times n/k, never more than the one after. In the order given; for tests that are independent or positively related.
 * Source: Y. Benjamini, Y. Hochberg, "Controlling the false discovery rate", J. R. Stat. Soc. B 57 (1995) 289–300.
 */
export function adjustByBenjaminiHochberg(chances: readonly number[]): number[] {
  const n = chances.length;
  const rising = [...chances].sort((a, b) => a - b);
  let most = 1;
  for (let k = n - 1; k >= 0; k--) {
    most = Math.min(most, (n / (k + 1)) * rising[k]);
    rising[k] = most;
  }
  return inRisingOrder(chances, (_, k) => rising[k]);
}

/** Gives each number what `adjust` makes of it and its rank from 0, smallest first. */
function inRisingOrder(
  numbers: readonly number[],
  adjust: (value: number, rank: number, n: number) => number,
): number[] {
  const adjusted = new Array<number>(numbers.length);
  const order = numbers.map((_, i) => i).sort((a, b) => numbers[a] - numbers[b]);
  order.forEach((i, rank) => {
    adjusted[i] = adjust(numbers[i], rank, numbers.length);
  });
  return adjusted;
}
