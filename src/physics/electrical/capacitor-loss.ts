/**
 * Effective (rms) current of an output capacitor that carries all of a triangular ripple [A].
 *
 * I = ΔI/(2·√3)
 *
 * ΔI  peak-to-peak ripple [A]
 * Valid in continuous conduction, the load taking none of the ripple.
 * Source: ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021.
 */
export function outputCapacitorCurrent(ripple: number): number {
  return ripple / (2 * Math.sqrt(3));
}

/**
 * Loss in a capacitor's series resistance [W].
 *
 * P = I²·R
 *
 * I  effective (rms) ripple current [A]
 * R  equivalent series resistance at the frequency and temperature of the ripple [Ω]
 * Valid for the frequency that the resistance is stated for.
 * Source: ROHM, application note 64AN035E, 2021.
 */
export function capacitorLoss(current: number, seriesResistance: number): number {
  return current * current * seriesResistance;
}

/**
 * Input capacitance that keeps the input's ripple voltage of one buck phase below a limit [F].
 *
 * C = I·D/(ΔU·f)
 *
 * I   current of the phase [A]
 * D   duty [1]
 * ΔU  peak-to-peak ripple voltage [V], more than zero
 * f   switching frequency [Hz]
 * Valid with series resistance neglected; on the safe side, as the source feeds nothing while the high side conducts.
 * Source: Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1.
 */
export function leastInputCapacitance(current: number, duty: number, rippleVoltage: number, frequency: number): number {
  return (current * duty) / (rippleVoltage * frequency);
}

/**
 * Largest series resistance of the input capacitors for a limit of ripple voltage [Ω].
 *
 * R = ΔU/(I + ΔI/2)
 *
 * ΔU  ripple voltage that the resistance may cause [V]
 * I   current of the phase [A]
 * ΔI  peak-to-peak ripple of the phase [A]
 * Valid in continuous conduction.
 * Source: Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1.
 */
export function mostInputResistance(rippleVoltage: number, current: number, ripple: number): number {
  return rippleVoltage / (current + ripple / 2);
}
