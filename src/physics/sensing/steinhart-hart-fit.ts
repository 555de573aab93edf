import { fitColumns } from './column-fit.ts';
import { type SteinhartHart, steinhartHartTemperature } from './steinhart-hart.ts';

/** A thermistor's resistance [Ω] at a temperature [K]. */
export interface ThermistorPoint {
  readonly resistance: number;
  readonly temperature: number;
}

/**
 * Steinhart–Hart coefficients through three points [1/K]; null when two have the same resistance.
 *
 * γ2 = (Y2 − Y1)/(L2 − L1), γ3 = (Y3 − Y1)/(L3 − L1), C = (γ3 − γ2)/(L3 − L2)/(L1 + L2 + L3), B = γ2 − C·(L1² + L1·L2 + L2²),
 * A = Y1 − (B + C·L1²)·L1
 *
 * Yᵢ   1/Tᵢ [1/K]
 * Lᵢ   ln(Rᵢ/Ω) [1]
 * Valid between the points, where the curve falls; choose them at the ends and the middle of the range in use.
 * Source: J. S. Steinhart and S. R. Hart, Deep-Sea Research 15 (1968) 497–503, solved for three points.
 */
export function steinhartHartThrough(
  first: ThermistorPoint,
  second: ThermistorPoint,
  third: ThermistorPoint,
): SteinhartHart | null {
  const [l1, l2, l3] = [first, second, third].map(({ resistance }) => Math.log(resistance));
  const [y1, y2, y3] = [first, second, third].map(({ temperature }) => 1 / temperature);
  const gamma2 = (y2 - y1) / (l2 - l1);
  const gamma3 = (y3 - y1) / (l3 - l1);
  const c = (gamma3 - gamma2) / (l3 - l2) / (l1 + l2 + l3);
  const b = gamma2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
  const a = y1 - (b + c * l1 * l1) * l1;
  return Number.isFinite(c) ? { a, b, c } : null;
}

/**
 * Steinhart–Hart coefficients of many points by least squares [1/K], with the root mean square of what is left [K]; null with fewer than three
 * different resistances.
 *
 * Σ (1/Tᵢ − A − B·Lᵢ − C·Lᵢ³)² is least
 *
 * Symbols as for three points.
 * Source: J. S. Steinhart and S. R. Hart, Deep-Sea Research 15 (1968) 497–503; least squares by orthogonal columns.
 */
export function fitSteinhartHart(points: readonly ThermistorPoint[]): (SteinhartHart & { residual: number }) | null {
  const logarithms = points.map(({ resistance }) => Math.log(resistance));
  const fit = fitColumns(
    [points.map(() => 1), logarithms, logarithms.map((l) => l ** 3)],
    points.map(({ temperature }) => 1 / temperature),
  );
  if (fit === null) return null;
  const [a, b, c] = fit.coefficients;
  const squares = points.map(
    (point) => (steinhartHartTemperature({ a, b, c }, point.resistance) - point.temperature) ** 2,
  );
  return { a, b, c, residual: Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / points.length) };
}
