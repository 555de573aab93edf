/**
 * Frequency at which a first-order low-pass filter passes 1/√2 [Hz].
 *
 * f_c = 1/(2π·R·C)
 *
 * R, C   resistance [Ω], the source's own included, and capacitance [F]
 * Source: Texas Instruments, Analog Engineer's Pocket Reference SLYW038.
 */
export function cutoffFrequency(resistance: number, capacitance: number): number {
  return 1 / (2 * Math.PI * resistance * capacitance);
}

/**
 * Bandwidth of the ideal filter that passes as much white noise [Hz].
 *
 * B = (π/2)·f_c = 1/(4·R·C)
 *
 * Symbols as for the cut-off frequency.
 * Source: Texas Instruments, Analog Engineer's Pocket Reference SLYW038 (1.57·f_c for one pole).
 */
export function noiseBandwidth(resistance: number, capacitance: number): number {
  return 1 / (4 * resistance * capacitance);
}

/**
 * Part of a sine that a first-order low-pass filter passes [1].
 *
 * |H| = 1/√(1 + (f/f_c)²)
 *
 * f, f_c   frequency and cut-off frequency [Hz]
 * Source: first-order system, closed form.
 */
export function lowPassGain(frequency: number, cutoff: number): number {
  return 1 / Math.hypot(1, frequency / cutoff);
}

/**
 * Time after a step until a first-order filter is within a part of the step [s].
 *
 * t = R·C·ln(1/ε)
 *
 * R, C   resistance [Ω] and capacitance [F]
 * ε      part of the step that is left [1], more than 0 and less than 1; one N-th of a step of a converter is 1/(N·2^bits)
 * Source: Texas Instruments, Analog Engineer's Pocket Reference SLYW038, settling to N bits.
 */
export function settlingTime(resistance: number, capacitance: number, left: number): number {
  return -resistance * capacitance * Math.log(left);
}

/**
 * Part of a step that is left after a time [1].
 *
 * ε = exp(−t/(R·C))
 *
 * Symbols and source as for the settling time; t time since the step [s].
 */
export function settlingError(resistance: number, capacitance: number, time: number): number {
  return Math.exp(-time / (resistance * capacitance));
}
