import { expect, test } from 'vitest';
import { studentQuantile } from './student-t.ts';
import { tabulatedStudent } from './student-table.ts';

test.each([0.5, 1, 1.5, 2, 3, 9, 50, 1e4, 1e9])(
  'the table of %s degrees of freedom is the quantile to eight digits',
  (freedom) => {
    const table = tabulatedStudent(freedom);
    for (let k = -400; k <= 400; k++) {
      const tail = 0.5 * 10 ** (-Math.abs(k) / 40);
      const probability = k < 0 ? tail : 1 - tail;
      const exact = studentQuantile(probability, freedom);
      expect(Math.abs(table(probability) - exact)).toBeLessThanOrEqual(2e-8 * Math.abs(exact));
    }
  },
);

test('it rises', () => {
  const table = tabulatedStudent(1);
  let last = Number.NEGATIVE_INFINITY;
  for (let p = 1e-4; p < 1; p += 1e-4) {
    const t = table(p);
    expect(t).toBeGreaterThan(last);
    last = t;
  }
});
