import { describe, expect, test } from 'vitest';
import { randomStream } from '../numeric/random.ts';
import { acceleratedInterval, bootstrap } from './bootstrap.ts';
import { type ComparisonRule, checkSample, compareSamples } from './comparison.ts';
import { differenceByWelch } from './mean-difference.ts';
import { ratioByFieller } from './ratio.ts';
import { scatterOf } from './scatter.ts';

const rule: ComparisonRule = { paired: false, confidence: 0.95, seed: 3, quantile: { p: 0.25, definition: 8 } };
const one = [10.1, 9.7, 10.4, 9.9, 10.2, 10.6, 9.5, 10.3, 10.05];
const other = [10.9, 11.3, 10.6, 11.8, 10.7, 11.1, 11.4, 10.8, 11.2];

describe('a comparison', () => {
  test.each([
    [1000, 0],
    [1e-6, 0],
    [1, 5],
    [-3, 0],
  ])('scaled by %d and shifted by %d says the same', (scale, shift) => {
    const moved = (values: readonly number[]) => values.map((value) => scale * value + shift);
    const [plain, changed] = [compareSamples(one, other, rule), compareSamples(moved(one), moved(other), rule)];
    expect(changed.difference!.t * Math.sign(scale)).toBeCloseTo(plain.difference!.t, 8);
    expect(changed.difference!.chance).toBeCloseTo(plain.difference!.chance, 10);
    expect(changed.before.trend!.z * Math.sign(scale)).toBeCloseTo(plain.before.trend!.z, 10);
    const ends = [plain.drawn!.low, plain.drawn!.high].map((end) => end * scale).sort((a, b) => a - b);
    expect(changed.drawn!.low / ends[0]).toBeCloseTo(1, 2);
    expect(changed.drawn!.high / ends[1]).toBeCloseTo(1, 2);
    if (shift === 0) expect(changed.ratio!.ratio).toBeCloseTo(plain.ratio!.ratio, 10);
  });

  test('the other way round has the opposite difference and the inverse ratio', () => {
    const [there, back] = [compareSamples(one, other, rule), compareSamples(other, one, rule)];
    expect(back.difference!.low).toBeCloseTo(-there.difference!.high, 12);
    expect(back.ratioByLogs!.interval![0]).toBeCloseTo(1 / there.ratioByLogs!.interval![1], 12);
    // Fieller's set of ratios is the same set, inverted.
    expect(back.ratio!.interval![0]).toBeCloseTo(1 / there.ratio!.interval![1], 12);
  });

  test('what both readings of a pair share drops out', () => {
    const shared = [50, -20, 7, 300, 12, -4, 80, 9, 41];
    const plus = (values: readonly number[]) => values.map((value, i) => value + shared[i]);
    const pairs = { ...rule, paired: true };
    expect(compareSamples(plus(one), plus(other), pairs).difference!.t).toBeCloseTo(
      compareSamples(one, other, pairs).difference!.t,
      9,
    );
  });

  test('of readings that repeat has no uncertainty, and no difference is claimed', () => {
    expect(compareSamples([2, 2, 2], [3, 3, 3], rule)).toMatchObject({ difference: null, ratio: null });
  });

  test('of a divisor that may be zero has a ratio without bounds', () => {
    const ratio = ratioByFieller(
      { dividend: 2, divisor: 0.5, dividendVariance: 0.1, divisorVariance: 0.1, covariance: 0 },
      1.96,
    );
    // By hand: g = 1.96²·0.1/0.25 = 1.537.
    expect(ratio.g).toBeCloseTo(1.53664, 5);
    expect(ratio.interval).toBeNull();
  });

  test('the same seed draws the same interval, another one another', () => {
    const drawn = (seed: number) => compareSamples(one, other, { ...rule, seed }).drawn!;
    expect(drawn(3)).toEqual(drawn(3));
    expect(drawn(4)).not.toEqual(drawn(3));
  });
});

