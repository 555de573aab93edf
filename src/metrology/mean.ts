/** Mean of numbers, taken around the first one: numbers that differ in their last digits only keep those digits. */
export function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] - values[0];
  return values[0] + sum / values.length;
}
