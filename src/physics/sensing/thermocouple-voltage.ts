import type { DirectPiece, ThermocoupleType } from './thermocouple-type.ts';

/** Rounding of 273.15 K must not push the end of a range out of it [°C]. */
const rounding = 1e-9;

/**
 * Voltage of a thermocouple whose reference junctions are at 0 °C [V]; null outside the type's range.
 *
 * E = Σ cᵢ·tⁱ, and for type K above 0 °C + a0·exp(a1·(t − a2)²)
 *
 * t          temperature of the measuring junction, T − 273.15 K [°C]
 * cᵢ         coefficients of the type [mV/°C^i]
 * a0 a1 a2   height [mV], rate [1/°C²] and centre [°C] of type K's magnetic term
 * Valid from −270 °C (J: −210 °C) to 1372 °C (K), 400 °C (T), 1200 °C (J), 1000 °C (E), 1300 °C (N), for wire that follows the standard; wire of
 * tolerance class 1 may differ by 1.5 °C or more.
 * Source: NIST Monograph 175 (1993); IEC 60584-1.
 */
export function thermocoupleVoltage(type: ThermocoupleType, temperature: number): number | null {
  const celsius = temperature - 273.15;
  return isWithin(type, celsius) ? 1e-3 * referenceFunction(type, celsius) : null;
}

/**
 * Voltage between the copper leads of a thermocouple with its reference junctions at any temperature [V]; null outside the type's range.
 *
 * U = E(T) − E(T_ref)
 *
 * T, T_ref   temperatures of the measuring and the reference junction [K]
 * Valid where E is, for both.
 * Source: NIST Monograph 175 (1993), law of intermediate temperatures; IEC 60584-1.
 */
export function measuredThermocoupleVoltage(
  type: ThermocoupleType,
  temperature: number,
  referenceTemperature: number,
): number | null {
  const hot = thermocoupleVoltage(type, temperature);
  const cold = thermocoupleVoltage(type, referenceTemperature);
  return hot === null || cold === null ? null : hot - cold;
}

/**
 * Sensitivity of a thermocouple, its Seebeck coefficient [V/K]; null outside the type's range.
 *
 * S = dE/dt = Σ i·cᵢ·tⁱ⁻¹, and for type K above 0 °C + 2·a1·(t − a2)·a0·exp(a1·(t − a2)²)
 *
 * Symbols and range as for the voltage.
 * Source: derivative of the reference functions of NIST Monograph 175 (1993).
 */
export function thermocoupleSensitivity(type: ThermocoupleType, temperature: number): number | null {
  const celsius = temperature - 273.15;
  return isWithin(type, celsius) ? 1e-3 * referenceSlope(type, celsius) : null;
}

/** E(t) [mV], unbounded: outside the range the nearest piece goes on. */
export function referenceFunction({ direct }: ThermocoupleType, celsius: number): number {
  const { coefficients, bump } = pieceAt(direct, celsius);
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * celsius + coefficients[i];
  return bump === undefined ? sum : sum + bump.height * Math.exp(bump.rate * (celsius - bump.centre) ** 2);
}

/** dE/dt [mV/°C], unbounded. */
export function referenceSlope({ direct }: ThermocoupleType, celsius: number): number {
  const { coefficients, bump } = pieceAt(direct, celsius);
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 1; i--) sum = sum * celsius + i * coefficients[i];
  if (bump === undefined) return sum;
  const distance = celsius - bump.centre;
  return sum + 2 * bump.rate * distance * bump.height * Math.exp(bump.rate * distance ** 2);
}

function pieceAt(direct: readonly DirectPiece[], celsius: number): DirectPiece {
  return direct.find(({ to }) => celsius <= to) ?? direct[direct.length - 1];
}

function isWithin({ lowest, direct }: ThermocoupleType, celsius: number): boolean {
  return celsius >= lowest - rounding && celsius <= direct[direct.length - 1].to + rounding;
}
