/**
 * Peak current of an inductor with a triangular ripple [A].
 *
 * I_peak = I + ΔI/2
 *
 * I   average current [A]
 * ΔI  peak-to-peak ripple [A]
 * Valid in continuous conduction.
 * Source: Linear Technology, LTC3728 data sheet, design example.
 */
export function peakCurrent(current: number, ripple: number): number {
  return current + ripple / 2;
}

/**
 * Effective (rms) current of an inductor with a triangular ripple [A].
 *
 * I_rms = √(I² + ΔI²/12)
 *
 * I   average current [A]
 * ΔI  peak-to-peak ripple [A]
 * Valid in continuous conduction.
 * Source: Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1.
 */
export function rmsCurrent(current: number, ripple: number): number {
  return Math.sqrt(current * current + (ripple * ripple) / 12);
}
