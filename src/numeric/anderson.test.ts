import { describe, expect, test } from 'vitest';
import { Anderson } from './anderson.ts';

/** Iterates until z and its image agree; the number of images taken, or `most`. */
function iterate(
  g: (z: Float64Array) => Float64Array,
  z: Float64Array,
  memory: number,
  tolerance: number,
  most: number,
) {
  const acceleration = new Anderson(z.length, memory);
  for (let count = 1; count <= most; count++) {
    const image = g(z);
    if (image.every((value, i) => Math.abs(value - z[i]) <= tolerance)) return count - 1;
    acceleration.step(z, image);
  }
  return most;
}

describe('a fixed point', () => {
  // The root of cos z = z: 0.739085133215160641655… (sequence A003957 of the On-Line Encyclopedia of Integer Sequences).
  const dottie = 0.7390851332151607;

  test('of the cosine, which plain iteration takes some sixty steps for', () => {
    const cosine = (z: Float64Array) => z.map(Math.cos);
    const z = Float64Array.of(1);
    expect(iterate(cosine, z, 1, 1e-12, 100)).toBeLessThanOrEqual(7);
    expect(z[0]).toBeCloseTo(dottie, 12);
  });

  // In one dimension the method is the secant method on z − g(z); its second step from z0 and g(z0) is the secant's.
  test('in one dimension the second step is that of the secant method', () => {
    const acceleration = new Anderson(1, 1);
    const z = Float64Array.of(1);
    acceleration.step(z, z.map(Math.cos));
    expect(z[0]).toBe(Math.cos(1));
    const [before, here] = [1, Math.cos(1)];
    const f = (value: number) => value - Math.cos(value);
    const secant = here - (f(here) * (here - before)) / (f(here) - f(before));
    acceleration.step(z, z.map(Math.cos));
    expect(z[0]).toBeCloseTo(secant, 14);
  });

  // With full memory the method on a linear map is GMRES in disguise, which ends after n + 1 images (Walker and Ni, theorem 2.2 and corollary 2.10).
  test.each([1, 2, 3, 5])('of a linear contraction in %s dimensions is there after n + 1 steps', (n) => {
    const expected = Float64Array.from({ length: n }, (_, i) => i + 1);
    const g = (z: Float64Array) =>
      z.map((_, i) => {
        let sum = expected[i];
        for (let j = 0; j < n; j++) sum += (0.9 / n) * Math.cos(1 + i * 2.3 + j * 1.7) * (z[j] - expected[j]);
        return sum;
      });
    const z = new Float64Array(n);
    expect(iterate(g, z, n, 1e-8, 50)).toBeLessThanOrEqual(n + 1);
    for (let i = 0; i < n; i++) expect(z[i]).toBeCloseTo(expected[i], 7);
  });

  test('of a map that plain iteration runs away from: losses growing with temperature near the limit', () => {
    // z ← 1 − 1.5·z has the fixed point 0.4, and each plain step is 1.5 times further from it.
    const z = Float64Array.of(0);
    expect(iterate((at) => at.map((value) => 1 - 1.5 * value), z, 2, 1e-12, 20)).toBeLessThanOrEqual(2);
    expect(z[0]).toBeCloseTo(0.4, 12);
  });

  test('is found with less memory than dimensions, sooner than by plain iteration', () => {
    const n = 12;
    const g = (z: Float64Array) => z.map((value, i) => 1 + (0.95 - 0.05 * i) * (value - 1));
    const z = new Float64Array(n);
    // Plain iteration needs ln(1e-10·…)/ln 0.95, some 400 steps.
    expect(iterate(g, z, 4, 1e-10, 400)).toBeLessThan(60);
    for (const value of z) expect(value).toBeCloseTo(1, 8);
  });
});

describe('where directions say nothing new', () => {
  test('more memory than dimensions does no harm', () => {
    for (const memory of [2, 3, 5]) {
      const z = Float64Array.of(1, -1);
      const g = (at: Float64Array) => Float64Array.of(Math.cos(at[0]), 0.5 * Math.sin(at[1]) + 0.1 * at[0]);
      expect(iterate(g, z, memory, 1e-12, 100)).toBeLessThanOrEqual(15);
      expect(z[0]).toBeCloseTo(0.7390851332151607, 11);
    }
  });

  test('the fixed point itself stays', () => {
    const acceleration = new Anderson(2, 3);
    const z = Float64Array.of(1, 2);
    for (let k = 0; k < 5; k++) acceleration.step(z, Float64Array.of(1, 2));
    expect([...z]).toEqual([1, 2]);
  });

  test('a component that never moves does no harm', () => {
    const z = Float64Array.of(1, 5);
    expect(iterate((at) => Float64Array.of(Math.cos(at[0]), 5), z, 2, 1e-12, 100)).toBeLessThanOrEqual(8);
    expect(z[1]).toBe(5);
  });

  test('a fresh start forgets the other problem', () => {
    const fresh = Float64Array.of(0.3);
    const used = Float64Array.of(0.3);
    const first = new Anderson(1, 2);
    const second = new Anderson(1, 2);
    for (const start of [9, 4]) second.step(Float64Array.of(start), Float64Array.of(2));
    second.restart();
    for (let k = 0; k < 4; k++) {
      first.step(fresh, fresh.map(Math.cos));
      second.step(used, used.map(Math.cos));
    }
    expect(used[0]).toBe(fresh[0]);
  });
});
