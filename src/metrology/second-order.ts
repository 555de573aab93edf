import { type Direction, directionsOf } from './directions.ts';
import { outputIndex } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';

/** What the terms of second order make of one output. */
export interface SecondOrder {
  /** Expectation of the output [SI]: f + ½·Σ fᵢᵢuᵢ² at the inputs' expectations. */
  readonly expectation: number;
  /** Standard uncertainty of the output [SI]. */
  readonly u: number;
  /** Parts of the variance [1] that first order doesn't have, largest first: one input bends, or two work together. */
  readonly terms: readonly { readonly inputs: readonly string[]; readonly share: number }[];
  /** Part of the variance [1] that pairs which weren't looked at may have. */
  readonly neglected: number;
}

/** So many directions are looked at in all pairs; of more, only those that take part in something. */
const ALL_PAIRS = 12;
const MOST_IN_PAIRS = 24;
/** Sign patterns that look for pairs. */
const PATTERNS = 6;

/**
 * Expectation and standard uncertainty of outputs with the terms of second order; null for an output where the model has no solution nearby, where more than 2 %
 * of the variance may be in pairs that weren't looked at, or where the series has no positive variance.
 *
 * u² = Σᵢ [fᵢ²uᵢ² + fᵢfᵢᵢμ₃ᵢ + ¼fᵢᵢ²(μ₄ᵢ − uᵢ⁴) + ⅓fᵢfᵢᵢᵢμ₄ᵢ] + Σᵢ﹤ⱼ [fᵢⱼ² + fᵢfᵢⱼⱼ + fⱼfᵢᵢⱼ]uᵢ²uⱼ²
 *
 * fᵢ, fᵢⱼ, fᵢⱼⱼ: derivatives along independent directions at the inputs' expectations; μ₃, μ₄: third and fourth central moments. With normal inputs
 * (μ₃ = 0, μ₄ = 3u⁴) it is the sum of JCGM 100:2008 (GUM), 5.1.2, note. Derivatives by differences over u/4.
 *
 * Many directions are first moved all together, in several patterns of signs: what a direction does then beyond what it does alone, squared, is on average its part
 * in all pairs. Pairs are made of the directions with a part above 1e-4, and of those that carry most of the variance.
 */
export function secondOrder(
  model: Model,
  outputs: readonly string[],
  joint?: Joint,
): ReadonlyMap<string, SecondOrder | null> {
  const { expectations, all } = directionsOf(model, joint);
  const wanted = outputs.map((id) => outputIndex(model, id));
  const look = lookAround(model, expectations, wanted);
  const here = look([]);
  const axes = here && all.map((direction) => axisOf(direction, look, here));
  if (!here || !axes?.every((axis) => axis !== null)) return new Map(outputs.map((id) => [id, null]));

  const first = wanted.map((_, o) =>
    axes.reduce((sum, { slope, direction }) => sum + (slope[o] * direction.u) ** 2, 0),
  );
  const own = wanted.map((_, o) => axes.map((axis) => ownTerms(axis, o)));
  const alone = first.map((each, o) => each + own[o].reduce((sum, term) => sum + term, 0));
  const chosen = axes.length <= ALL_PAIRS ? null : together(axes, look, here, alone);
  const inPairs = axes.length <= ALL_PAIRS ? [...axes.keys()] : (chosen?.directions ?? []);
  const pairs = inPairs.flatMap((i, k) =>
    inPairs.slice(k + 1).map((j) => ({ i, j, terms: pairTerms(axes[i], axes[j], look, here) })),
  );

  return new Map(
    outputs.map((id, o) => {
      const joined = pairs.map(({ i, j, terms }) => ({
        inputs: [axes[i].direction.id, axes[j].direction.id],
        part: terms?.[o] ?? Number.NaN,
      }));
      const terms = [...own[o].map((part, i) => ({ inputs: [axes[i].direction.id], part })), ...joined];
      const variance = terms.reduce((sum, { part }) => sum + part, first[o]);
      const neglected = axes.length <= ALL_PAIRS ? 0 : (chosen?.left[o] ?? Number.POSITIVE_INFINITY) / variance;
      // A variance of 0 belongs to what is held exactly.
      if (!(variance >= 0 && (neglected <= 0.02 || variance === 0))) return [id, null];
      const bend = axes.reduce((sum, { curve, direction }) => sum + (curve[o] * direction.u ** 2) / 2, 0);
      return [
        id,
        {
          expectation: here[o] + bend,
          u: Math.sqrt(variance),
          terms: terms
            .filter(({ part }) => Math.abs(part) > 1e-6 * variance)
            .map(({ inputs, part }) => ({ inputs, share: part / variance }))
            .sort((a, b) => Math.abs(b.share) - Math.abs(a.share)),
          neglected: variance === 0 ? 0 : neglected,
        },
      ];
    }),
  );
}

type Look = (moves: readonly (readonly [direction: Direction, distance: number])[]) => Float64Array | null;

/** Wanted outputs beside the expectations; null where there is no solution. */
function lookAround(model: Model, expectations: Float64Array, wanted: readonly number[]): Look {
  const x = expectations.slice();
  const y = new Float64Array(model.outputs.length);
  return (moves) => {
    x.set(expectations);
    for (const [direction, distance] of moves) direction.move(x, distance);
    if (model.evaluate(x, y).ending !== 'solved') return null;
    const seen = Float64Array.from(wanted, (index) => y[index]);
    return seen.every(Number.isFinite) ? seen : null;
  };
}

