import { type AdaptiveMonteCarlo, adaptiveMonteCarlo } from '../../src/metrology/adaptive-monte-carlo.ts';
import { budget } from '../../src/metrology/budget.ts';
import { coverageFactor } from '../../src/metrology/effective-degrees-of-freedom.ts';
import { exampleModel, normal, rectangle } from '../../src/metrology/example.test-data.ts';
import type { Joint } from '../../src/metrology/joint.ts';
import { numericalTolerance } from '../../src/metrology/margin.ts';
import type { Model } from '../../src/metrology/model.ts';
import { secondOrder } from '../../src/metrology/second-order.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import type { Spread } from '../../src/quantity/spread.ts';
import type { Figure, Topic, Trap } from '../topic.ts';

const seed = 20_261_126;
const supplement = 'JCGM 101:2008';

const drawn = (model: Model, joint?: Joint): AdaptiveMonteCarlo =>
  adaptiveMonteCarlo(model, { accurate: ['y'], seed, joint, block: 2 ** 14, most: 2 ** 18, part: 0.05 });
const sampleOf = (model: Model, joint?: Joint) => drawn(model, joint).outputs.get('y')!;
const firstOrder = (model: Model, joint?: Joint) => budget(model, 'y', sensitivities(model), joint)!.u;
const second = (model: Model, joint?: Joint) => secondOrder(model, ['y'], joint).get('y')!;

type Rest = Pick<Figure, 'source' | 'why' | 'tier'>;

/** A sampled figure, or one that is printed with two digits, can't always show one per cent. */
function figure(what: string, computed: number, published: number, tolerance: number, rest: Rest): Figure {
  const onePerCent = Math.min(...[0.99, 1.01].map((factor) => Math.abs(factor * computed - published)));
  const made = { what, computed, published, tolerance, ...rest };
  return onePerCent > tolerance
    ? made
    : { ...made, coarse: 'the printed digits, or the draws, leave more than one per cent' };
}

const printed = { why: 'half the last printed digit', tier: 'A' as const };
const sampled = { why: 'printed digits, and two per cent of an end from the draws', tier: 'A' as const };
const closed = { why: 'one per cent of u and two of an end, from the draws', tier: 'C' as const };

// ——— 9.2: sum of four
const four = (spreads: readonly Spread[]) =>
  exampleModel({
    inputs: Object.fromEntries(spreads.map((spread, k) => [`x${k}`, [0, spread]])),
    outputs: { y: ([a, b, c, d]) => a + b + c + d },
  });
const unit = rectangle(0, 1);
const normals = four([normal(1), normal(1), normal(1), normal(1)]);
const oneWide = four([unit, unit, unit, rectangle(0, 10)]);
const sampledNormals = sampleOf(normals);
const sampledWide = sampleOf(oneWide);
const sums = [
  figure('sum of four normal inputs: standard uncertainty [1]', sampledNormals.u, 2, 0.01, {
    ...sampled,
    source: `${supplement}, 9.2.2`,
  }),
  figure('sum of four normal inputs: end of the 95 % interval [1]', sampledNormals.interval().high, 3.92, 0.02, {
    ...sampled,
    source: `${supplement}, 9.2.2`,
  }),
  figure(
    'sum of four normal inputs: end of the shortest interval [1]',
    sampledNormals.shortestInterval().high,
    3.92,
    0.08,
    {
      ...sampled,
      source: `${supplement}, 9.2.2`,
    },
  ),
  figure(
    'one rectangle of ten times the width: standard uncertainty to first order [1]',
    firstOrder(oneWide),
    10.1,
    0.05,
    {
      ...printed,
      source: `${supplement}, 9.2.4, from memory`,
    },
  ),
  figure(
    'one rectangle of ten times the width: end by first order [1]',
    coverageFactor(0.95, Number.POSITIVE_INFINITY) * firstOrder(oneWide),
    19.9,
    0.05,
    {
      ...printed,
      source: `${supplement}, 9.2.4, from memory`,
    },
  ),
  figure('one rectangle of ten times the width: end by Monte Carlo [1]', sampledWide.interval().high, 17, 0.1, {
    ...sampled,
    source: `${supplement}, 9.2.4, from memory`,
  }),
];

