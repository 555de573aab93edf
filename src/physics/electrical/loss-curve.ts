/** A curve through a table of points, rising x. Fill `x` and `y`, call `prepare`, then evaluate as often as needed. */
export interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Computes the slopes; false when the points can't be a curve (x not rising, or a number that isn't finite). */
  prepare(): boolean;
  /** Value at `position`; outside the table it goes on straight with the slope of that end. */
  at(position: number): number;
  /** Whether `position` lies inside the table. */
  covers(position: number): boolean;
}

/**
 * A data sheet's loss of one phase against its current, between its points [W over A].
 *
 * Piecewise cubic Hermite; inner slope = weighted harmonic mean of the neighbouring chords, zero where they turn;
 * end slope by the three-point formula, cut so that the curve stays monotone.
 *
 * Valid inside the table; never leaves the range between two neighbouring points, so it adds no bump that the data sheet doesn't have.
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304; ends as in C. Moler, Numerical Computing with MATLAB, 2004, 3.6.
 */
export function planCurve(points: number): Curve {
  if (points < 2) throw new Error(`a curve needs at least 2 points, not ${points}`);
  const x = new Float64Array(points);
  const y = new Float64Array(points);
  const slope = new Float64Array(points);
  const last = points - 1;
  const chord = (i: number) => (y[i + 1] - y[i]) / (x[i + 1] - x[i]);

  return {
    x,
    y,
    prepare() {
      for (let i = 0; i < points; i++) {
        if (!Number.isFinite(x[i]) || !Number.isFinite(y[i]) || (i > 0 && x[i] <= x[i - 1])) return false;
      }
      if (points === 2) slope.fill(chord(0));
      else {
        for (let i = 1; i < last; i++) slope[i] = innerSlope(x[i] - x[i - 1], x[i + 1] - x[i], chord(i - 1), chord(i));
        slope[0] = endSlope(x[1] - x[0], x[2] - x[1], chord(0), chord(1));
        slope[last] = endSlope(x[last] - x[last - 1], x[last - 1] - x[last - 2], chord(last - 1), chord(last - 2));
      }
      return true;
    },
    at(position) {
      if (position <= x[0]) return y[0] + slope[0] * (position - x[0]);
      if (position >= x[last]) return y[last] + slope[last] * (position - x[last]);
      let i = 0;
      while (position > x[i + 1]) i++;
      const width = x[i + 1] - x[i];
      const t = (position - x[i]) / width;
      const u = 1 - t;
      return (
        y[i] * (1 + 2 * t) * u * u + y[i + 1] * (3 - 2 * t) * t * t + width * t * u * (slope[i] * u - slope[i + 1] * t)
      );
    },
    covers: (position) => position >= x[0] && position <= x[last],
  };
}

function innerSlope(left: number, right: number, chordLeft: number, chordRight: number): number {
  if (chordLeft * chordRight <= 0) return 0;
  const weightLeft = 2 * right + left;
  const weightRight = right + 2 * left;
  return (weightLeft + weightRight) / (weightLeft / chordLeft + weightRight / chordRight);
}

function endSlope(near: number, far: number, chordNear: number, chordFar: number): number {
  const slope = ((2 * near + far) * chordNear - near * chordFar) / (near + far);
  if (slope * chordNear <= 0) return 0;
  return chordNear * chordFar <= 0 && Math.abs(slope) > 3 * Math.abs(chordNear) ? 3 * chordNear : slope;
}
