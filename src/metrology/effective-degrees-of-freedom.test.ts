import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { coverageFactor, effectiveDegreesOfFreedom, statedDegreesOfFreedom } from './effective-degrees-of-freedom.ts';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_127;
const positive = fc.integer({ min: 1, max: 1000 }).map((hundredths) => hundredths / 100);

describe(`effective degrees of freedom (seed ${SEED})`, () => {
  test('of n equal parts with ν each are n·ν', () => {
    const rows = Array.from({ length: 5 }, (_, k) => ({ input: `${k}`, contribution: 2 }));
    expect(effectiveDegreesOfFreedom({ u: 2 * Math.sqrt(5), rows }, () => 7)).toBeCloseTo(35, 9);
  });

  test('are never fewer than the fewest of a part, nor more than all together', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(positive, positive), { minLength: 1, maxLength: 6 }), (parts) => {
        const rows = parts.map(([contribution], k) => ({ input: `${k}`, contribution }));
        const u = Math.hypot(...parts.map(([contribution]) => contribution));
        const degrees = parts.map(([, each]) => each);
        const effective = effectiveDegreesOfFreedom({ u, rows }, (id) => degrees[Number(id)]);
        expect(effective).toBeGreaterThanOrEqual(Math.min(...degrees) * (1 - 1e-12));
        expect(effective).toBeLessThanOrEqual(degrees.reduce((sum, each) => sum + each, 0) * (1 + 1e-12));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('are what the inputs state, and infinite where nothing is in doubt or nothing is uncertain', () => {
    const model = exampleModel({
      inputs: {
        a: [1, { shape: 't', u: 2, degreesOfFreedom: 3 }],
        b: [1, normal(1)],
        c: [1, rectangle(1, 1)],
        d: [1, null],
      },
      outputs: { few: ([a]) => 5 * a, none: ([, b, c, d]) => b + c + d, exact: ([, , , d]) => d },
    });
    const sens = sensitivities(model);
    const of = (output: string) =>
      effectiveDegreesOfFreedom(budget(model, output, sens)!, statedDegreesOfFreedom(model));
    expect(of('few')).toBeCloseTo(3, 9);
    expect(of('none')).toBe(Number.POSITIVE_INFINITY);
    expect(of('exact')).toBe(Number.POSITIVE_INFINITY);
  });
});

test('the coverage factor rises with the coverage, and falls with the degrees of freedom to the normal one', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 998 }), positive, (thousandths, degrees) => {
      const coverage = thousandths / 1000;
      expect(coverageFactor(coverage + 0.001, degrees)).toBeGreaterThan(coverageFactor(coverage, degrees));
      expect(coverageFactor(coverage, degrees + 1)).toBeLessThan(coverageFactor(coverage, degrees));
    }),
    { seed: SEED, numRuns: 100 },
  );
  expect(coverageFactor(0.95, Number.POSITIVE_INFINITY)).toBeCloseTo(1.959963984540054, 12);
});
