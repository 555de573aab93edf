import { describe, expect, test } from 'vitest';
import { noise } from '../metrology/noise.test-data.ts';
import { type Level, levelsOf } from './levels.ts';

/** Readings at 20 Hz of levels that last so long each, with noise of its own each. */
function recording(levels: readonly { seconds: number; mean: number; sd: number }[], seed: number) {
  const draw = noise(seed);
  const values = levels.flatMap(({ seconds, mean, sd }) =>
    Array.from({ length: 20 * seconds }, () => mean + sd * draw()),
  );
  return { time: Float64Array.from(values, (_, i) => i / 20), values: Float64Array.from(values) };
}

const lasting = (levels: readonly Level[]) => levels.filter(({ from, to }) => to - from >= 5);

describe('levels of known recordings', () => {
  const quiet = { seconds: 30, mean: 20, sd: 0.05 };
  const loud = { seconds: 60, mean: 60, sd: 4 };

  test.each([
    ['quiet, loud, quiet', [quiet, loud, quiet]],
    ['a stair', [30, 40, 50, 60, 45].map((mean) => ({ seconds: 40, mean, sd: 1 }))],
    [
      'a short loud level between long quiet ones',
      [
        { ...quiet, seconds: 300 },
        { ...loud, seconds: 10 },
        { ...quiet, seconds: 300 },
      ],
    ],
    ['without any noise', [30, 60, 30].map((mean) => ({ seconds: 20, mean, sd: 0 }))],
    ['far from zero', [quiet, loud, quiet].map((each) => ({ ...each, mean: each.mean + 1e6 }))],
    ['one level only', [{ ...loud, sd: 0 }]],
  ])('%s', (_, levels) => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const { time, values } = recording(levels, seed);
      const found = lasting(levelsOf(time, values));
      expect(found.length, `seed ${seed}`).toBe(levels.length);
      let edge = 0;
      for (const [k, { mean, seconds, sd }] of levels.entries()) {
        // The edge is where the levels cross: a reading or two of doubt for each standard deviation of noise against the step.
        expect(Math.abs(found[k].from - edge), `seed ${seed}`).toBeLessThan(0.3);
        expect(Math.abs(found[k].mean - mean), `seed ${seed}`).toBeLessThan(
          5 * (sd / Math.sqrt(20 * seconds)) + 0.02 * 40,
        );
        edge += seconds;
      }
    }
  });

  test('a load that switches on and off ten times a second is one level', () => {
    const values = Float64Array.from({ length: 2400 }, (_, i) => (i < 800 ? 10 : i % 2 === 0 ? 10 : 90));
    const time = Float64Array.from(values, (_, i) => i / 20);
    const found = lasting(levelsOf(time, values));
    expect(found.map(({ mean }) => Math.round(mean))).toEqual([10, 50]);
    expect(found[1].from).toBeCloseTo(40, 0);
  });

  test('the same in other units: scaled by a thousand and shifted, the edges stay', () => {
    const { time, values } = recording([quiet, loud, quiet], 6);
    const edges = (each: Float64Array) => levelsOf(time, each).map(({ from }) => from);
    expect(edges(values.map((value) => 1000 * value - 7))).toEqual(edges(values));
  });

  test('missing readings move no edge', () => {
    const { time, values } = recording([quiet, loud, quiet], 7);
    const holed = values.map((value, i) => (i % 3 === 0 ? Number.NaN : value));
    expect(lasting(levelsOf(time, holed)).map(({ from }) => from)).toEqual(
      [0, 30.05, 90.05].map((edge) => expect.closeTo(edge, 0)),
    );
  });
});