describe('readings like their neighbours', () => {
  const random = randomStream(8);
  let value = 0;
  const walk = Array.from({ length: 400 }, () => {
    value = 0.8 * value + random.normal();
    return value;
  });

  test('count as fewer: n·(1 − φ)/(1 + φ) for a first-order autoregressive series, φ = 0.8, seed 8', () => {
    // Closed form 44.4; the estimate of τ from 400 readings scatters by a third.
    const { independent, n } = checkSample(walk);
    expect(n).toBe(400);
    expect(independent).toBeGreaterThan(25);
    expect(independent).toBeLessThan(75);
  });

  test('give no logarithms and no bootstrap, and a wider interval', () => {
    const { difference, drawn, ratioByLogs } = compareSamples(walk, one, rule);
    expect([drawn, ratioByLogs]).toEqual([null, null]);
    expect(difference!.u).toBeGreaterThan(2 * Math.sqrt(scatterOf(walk).variance / 400));
  });

  test('a rise in them is seen by the trend test, a level is not', () => {
    expect(checkSample(walk).trend!.chanceCorrelated).toBeGreaterThan(0.05);
    const rising = checkSample(walk.map((reading, i) => reading + i / 40)).trend!;
    expect(rising.chanceCorrelated).toBeLessThan(0.001);
    expect(rising.low).toBeLessThan(1 / 40);
    expect(rising.high).toBeGreaterThan(1 / 40);
  });
});

describe('intervals hold what they say, by simulation', () => {
  test('Welch, 5 and 9 normal readings, scatters 1 and 3: 95 % of 4000 intervals, seed 11', () => {
    const random = randomStream(11);
    const draw = (n: number, sd: number) => scatterOf(Array.from({ length: n }, () => sd * random.normal()));
    let held = 0;
    for (let k = 0; k < 4000; k++) {
      const { low, high } = differenceByWelch(draw(5, 1), draw(9, 3))!;
      if (low <= 0 && high >= 0) held++;
    }
    // Three standard errors of a count of 4000 are 1.03 %.
    expect(Math.abs(held / 4000 - 0.95)).toBeLessThan(0.0104);
  });

  test('BCa of the mean of 25 skew readings: 95 % less what is known to be missing, seed 12', () => {
    const random = randomStream(12);
    const mean = ([sample]: readonly Float64Array[]) => scatterOf(sample).mean;
    let held = 0;
    let percentile = 0;
    for (let k = 0; k < 600; k++) {
      const sample = Array.from({ length: 25 }, () => -Math.log(random.uniform()));
      const drawn = bootstrap([sample], mean, 600, k);
      const [low, high] = acceleratedInterval(drawn);
      if (low <= 1 && high >= 1) held++;
      if (drawn.replicates[15] <= 1 && drawn.replicates[585] >= 1) percentile++;
    }
    // Exponential readings, n = 25: second-order correct, so within O(1/n); three standard errors of the count are 2.7 %.
    expect(held / 600).toBeGreaterThan(0.895);
    expect(held / 600).toBeLessThan(0.977);
    expect(held).toBeGreaterThanOrEqual(percentile);
  });

  test('Mann–Kendall with neighbours alike: 5 % false alarms stay about that many, where the plain test has four times as many, seed 13', () => {
    const random = randomStream(13);
    let [plain, corrected] = [0, 0];
    for (let k = 0; k < 200; k++) {
      let value = random.normal() / Math.sqrt(1 - 0.49);
      const series = Array.from({ length: 60 }, () => {
        const now = value;
        value = 0.7 * value + random.normal();
        return now;
      });
      const { chance, chanceCorrelated } = checkSample(series).trend!;
      if (chance < 0.05) plain++;
      if (chanceCorrelated < 0.05) corrected++;
    }
    expect(plain / 200).toBeGreaterThan(0.2);
    expect(corrected / 200).toBeLessThan(0.1);
  });
});
