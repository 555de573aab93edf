import { directionTable } from './sobol-directions.ts';

const bits = 32;
const scale = 2 ** -32;

/** A Sobol sequence; every value lies between 0 and 1 and never on either. */
export interface SobolSequence {
  readonly dimensions: number;
  /** The point with this index. */
  at(index: number, out: Float64Array): void;
  /** One coordinate of the points `from`, `from + 1`, … as many as fit into `out`. */
  column(dimension: number, from: number, out: Float64Array): void;
}

/**
 * A scrambled Sobol sequence. The seed picks the scrambling; `null` leaves the sequence as published. Points come in Gray-code order, so that each
 * one costs a single exclusive-or a coordinate.
 *
 * Sources: I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967) 86–112; order after I. A. Antonov and V. M. Saleev, ibid. 19 (1979) 252–256;
 * direction numbers of Joe and Kuo (2008); nested uniform scrambling by hashing: B. Burley, "Practical Hash-based Owen Scrambling",
 * Journal of Computer Graphics Techniques 9 (2020) 1–20, whose padding also serves the dimensions beyond the table.
 */
export function sobol(dimensions: number, seed: number | null): SobolSequence {
  const directions = new Map<number, Uint32Array>();
  const directionsOf = (dimension: number): Uint32Array => {
    const column = dimension % (directionTable.length + 1);
    const found = directions.get(column) ?? directionNumbers(column);
    directions.set(column, found);
    return found;
  };
  const column = (dimension: number, from: number, out: Float64Array): void => {
    if (!(dimension >= 0 && dimension < dimensions)) throw new Error(`dimension ${dimension} of ${dimensions}`);
    const v = directionsOf(dimension);
    const padded = dimension > directionTable.length;
    const key = seed === null ? 0 : hash((seed ^ Math.imul(dimension + 1, 0x9e3779b9)) >>> 0);
    if (padded) {
      const order = hash(key);
      for (let i = 0; i < out.length; i++) {
        const bare = pointAt(v, reverse(mix(reverse(from + i), order)) >>> 0);
        out[i] = numberOf(seed === null ? bare : reverse(mix(reverse(bare), key)));
      }
      return;
    }
    // Scrambling works on the bits in reverse order: there the point is kept.
    const backward = v.map(reverse);
    let x = reverse(pointAt(v, from));
    for (let i = 0; i < out.length; i++) {
      out[i] = numberOf(reverse(seed === null ? x : mix(x, key)));
      x ^= backward[trailingZeros(from + i + 1)];
    }
  };
  const single = new Float64Array(1);
  return {
    dimensions,
    column,
    at(index, out) {
      for (let d = 0; d < dimensions; d++) {
        column(d, index, single);
        out[d] = single[0];
      }
    },
  };
}

function pointAt(v: Uint32Array, index: number): number {
  let gray = (index ^ (index >>> 1)) >>> 0;
  let x = 0;
  for (let bit = 0; gray !== 0; bit++, gray >>>= 1) if (gray & 1) x ^= v[bit];
  return x;
}

function trailingZeros(n: number): number {
  return 31 - Math.clz32(n & -n);
}

function directionNumbers(dimension: number): Uint32Array {
  const v = new Uint32Array(bits);
  if (dimension === 0) {
    for (let i = 0; i < bits; i++) v[i] = 2 ** (bits - 1 - i);
    return v;
  }
  const [polynomial, numbers] = directionTable[dimension - 1].split(':');
  const m = numbers.split(',').map(Number);
  const degree = m.length;
  const coefficients = Number(polynomial);
  for (let i = 0; i < bits; i++) {
    if (i < degree) {
      v[i] = m[i] * 2 ** (bits - 1 - i);
      continue;
    }
    let value = v[i - degree] ^ (v[i - degree] >>> degree);
    for (let k = 1; k < degree; k++) if ((coefficients >>> (degree - k)) & 1) value ^= v[i - k];
    v[i] = value >>> 0;
  }
  return v;
}

/** The middle of the interval that the 32 bits name, between 0 and 1. */
function numberOf(point: number): number {
  return (point >>> 0) * scale + scale / 2;
}

/** Nested uniform scrambling of bits in reverse order: each bit is flipped by a hash of the bits below it. */
function mix(x: number, key: number): number {
  let y = (x + key) | 0;
  y ^= Math.imul(y, 0x6c50b47c);
  y ^= Math.imul(y, 0xb82f1e52);
  y ^= Math.imul(y, 0xc7afe638);
  y ^= Math.imul(y, 0x8d22f6e6);
  return y;
}

function reverse(x: number): number {
  let y = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  y = ((y >>> 2) & 0x33333333) | ((y & 0x33333333) << 2);
  y = ((y >>> 4) & 0x0f0f0f0f) | ((y & 0x0f0f0f0f) << 4);
  y = ((y >>> 8) & 0x00ff00ff) | ((y & 0x00ff00ff) << 8);
  return (y >>> 16) | (y << 16);
}

/** A bijective mix of 32 bits, so that neighbouring seeds and dimensions have nothing in common. Source: the 32-bit finaliser of MurmurHash3 (A. Appleby, public domain). */
function hash(x: number): number {
  let y = x | 0;
  y = Math.imul(y ^ (y >>> 16), 0x85ebca6b);
  y = Math.imul(y ^ (y >>> 13), 0xc2b2ae35);
  return (y ^ (y >>> 16)) >>> 0;
}
