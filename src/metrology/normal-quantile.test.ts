import reference from '@stdlib/stats-base-dists-normal-quantile';
import { expect, test } from 'vitest';
import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';

// Wichura 1988, section 3.4 (accuracy checks of PPND16).
test.each([
  [0.25, -0.6744897501960817],
  [0.001, -3.090232306167814],
  [1e-20, -9.26234008979841],
])('quantile of %d', (probability, published) => {
  expect(Math.abs(normalQuantile(probability) / published - 1)).toBeLessThan(1e-15);
});

test('an independent implementation agrees from 0.00025 to 0.99975, where it keeps its own digits', () => {
  for (let k = 1; k < 4000; k++) {
    const expected = reference(k / 4000, 0, 1);
    expect(Math.abs(normalQuantile(k / 4000) - expected)).toBeLessThan(1e-12);
  }
});

test('it undoes the distribution function, far into the tail', () => {
  for (let z = -30; z <= 3; z += 0.01) expect(normalQuantile(normalBelow(z))).toBeCloseTo(z, 11);
});
