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

/**
 * Lowest current of an inductor with a triangular ripple [A]; below zero the converter leaves continuous conduction.
 *
 * I_valley = I − ΔI/2
 *
 * I   average current [A]
 * ΔI  peak-to-peak ripple [A]
 * Valid in continuous conduction.
 * Source: Kirchhoff's laws, triangular wave.
 */
export function valleyCurrent(current: number, ripple: number): number {
  return current - ripple / 2;
}

/**
 * Average current at which the peak just reaches the inductor's saturation current [A].
 *
 * I = I_sat − ΔI/2
 *
 * I_sat  saturation current at the core's temperature [A]; data sheets state it for a loss of inductance of 10 % to 30 %
 * ΔI     peak-to-peak ripple at the inductance that is left there [A]
 * Valid in continuous conduction.
 * Source: Linear Technology, LTC3728 data sheet, design example (peak current below saturation).
 */
export function saturationLimit(saturationCurrent: number, ripple: number): number {
  return saturationCurrent - ripple / 2;
}