// ——— 9.3: a mass in air [mg over 100 g]
const mass = exampleModel({
  inputs: {
    reference: [100_000, normal(0.05)],
    added: [1.234, normal(0.02)],
    air: [1.2, { shape: 'rectangular', low: 1.1, high: 1.3 }],
    weight: [8000, { shape: 'rectangular', low: 7000, high: 9000 }],
    standard: [8000, { shape: 'rectangular', low: 7950, high: 8050 }],
  },
  outputs: { y: ([m, d, a, w, r]) => (m + d) * (1 + (a - 1.2) * (1 / w - 1 / r)) - 100_000 },
});
const sampledMass = sampleOf(mass);
const massSecond = second(mass);
const table = (rest: { why: string; tier: 'A' }, memory = '') => ({
  ...rest,
  source: `${supplement}, 9.3, table 6${memory}`,
});
const k95 = coverageFactor(0.95, Number.POSITIVE_INFINITY);
const massFigures = [
  figure('mass in air: estimate to first order [mg]', sensitivities(mass).y0[0], 1.234, 5e-5, table(printed)),
  figure('mass in air: standard uncertainty to first order [mg]', firstOrder(mass), 0.0539, 5e-5, table(printed)),
  figure(
    'mass in air: lower end by first order [mg]',
    1.234 - k95 * firstOrder(mass),
    1.1285,
    1e-4,
    table(printed, ', from memory'),
  ),
  figure(
    'mass in air: upper end by first order [mg]',
    1.234 + k95 * firstOrder(mass),
    1.3395,
    1e-4,
    table(printed, ', from memory'),
  ),
  figure('mass in air: standard uncertainty to second order [mg]', massSecond.u, 0.075, 5e-5, table(printed)),
  figure(
    'mass in air: lower end by second order [mg]',
    massSecond.expectation - k95 * massSecond.u,
    1.087,
    2e-4,
    table(printed, ', from memory'),
  ),
  figure(
    'mass in air: upper end by second order [mg]',
    massSecond.expectation + k95 * massSecond.u,
    1.381,
    2e-4,
    table(printed, ', from memory'),
  ),
  figure('mass in air: estimate by Monte Carlo [mg]', sampledMass.mean, 1.2341, 3e-4, table(sampled, ', from memory')),
  figure(
    'mass in air: standard uncertainty by Monte Carlo [mg]',
    sampledMass.u,
    0.0754,
    4e-4,
    table(sampled, ', from memory'),
  ),
  figure(
    'mass in air: lower end by Monte Carlo [mg]',
    sampledMass.shortestInterval().low,
    1.0834,
    4e-3,
    table(sampled, ', from memory'),
  ),
  figure(
    'mass in air: upper end by Monte Carlo [mg]',
    sampledMass.shortestInterval().high,
    1.3825,
    4e-3,
    table(sampled, ', from memory'),
  ),
  figure('mass in air: exact standard uncertainty [mg]', sampledMass.u, 0.0754797, 3e-4, {
    ...closed,
    source: `inputs of ${supplement}, 9.3, by hand from E(1/ρ) and E(1/ρ²)`,
  }),
];

// ——— 9.4: a loss that is a sum of two squares [1e-6]
const loss = (x1: number) =>
  exampleModel({
    inputs: { x1: [x1, normal(0.005)], x2: [0, normal(0.005)] },
    outputs: { y: ([a, b]) => 1e6 * (a * a + b * b) },
  });
