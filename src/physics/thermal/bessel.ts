/**
 * Bessel functions of the first kind, order 0 or 1 [1].
 *
 * J_n(x) = (1/π)·∫ cos(n·θ − x·sin θ) dθ from 0 to π, by the trapezoidal rule, which converges faster than any power here;
 * for large x, J_n(x) = √(2/(π·x))·(P·cos χ − Q·sin χ), χ = x − (n/2 + ¼)·π, with P and Q by their asymptotic series.
 *
 * x  argument [1], not negative
 * Right to about 1e-14 of the largest value near x.
 * Source: NBS, Handbook of Mathematical Functions (Abramowitz and Stegun), 9.1.21, 9.2.5, 9.2.9 and 9.2.10.
 */
export function besselJ(order: 0 | 1, x: number): number {
  if (x > 30) return asymptoticJ(order, x);
  return meanOverHalfTurn(80, (angle) => Math.cos(order * angle - x * Math.sin(angle)));
}

/**
 * Modified Bessel functions of the first kind, order 0 or 1 [1].
 *
 * I_n(x) = (1/π)·∫ exp(x·cos θ)·cos(n·θ) dθ from 0 to π
 *
 * x  argument [1], from 0 to 700; beyond, the result is too large for a number
 * Source: NBS, Handbook of Mathematical Functions (Abramowitz and Stegun), 9.6.19.
 */
export function besselI(order: 0 | 1, x: number): number {
  const points = 40 + Math.ceil(7 * Math.sqrt(x));
  return meanOverHalfTurn(points, (angle) => Math.exp(x * Math.cos(angle)) * Math.cos(order * angle));
}

/**
 * Modified Bessel functions of the second kind, order 0 or 1 [1].
 *
 * K_n(x) = ∫ exp(−x·cosh s)·cosh(n·s) ds from 0 to infinity
 *
 * x  argument [1], more than zero
 * Source: NBS, Handbook of Mathematical Functions (Abramowitz and Stegun), 9.6.24.
 */
export function besselK(order: 0 | 1, x: number): number {
  const step = 0.05;
  let sum = 0.5 * Math.exp(-x);
  for (let s = step; x * (Math.cosh(s) - 1) < 45; s += step) sum += Math.exp(-x * Math.cosh(s)) * Math.cosh(order * s);
  return step * sum;
}

function meanOverHalfTurn(points: number, f: (angle: number) => number): number {
  let sum = 0.5 * (f(0) + f(Math.PI));
  for (let i = 1; i < points; i++) sum += f((i * Math.PI) / points);
  return sum / points;
}

function asymptoticJ(order: number, x: number): number {
  let [p, q, term] = [0, 0, 1];
  for (let k = 0; k < 24; k += 2) {
    p += term;
    term *= (4 * order * order - (2 * k + 1) ** 2) / ((k + 1) * 8 * x);
    q += term;
    term *= -(4 * order * order - (2 * k + 3) ** 2) / ((k + 2) * 8 * x);
  }
  const phase = x - (order / 2 + 0.25) * Math.PI;
  return Math.sqrt(2 / (Math.PI * x)) * (p * Math.cos(phase) - q * Math.sin(phase));
}
