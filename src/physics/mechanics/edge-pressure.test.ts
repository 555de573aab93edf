import { expect, test } from 'vitest';
import { highestPressure, lowestPressure } from './edge-pressure.ts';

// As long as all of it touches, pressure is straight across the width: its ends are as far above the mean as below.
test.each([0, 1, 1.9, 1.99, 2])(
  'pressed %d mm off the centre of 12 mm, the mean lies half-way between highest and lowest',
  (offset) => {
    const [highest, lowest] = [highestPressure, lowestPressure].map((of) => of(30, 12e-3, 10e-3, 1e-3 * offset));
    expect((highest + lowest) / 2 / (30 / 120e-6)).toBeCloseTo(1, 12);
  },
);