const correlated = (x1: number, r: number): Joint => ({
  ids: ['x1', 'x2'],
  mean: Float64Array.of(x1, 0),
  covariance: Float64Array.of(25e-6, r * 25e-6, r * 25e-6, 25e-6),
  logarithmic: [false, false],
});
interface LossRow {
  readonly r: number;
  readonly x1: number;
  readonly mean: number;
  readonly first: number;
  readonly second: number;
  readonly u: number;
  readonly shortest: readonly [number, number];
  readonly read: boolean;
}
const lossRows: readonly LossRow[] = [
  { r: 0, x1: 0, mean: 50, first: 0, second: 50, u: 50, shortest: [0, 150], read: true },
  { r: 0, x1: 0.01, mean: 150, first: 100, second: 112, u: 112, shortest: [0, 367], read: false },
  { r: 0, x1: 0.05, mean: 2551, first: 500, second: 502, u: 502, shortest: [1590, 3543], read: false },
  { r: 0.9, x1: 0, mean: 50, first: 0, second: 67, u: 67, shortest: [0, 185], read: true },
  { r: 0.9, x1: 0.01, mean: 150, first: 100, second: 121, u: 121, shortest: [13, 398], read: true },
  { r: 0.9, x1: 0.05, mean: 2551, first: 500, second: 505, u: 505, shortest: [1628, 3555], read: false },
];
const losses = lossRows.flatMap((row): Figure[] => {
  const { r, x1, mean, first, second: printedSecond, u, shortest, read } = row;
  const joint = r === 0 ? undefined : correlated(x1, r);
  const model = loss(x1);
  const sample = sampleOf(model, joint);
  const twice = second(model, joint);
  const { low, high } = sample.shortestInterval();
  const name = `comparison loss at ${x1}, r = ${r}`;
  const source = `${supplement}, 9.4, tables 7 and 8${read ? '' : ', from memory'}`;
  const byHand = `inputs of ${supplement}, 9.4, by hand: mean x₁² + 2u², variance 4x₁²u² + 4u⁴(1 + r²)`;
  const variance = 4 * x1 ** 2 * 25e-6 + 4 * 25e-6 ** 2 * (1 + r ** 2);
  return [
    figure(
      `${name}: standard uncertainty to first order [1e-6]`,
      firstOrder(model, joint),
      first,
      first === 0 ? 1e-6 : 0.5,
      {
        ...printed,
        source,
      },
    ),
    figure(`${name}: standard uncertainty to second order [1e-6]`, twice.u, printedSecond, 0.51, {
      ...printed,
      source,
    }),
    figure(
      `${name}: standard uncertainty to second order, closed form [1e-6]`,
      twice.u,
      1e6 * Math.sqrt(variance),
      1e-5 * u,
      {
        source: byHand,
        why: 'five digits of the differences',
        tier: 'C',
      },
    ),
    figure(
      `${name}: mean by second order, closed form [1e-6]`,
      twice.expectation,
      1e6 * (x1 ** 2 + 50e-6),
      1e-5 * mean,
      {
        source: byHand,
        why: 'five digits of the differences',
        tier: 'C',
      },
    ),
    figure(`${name}: mean by Monte Carlo [1e-6]`, sample.mean, mean, 0.5 + 0.005 * u, { ...sampled, source }),
    figure(`${name}: standard uncertainty by Monte Carlo [1e-6]`, sample.u, u, 0.5 + 0.01 * u, { ...sampled, source }),
    figure(`${name}: lower end of the shortest interval [1e-6]`, low, shortest[0], 1.5 + 0.05 * u, {
      ...sampled,
      source,
    }),
    figure(`${name}: upper end of the shortest interval [1e-6]`, high, shortest[1], 0.02 * shortest[1], {
      ...sampled,
      source,
    }),
  ];
});
const exactEnds = [
  [0, 0, 149.79],
  [0.01, 0, 366],
  [0.05, 1593.6, 3548.6],
].flatMap(([x1, low, high]): Figure[] => {
  const made = sampleOf(loss(x1)).shortestInterval();
  const source = `inputs of ${supplement}, 9.4, shortest interval of the noncentral chi-square distribution by an independent program`;
  return [
    figure(`comparison loss at ${x1}: lower end, exact [1e-6]`, made.low, low, Math.max(0.5, 0.02 * low), {
      ...closed,
      source,
    }),
    figure(`comparison loss at ${x1}: upper end, exact [1e-6]`, made.high, high, 0.02 * high, { ...closed, source }),
  ];
});

