/**
 * Rated current a fuse needs for a steady current [A].
 *
 * I_n = I/(s·k)
 *
 * I  steady current [A]
 * s  share of the rating that is used at 25 °C [1]; 0.75 for fuses rated after UL 248-14
 * k  temperature re-rating from the fuse's data sheet at its surroundings [1]; 1 at 25 °C
 * Valid for steady current; pulses are judged by their I²t as well.
 * Source: Littelfuse, Fuseology selection guide (75 % at 25 °C, re-rating in addition).
 */
export function fuseRating(current: number, share: number, rerating: number): number {
  return current / (share * rerating);
}

/**
 * Steady current a fuse may carry [A].
 *
 * I = I_n·s·k
 *
 * I_n  rated current [A]; the others, range and source as for the rating.
 */
export function fuseSteadyCurrent(rating: number, share: number, rerating: number): number {
  return rating * share * rerating;
}

/** Share of the nominal melting I²t that each of so many pulses may have, 10 s apart. Source: Littelfuse, Fuseology, chart 2. */
const pulseShares = [
  [100, 0.48],
  [1000, 0.38],
  [10_000, 0.29],
  [100_000, 0.22],
] as const;

/**
 * Share of a fuse's nominal melting I²t that each pulse may have [1]; null beyond the 100 000 pulses that are published.
 *
 * Taken from the table's next higher number of pulses: 100, 1000, 10 000, 100 000.
 *
 * Valid for pulses at least 10 s apart.
 * Source: Littelfuse, Fuseology selection guide, chart 2, pulse cycle withstand capability.
 */
export function pulseShare(pulses: number): number | null {
  return pulseShares.find(([most]) => pulses <= most)?.[1] ?? null;
}
