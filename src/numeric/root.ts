/** Where a function of one variable is zero, and how the search ended. */
export interface Root {
  readonly x: number;
  /** The function's value there. */
  readonly residual: number;
  /** Evaluations of the function. */
  readonly passes: number;
  /** `no-bracket`: the ends have the same sign or one isn't a number; `unsettled`: passes ran out, or the function gave no number. */
  readonly ending: 'solved' | 'no-bracket' | 'unsettled';
}

/**
 * A zero of f between `low` and `high`, where f has opposite signs, to `tolerance` in x (and to the doubles' own spacing at best).
 * Source: R. P. Brent, Algorithms for Minimization Without Derivatives (1973), chapter 4: bisection, secant and inverse quadratic interpolation.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 0, most = 200): Root {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  let passes = 2;
  if (!(Math.sign(fa) * Math.sign(fb) <= 0)) return { x: b, residual: fb, passes, ending: 'no-bracket' };
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (; ; passes++) {
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
    const near = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= near || fb === 0) return { x: b, residual: fb, passes, ending: 'solved' };
    if (passes >= most) return { x: b, residual: fb, passes, ending: 'unsettled' };
    const interpolated = Math.abs(before) >= near && Math.abs(fa) > Math.abs(fb) ? interpolate() : null;
    if (interpolated !== null && 2 * Math.abs(interpolated) < Math.min(Math.abs(3 * half) - near, Math.abs(before))) {
      before = step;
      step = interpolated;
    } else before = step = half;
    a = b;
    fa = fb;
    b += Math.abs(step) > near ? step : Math.sign(half) * near;
    fb = f(b);
    if (Number.isNaN(fb)) return { x: b, residual: fb, passes: passes + 1, ending: 'unsettled' };
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      before = step = b - a;
    }
  }

  /** Step to the secant's zero, or to that of the parabola in f through three points; null when it leads out of the bracket. */
  function interpolate(): number | null {
    const s = fb / fa;
    let p = (c - b) * s;
    let q = 1 - s;
    if (a !== c) {
      const r = fa / fc;
      const t = fb / fc;
      p = s * ((c - b) * r * (r - t) - (b - a) * (t - 1));
      q = (r - 1) * (t - 1) * (s - 1);
    }
    return Math.sign(-p / q) === Math.sign(c - b) ? -p / q : null;
  }
}
