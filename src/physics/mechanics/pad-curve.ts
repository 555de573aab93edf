import { planCurve } from '../electrical/loss-curve.ts';

/** A pad's pressure against its strain. */
export interface PadCurve {
  /** Pressure at a strain [Pa]; 0 for a strain of 0 or less. */
  pressureAt(strain: number): number;
  /** Slope of the pressure [Pa]: steers the solver's steps, and doesn't enter its result. */
  slopeAt(strain: number): number;
  /** Whether a strain lies within the data. */
  covers(strain: number): boolean;
}

/**
 * Compression curve of a gap pad through the points of its data sheet [Pa over 1].
 *
 * From (0, 0) through the points by the monotone cubic; beyond the last point straight on with the slope there.
 *
 * strains    rising, between 0 and 1
 * pressures  rising, more than 0 [Pa]
 * Valid for the thickness and the speed of the test (ASTM D575 or the maker's own). Null when the points can't be such a curve.
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304.
 */
export function planPadCurve(strains: readonly number[], pressures: readonly number[]): PadCurve | null {
  const points = strains.length;
  if (points === 0 || pressures.length !== points) return null;
  const curve = planCurve(points + 1);
  for (let i = 0; i < points; i++) {
    if (!(pressures[i] > (i === 0 ? 0 : pressures[i - 1]))) return null;
    curve.x[i + 1] = strains[i];
    curve.y[i + 1] = pressures[i];
  }
  const last = strains[points - 1];
  if (!(last < 1) || !curve.prepare()) return null;
  const pressureAt = (strain: number) => (strain > 0 ? curve.at(strain) : 0);
  const small = 1e-6 * last;
  return {
    pressureAt,
    slopeAt: (strain) => (strain > 0 ? (curve.at(strain + small) - curve.at(strain - small)) / (2 * small) : 0),
    covers: (strain) => strain >= 0 && strain <= last,
  };
}