// ——— 9.5: an end gauge over 50 mm [nm]
const gauge = exampleModel({
  inputs: {
    standard: [50_000_623, { shape: 't', u: 25, degreesOfFreedom: 18 }],
    difference: [215, { shape: 't', u: 6, degreesOfFreedom: 24 }],
    random: [0, { shape: 't', u: 4, degreesOfFreedom: 5 }],
    systematic: [0, { shape: 't', u: 7, degreesOfFreedom: 8 }],
    expansion: [11.5e-6, { shape: 'rectangular', low: 9.5e-6, high: 13.5e-6 }],
    mean: [-0.1, normal(0.2)],
    cycle: [0, { shape: 'u-shaped', low: -0.5, high: 0.5 }],
    'expansion difference': [0, { shape: 'curvilinear', low: -1e-6, high: 1e-6, by: 1e-7 }],
    'temperature difference': [0, { shape: 'curvilinear', low: -0.05, high: 0.05, by: 0.025 }],
  },
  outputs: {
    y: ([s, d, r, i, a, theta, cycle, da, dtheta]) => s + d + r + i - s * (da * (theta + cycle) + a * dtheta) - 50e6,
  },
});
const gaugeSample = sampleOf(gauge);
const gaugeAt99 = gaugeSample.interval(0.99);
const gaugeFigures = [
  figure('end gauge in nine inputs: standard uncertainty to first order [nm]', firstOrder(gauge), 32, 0.5, {
    ...printed,
    source: `${supplement}, 9.5.4`,
  }),
  ...(['low', 'high'] as const).map((end) =>
    figure(
      `end gauge in nine inputs: ${end} end of the 99 % interval [nm]`,
      gaugeAt99[end],
      end === 'low' ? 744 : 932,
      3,
      {
        why: 'what 262 144 draws leave uncertain',
        tier: 'C',
        source: `inputs of ${supplement}, 9.5, by an independent program`,
      },
    ),
  ),
];

// ——— 7.9.2: numerical tolerance
const tolerances = (
  [
    [0.00035, 0.5e-4],
    [2, 0.5],
    [35, 5],
  ] as const
).map(([u, published]) =>
  figure(`numerical tolerance of u = ${u}, one digit [1]`, numericalTolerance(u), published, 1e-9 * published, {
    ...printed,
    why: 'a rule',
    source: `${supplement}, 7.9.2, by its rule: u = c·10ˡ gives δ = 10ˡ/2`,
  }),
);

const zero = loss(0);
const traps: Trap[] = [
  {
    what: 'comparison loss at 0: standard uncertainty without the terms of second order [1e-6]',
    computed: second(zero).u,
    published: 0,
    tolerance: 25,
    why: 'half the right value',
    source: `${supplement}, 9.4, table 7`,
    reason: 'a sum of squares has no slope at zero, and is uncertain all the same',
  },
  {
    what: 'mass in air: standard uncertainty by Monte Carlo is not that of first order [mg]',
    computed: sampledMass.u,
    published: 0.0539,
    tolerance: 0.01,
    why: 'half the difference',
    source: `${supplement}, 9.3, table 6`,
    reason: 'the densities count only together with the air that is displaced',
  },
];

export const topic: Topic = {
  title: 'Propagated distributions',
  field: 'metrology',
  figures: [...sums, ...massFigures, ...losses, ...exactEnds, ...gaugeFigures, ...tolerances],
  traps,
};