/** What an output does along one direction: its derivatives, and its values a step away. */
interface Axis {
  readonly direction: Direction;
  readonly below: Float64Array;
  readonly above: Float64Array;
  readonly slope: Float64Array;
  readonly curve: Float64Array;
  readonly twist: Float64Array;
}

/** Derivatives by central differences over one and two steps: exact for polynomials of the fourth degree. */
function axisOf(direction: Direction, look: Look, here: Float64Array): Axis | null {
  const h = direction.step;
  const [farBelow, below, above, farAbove] = [-2 * h, -h, h, 2 * h].map((distance) => look([[direction, distance]]));
  if (!farBelow || !below || !above || !farAbove) return null;
  const along = (of: (o: number) => number) => Float64Array.from(here, (_, o) => of(o));
  const odd = (far: number, near: number) => (o: number) =>
    far * (farAbove[o] - farBelow[o]) + near * (above[o] - below[o]);
  const slope = odd(-1 / 12, 2 / 3);
  const twist = odd(1 / 2, -1);
  return {
    direction,
    below,
    above,
    slope: along((o) => slope(o) / h),
    curve: along((o) => (16 * (above[o] + below[o]) - (farAbove[o] + farBelow[o]) - 30 * here[o]) / 12 / h ** 2),
    twist: along((o) => twist(o) / h ** 3),
  };
}

function ownTerms({ direction, slope, curve, twist }: Axis, o: number): number {
  const { u, third, fourth } = direction;
  return slope[o] * curve[o] * third + (curve[o] ** 2 * (fourth - u ** 4)) / 4 + (slope[o] * twist[o] * fourth) / 3;
}

/** What two directions do together; null where there is no solution. */
function pairTerms(a: Axis, b: Axis, look: Look, here: Float64Array): Float64Array | null {
  const [h, k] = [a.direction.step, b.direction.step];
  const corner = (p: number, q: number) =>
    look([
      [a.direction, p * h],
      [b.direction, q * k],
    ]);
  const [lowLow, lowHigh, highLow, highHigh] = [corner(-1, -1), corner(-1, 1), corner(1, -1), corner(1, 1)];
  if (!lowLow || !lowHigh || !highLow || !highHigh) return null;
  return Float64Array.from(here, (_, o) => {
    const mixed = (highHigh[o] - highLow[o] - lowHigh[o] + lowLow[o]) / (4 * h * k);
    const [across, beside] = [
      highHigh[o] + highLow[o] - 2 * a.above[o] - (lowHigh[o] + lowLow[o] - 2 * a.below[o]),
      highHigh[o] + lowHigh[o] - 2 * b.above[o] - (highLow[o] + lowLow[o] - 2 * b.below[o]),
    ];
    const bends = (a.slope[o] * across) / (2 * h * k ** 2) + (b.slope[o] * beside) / (2 * k * h ** 2);
    return (mixed ** 2 + bends) * (a.direction.u * b.direction.u) ** 2;
  });
}

/** Directions that take part in pairs, and for each output the part of the others [SI²]; null where there is no solution. */
function together(axes: readonly Axis[], look: Look, here: Float64Array, alone: readonly number[]) {
  const parts = Array.from(here, () => new Float64Array(axes.length));
  for (let pattern = 0; pattern < PATTERNS; pattern++) {
    const moves = axes.map(({ direction }, i) => [direction, signOf(pattern, i) * direction.step] as const);
    const all = look(moves);
    if (!all) return null;
    for (const [i, axis] of axes.entries()) {
      const others = look(moves.filter((_, k) => k !== i));
      if (!others) return null;
      const itself = signOf(pattern, i) > 0 ? axis.above : axis.below;
      const scale = (axis.direction.u / axis.direction.step) * 4;
      for (let o = 0; o < here.length; o++)
        parts[o][i] += ((all[o] - others[o] - itself[o] + here[o]) * scale) ** 2 / PATTERNS;
    }
  }
  const variance = alone.map((each, o) => Math.abs(each) + parts[o].reduce((sum, part) => sum + part, 0) / 2);
  const most = (of: (o: number, i: number) => number) =>
    axes.map((_, i) => Math.max(...variance.map((each, o) => (each > 0 ? of(o, i) / each : 0))));
  const inPairs = most((o, i) => parts[o][i]);
  const carried = most((o, i) => (axes[i].slope[o] * axes[i].direction.u) ** 2);
  const order = (weights: readonly number[]) => [...weights.keys()].sort((a, b) => weights[b] - weights[a]);
  const taking = order(inPairs).filter((i) => inPairs[i] > 1e-4);
  const carrying = order(carried).filter((i) => carried[i] > 0.01);
  const directions = [...new Set([...taking.slice(0, MOST_IN_PAIRS - 4), ...carrying])].slice(0, MOST_IN_PAIRS);
  const left = parts.map((each) => each.reduce((sum, part, i) => (directions.includes(i) ? sum : sum + part), 0));
  return { directions, left };
}

/** +1 or −1, in an order that no two directions or patterns share. */
function signOf(pattern: number, i: number): number {
  let bits = Math.imul(i * PATTERNS + pattern + 1, 0x9e3779b1);
  bits = Math.imul(bits ^ (bits >>> 15), 0x85ebca6b);
  return (bits ^ (bits >>> 13)) & 1 ? 1 : -1;
}
