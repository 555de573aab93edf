import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';
import { studentDensity, studentQuantile } from './student-t.ts';

const STEP = 1 / 128;
const LAST = 5.5;

/**
 * The inverse of Student's distribution for many draws: a cubic between values and slopes over the normal number that belongs to the same probability,
 * right to 1e-8; beyond 5.5 of it, and below one degree of freedom, where it rises too steeply, it is worked out each time.
 */
export function tabulatedStudent(degreesOfFreedom: number): (probability: number) => number {
  if (degreesOfFreedom < 1) return (probability) => studentQuantile(probability, degreesOfFreedom);
  const n = Math.ceil(LAST / STEP) + 1;
  const values = new Float64Array(n + 1);
  const slopes = new Float64Array(n + 1);
  for (let k = 0; k <= n; k++) {
    const z = k * STEP;
    values[k] = -studentQuantile(normalBelow(-z), degreesOfFreedom);
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    slopes[k] = (STEP * density) / studentDensity(values[k], degreesOfFreedom);
  }
  return (probability) => {
    const z = normalQuantile(probability);
    const size = Math.abs(z);
    if (!(size < LAST)) return studentQuantile(probability, degreesOfFreedom);
    const k = Math.floor(size / STEP);
    const x = size / STEP - k;
    const [a, b] = [values[k], values[k + 1]];
    const [p, q] = [slopes[k] - (b - a), slopes[k + 1] - (b - a)];
    const t = a + (b - a) * x + x * (1 - x) * (p * (1 - x) - q * x);
    return z < 0 ? -t : t;
  };
}
