/**
 * Current at which a resistor dissipates its rated power [A].
 *
 * I = √(P/R)
 *
 * P  rated power [W]
 * R  resistance [Ω], more than zero
 * Valid for direct or rms current, at temperatures where the full rating holds.
 * Source: Joule's law; tabulated in data sheets of current-sense resistors.
 */
export function ratedCurrent(power: number, resistance: number): number {
  return Math.sqrt(power / resistance);
}
