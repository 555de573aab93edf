import { budget } from '../../src/metrology/budget.ts';
import { exampleModel, normal } from '../../src/metrology/example.test-data.ts';
import type { Model } from '../../src/metrology/model.ts';
import { monteCarlo } from '../../src/metrology/monte-carlo.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import { type Shared, type StatedCorrelation, tiesOf } from '../../src/metrology/ties.ts';
import type { Figure, Topic, Trap } from '../topic.ts';

const seed = 20_261_125;

function tied(model: Model, shared: readonly Shared[], correlations: readonly StatedCorrelation[]): Model {
  const ties = tiesOf(model.inputs, shared, correlations)!;
  return { ...model, evaluate: (x, y) => model.evaluate(ties.apply(x), y) };
}
const u = (model: Model, output: string) => budget(model, output, sensitivities(model))!.u;
const pairs = (coefficients: Readonly<Record<string, number>>): StatedCorrelation[] =>
  Object.entries(coefficients).map(([names, coefficient]) => {
    const [a, b] = names.split(' ');
    return { between: [a, b], coefficient };
  });

// ——— ten resistors calibrated with one standard, in series
const names = Array.from({ length: 10 }, (_, k) => `r${k}`);
const series = exampleModel({
  inputs: { ...Object.fromEntries(names.map((name) => [name, [1000, null]])), standard: [0, normal(0.1)] },
  outputs: { sum: (x) => x.subarray(0, 10).reduce((sum, each) => sum + each, 0) },
});
const uOfSeries = u(tied(series, [{ input: 'standard', enters: 'offset', of: names }], []), 'sum');

// ——— resistance and reactance from voltage, current and phase
const impedance = exampleModel({
  inputs: { V: [4.999, normal(0.00320936)], I: [0.019661, normal(9.47101e-6)], phase: [1.04446, normal(7.52064e-4)] },
  outputs: {
    R: ([v, i, phase]) => (v / i) * Math.cos(phase),
    X: ([v, i, phase]) => (v / i) * Math.sin(phase),
    Z: ([v, i]) => v / i,
  },
});
const measured = tied(impedance, [], pairs({ 'V I': -0.355311, 'V phase': 0.857624, 'I phase': -0.645111 }));

// ——— activity of a sample against a standard, whose counts are correlated
const activity = tied(
  exampleModel({
    inputs: {
      standard: [0.1368, normal(0.0018)],
      massOfStandard: [5.0192, normal(0.005)],
      mass: [5.0571, normal(0.001)],
      count: [652.6, normal(6.42)],
      countOfStandard: [206.09, normal(3.79)],
    },
    outputs: { A: ([a, ms, mx, rx, rs]) => ((a * ms) / mx) * (rx / rs) },
  }),
  [],
  pairs({ 'count countOfStandard': 0.646 }),
);

// ——— a loss that is the sum of two squares
const loss = (x1: number, r: number) =>
  monteCarlo(
    tied(
      exampleModel({
        inputs: { x1: [x1, normal(0.005)], x2: [0, normal(0.005)] },
        outputs: { loss: ([a, b]) => a * a + b * b },
      }),
      [],
      pairs({ 'x1 x2': r }),
    ),
    { samples: 2 ** 16, seed },
  ).outputs.get('loss')!;

const gum = 'JCGM 100:2008 (GUM)';
const digits = 'half the last printed digit';
const figure = (
  what: string,
  computed: number,
  published: number,
  tolerance: number,
  source: string,
  tier: Figure['tier'] = 'A',
  why = digits,
): Figure => ({ what, computed, published, tolerance, why, source, tier });
const other = 'inputs of the same example, worked out by an independent program';

const losses = [
  [0, 67.268],
  [0.01, 120.52],
  [0.05, 504.5],
].map(
  ([x1, published]): Figure =>
    figure(
      `comparison loss at ${x1}, correlated by 0.9, standard uncertainty [1e-6]`,
      1e6 * loss(x1, 0.9).u,
      published,
      0.005 * published,
      'JCGM 101:2008, 9.4, closed form by hand: √(4x₁²u² + 4u⁴(1 + r²))',
      'C',
      'what 65 536 draws leave uncertain',
    ),
);

const figures: Figure[] = [
  figure(
    'ten resistors in series, calibrated with one standard, uncertainty [Ω]',
    uOfSeries,
    1,
    1e-9,
    `${gum}, 5.2.2, example`,
  ),
  figure('uncertainty of the resistance [Ω]', u(measured, 'R'), 0.071, 5e-4, `${gum}, H.2, table H.3`),
  figure('uncertainty of the reactance [Ω]', u(measured, 'X'), 0.295, 1e-3, `${gum}, H.2, table H.3, from memory`),
  figure('uncertainty of the impedance [Ω]', u(measured, 'Z'), 0.236, 5e-4, `${gum}, H.2, table H.3`),
  figure(
    'uncertainty of the resistance to six digits [Ω]',
    u(measured, 'R'),
    0.0710714,
    1e-6,
    other,
    'C',
    'six digits',
  ),
  figure('uncertainty of the reactance to six digits [Ω]', u(measured, 'X'), 0.295582, 2e-6, other, 'C', 'six digits'),
  figure('uncertainty of the impedance to six digits [Ω]', u(measured, 'Z'), 0.236336, 2e-6, other, 'C', 'six digits'),
  figure('uncertainty of the activity against a standard [Bq/g]', u(activity, 'A'), 0.0083, 5e-5, `${gum}, H.4`),
  figure(
    'uncertainty of the activity to six digits [Bq/g]',
    u(activity, 'A'),
    0.00833014,
    2e-8,
    other,
    'C',
    'six digits',
  ),
  figure(
    'comparison loss at 0, correlated by 0.9, mean [1e-6]',
    1e6 * loss(0, 0.9).mean,
    50,
    0.1,
    'JCGM 101:2008, 9.4',
  ),
  ...losses,
];

const traps: Trap[] = [
  {
    what: 'ten resistors in series, uncertainty without their common standard [Ω]',
    computed: uOfSeries,
    published: 0.32,
    tolerance: 0.1,
    why: 'a tenth of the right value',
    source: `${gum}, 5.2.2, example`,
    reason: 'all ten follow one standard, so their errors add up; as squares would be wrong, as the example says',
  },
  {
    what: 'uncertainty of the resistance without the correlations [Ω]',
    computed: u(measured, 'R'),
    published: 0.1945,
    tolerance: 0.01,
    why: 'far from the right value',
    source: `inputs of ${gum}, H.2, worked out by an independent program without the correlations`,
    reason: 'voltage, current and phase were read together and scatter together',
  },
];

export const topic: Topic = { title: 'Correlated inputs', field: 'metrology', figures, traps };
