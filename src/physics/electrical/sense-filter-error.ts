/**
 * Part by which a filter on the sense lines makes a current-sense amplifier read low [1].
 *
 * e = 1 − R_b·R_int/(R_b·R_s + R_b·R_int + R_s·R_int)
 *
 * R_s    filter resistor in each sense line [Ω]
 * R_int  amplifier's internal input resistor [Ω], more than zero
 * R_b    bias network between its inputs [Ω], more than zero; 1250 Ω in the INA210 family
 * Valid for direct current; internal resistors hold ±30 % only, so the error itself is that uncertain.
 * Source: Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8.4.1, equations 1 and 2.
 */
export function senseFilterError(filter: number, internal: number, biasNetwork: number): number {
  const through = biasNetwork * internal;
  return 1 - through / (biasNetwork * filter + through + filter * internal);
}
