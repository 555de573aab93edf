/**
 * Resistance between the voltage leads, from readings with the current in both directions [Ω].
 *
 * R = (U₊ − U₋)/(2·I)
 *
 * U₊, U₋   voltage with the current forward and reversed [V]
 * I        current, the same both ways [A], not zero
 * Thermal voltages keep their sign while the current turns, and cancel. Valid where they stay the same over both readings.
 * Source: Keithley, Low Level Measurements Handbook, 7th edition, current-reversal method.
 */
export function reversedResistance(forward: number, reversed: number, current: number): number {
  return (forward - reversed) / (2 * current);
}

/**
 * Thermal voltage that a reversal of the current takes out [V].
 *
 * U_th = (U₊ + U₋)/2
 *
 * Symbols, range and source as for the resistance.
 */
export function thermalVoltage(forward: number, reversed: number): number {
  return (forward + reversed) / 2;
}

/**
 * Resistance between the voltage leads, from readings with the current on and off [Ω].
 *
 * R = (U_on − U_off)/I
 *
 * U_on, U_off   voltage with and without the current [V]
 * I             current [A], not zero
 * Half the signal of a reversal for the same current. Valid where thermal voltages stay the same over both readings.
 * Source: Keithley, Low Level Measurements Handbook, 7th edition, offset-compensated ohms.
 */
export function offsetCompensatedResistance(on: number, off: number, current: number): number {
  return (on - off) / current;
}
