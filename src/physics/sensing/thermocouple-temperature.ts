import type { ThermocoupleType } from './thermocouple-type.ts';
import { referenceFunction, referenceSlope, thermocoupleVoltage } from './thermocouple-voltage.ts';

/** The tables end at a rounded microvolt [mV]. */
const halfDigit = 0.0005;

/**
 * Temperature of a thermocouple's measuring junction [K]; null outside the type's range.
 *
 * E(T) = U + E(T_ref): voltages are added, never temperatures. Solved for T by Newton's method on the reference function, from the published inverse
 * polynomial, to 1e-9 K (2e-6 K where two pieces of a reference function meet, which is how well they meet).
 *
 * U       voltage between the copper leads [V]
 * T_ref   temperature of the reference junction, where the thermocouple's wires end [K]
 * Valid from −200 °C (J: −210 °C) to 1372 °C (K), 400 °C (T), 1200 °C (J), 1000 °C (E), 1300 °C (N).
 * Source: NIST Monograph 175 (1993); IEC 60584-1.
 */
export function thermocoupleTemperature(
  type: ThermocoupleType,
  voltage: number,
  referenceTemperature: number,
): number | null {
  const reference = thermocoupleVoltage(type, referenceTemperature);
  if (reference === null) return null;
  const start = inverseTemperature(type, voltage + reference);
  if (start === null) return null;
  const millivolts = 1e3 * (voltage + reference);
  let celsius = start - 273.15;
  for (let pass = 0; pass < 10; pass++) {
    const step = (referenceFunction(type, celsius) - millivolts) / referenceSlope(type, celsius);
    celsius -= step;
    if (Math.abs(step) < 1e-10) break;
  }
  return celsius + 273.15;
}

/**
 * Temperature of a thermocouple whose reference junctions are at 0 °C, by the published inverse polynomial [K]; null outside the type's range.
 *
 * t = Σ dᵢ·Eⁱ
 *
 * E    voltage [mV]
 * dᵢ   coefficients of the type [°C/mV^i]
 * Valid within each range's published error, 0.06 °C at most.
 * Source: NIST Monograph 175 (1993), inverse functions.
 */
export function inverseTemperature({ lowestInverse, inverse }: ThermocoupleType, voltage: number): number | null {
  const millivolts = 1e3 * voltage;
  const { to } = inverse[inverse.length - 1];
  if (!(millivolts >= lowestInverse - halfDigit && millivolts <= to + halfDigit)) return null;
  const { coefficients } = inverse.find((piece) => millivolts <= piece.to) ?? inverse[inverse.length - 1];
  let celsius = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) celsius = celsius * millivolts + coefficients[i];
  return celsius + 273.15;
}
