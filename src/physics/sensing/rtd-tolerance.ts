/** Tolerance at 0 °C [°C] and its growth with the Celsius temperature [1]. */
const classes = { AA: [0.1, 0.0017], A: [0.15, 0.002], B: [0.3, 0.005], C: [0.6, 0.01] } as const;

/**
 * Tolerance of an industrial platinum resistor, as ± [K].
 *
 * a = a0 + s·|t|
 *
 * a0   tolerance at 0 °C: 0.1 K (AA), 0.15 K (A), 0.3 K (B), 0.6 K (C)
 * s    0.0017 (AA), 0.002 (A), 0.005 (B), 0.01 (C)
 * t    temperature, T − 273.15 K [°C]
 * Valid over the range the resistor's class is declared for: film elements 0 to 150 °C (AA), −30 to 300 °C (A), −50 to 500 °C (B), −50 to 600 °C (C).
 * Source: IEC 60751:2008, tables 2 and 3.
 */
export function rtdTolerance(tolerance: keyof typeof classes, temperature: number): number {
  const [atZero, share] = classes[tolerance];
  return atZero + share * Math.abs(temperature - 273.15);
}
