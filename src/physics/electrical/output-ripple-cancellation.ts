/**
 * Peak-to-peak ripple current of all phases of a buck converter together [A].
 *
 * ΔI_total = ΔI·N·(D − m/N)·((m + 1)/N − D)/(D·(1 − D)), with m = ⌊N·D⌋
 *
 * N   phases, evenly interleaved [1]
 * D   duty [1], between 0 and 1
 * ΔI  peak-to-peak ripple of one phase [A]
 * Valid in continuous conduction with equal inductances; zero where N·D is a whole number.
 * Source: equals Texas Instruments, SLUU195, 2004, equation 6.
 */
export function outputRipple(phases: number, duty: number, ripple: number): number {
  const m = Math.floor(phases * duty);
  return (ripple * phases * (duty - m / phases) * ((m + 1) / phases - duty)) / (duty * (1 - duty));
}
