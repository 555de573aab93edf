import { budget } from '../../src/metrology/budget.ts';
import {
  coverageFactor,
  effectiveDegreesOfFreedom,
  statedDegreesOfFreedom,
} from '../../src/metrology/effective-degrees-of-freedom.ts';
import { evaluateAt } from '../../src/metrology/evaluate.ts';
import { exampleModel, normal } from '../../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../../src/metrology/fit.ts';
import type { Joint } from '../../src/metrology/joint.ts';
import { withPosterior } from '../../src/metrology/posterior.ts';
import { scatterOf } from '../../src/metrology/scatter.ts';
import { secondOrder } from '../../src/metrology/second-order.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import type { Figure, Topic, Trap } from '../topic.ts';

const gum = 'JCGM 100:2008 (GUM)';
const printed = { why: 'half the last printed digit', tier: 'A' as const };
const recomputed = { why: 'the digits given', tier: 'C' as const };
const independent = (what: string) => `inputs of ${gum}, ${what}, by an independent program`;

type Rest = Pick<Figure, 'source' | 'why' | 'tier'>;

/** Figures that are printed with one or two digits can't show one per cent. */
function figure(what: string, computed: number, published: number, tolerance: number, rest: Rest): Figure {
  const onePerCent = Math.min(...[0.99, 1.01].map((factor) => Math.abs(factor * computed - published)));
  const made = { what, computed, published, tolerance, ...rest };
  return onePerCent > tolerance ? made : { ...made, coarse: 'printed with two digits' };
}

// ——— H.1: a 50 mm end gauge, lengths in nm over the nominal one
const t = (u: number, degreesOfFreedom: number) => ({ shape: 't', u, degreesOfFreedom }) as const;
const gauge = exampleModel({
  inputs: {
    standard: [623, t(25, 18)],
    comparator: [215, t(9.7, 25.6)],
    expansion: [11.5e-6, normal(1.2e-6)],
    temperature: [-0.1, normal(0.41)],
    'expansion difference': [0, t(0.58e-6, 50)],
    'temperature difference': [0, t(0.029, 2)],
  },
  outputs: { length: ([s, d, a, theta, da, dtheta]) => s + d - (50e6 + s) * (da * theta + a * dtheta) },
});
const first = budget(gauge, 'length', sensitivities(gauge))!;
const contribution = (id: string) => Math.abs(first.rows.find((row) => row.input === id)!.contribution);
const freedom = effectiveDegreesOfFreedom(first, statedDegreesOfFreedom(gauge));
const second = secondOrder(gauge, ['length']).get('length')!;
const termOf = (...ids: string[]) => {
  const term = second.terms.find(
    ({ inputs }) => inputs.length === ids.length && ids.every((id) => inputs.includes(id)),
  )!;
  return second.u * Math.sqrt(term.share);
};
const comparison = effectiveDegreesOfFreedom(
  {
    u: Math.hypot(13 / Math.sqrt(5), 10 / coverageFactor(0.95, 5), 20 / 3),
    rows: [
      { input: '24', contribution: 13 / Math.sqrt(5) },
      { input: '5', contribution: 10 / coverageFactor(0.95, 5) },
      { input: '8', contribution: 20 / 3 },
    ],
  },
  Number,
);
const h1 = (clause: string) => ({ ...printed, source: `${gum}, ${clause}` });
const h1Again = { ...recomputed, source: independent('H.1') };
const endGauge = [
  figure('end gauge: length over 50 mm [nm]', evaluateAt(gauge).y[0], 838, 0.5, h1('H.1.4')),
  figure('end gauge: contribution of the standard [nm]', contribution('standard'), 25, 0.05, h1('table H.1')),
  figure('end gauge: contribution of the comparison [nm]', contribution('comparator'), 9.7, 0.05, h1('table H.1')),
  figure(
    'end gauge: contribution of the difference of expansion [nm]',
    contribution('expansion difference'),
    2.9,
    0.05,
    h1('table H.1'),
  ),
  figure(
    'end gauge: contribution of the difference of temperature [nm]',
    contribution('temperature difference'),
    16.6,
    0.1,
    { ...h1('table H.1'), why: 'a digit: 0.029 °C is rounded itself' },
  ),
  figure('end gauge: combined standard uncertainty [nm]', first.u, 32, 0.5, h1('H.1.5')),
  figure('end gauge: combined standard uncertainty to five digits [nm]', first.u, 31.711, 1e-3, h1Again),
  figure('end gauge: combined variance [nm²]', first.u ** 2, 1002, 5, {
    ...h1('H.1.5'),
    why: 'the contributions are rounded to 0.1 nm in it',
  }),
  figure('comparison of end gauges: standard uncertainty [nm]', Math.hypot(5.8, 3.9, 6.7), 9.7, 0.05, h1('H.1.3.2')),
  figure('comparison of end gauges: effective degrees of freedom [1]', comparison, 25.6, 0.05, h1('H.1.6')),
  figure('end gauge: effective degrees of freedom [1]', freedom, 16.7, 0.05, h1('H.1.6')),
  figure('end gauge: effective degrees of freedom to five digits [1]', freedom, 16.656, 1e-3, h1Again),
  figure('end gauge: coverage factor for 99 % [1]', coverageFactor(0.99, Math.floor(freedom)), 2.92, 5e-3, h1('H.1.6')),
  figure(
    'end gauge: expanded uncertainty for 99 % [nm]',
    coverageFactor(0.99, Math.floor(freedom)) * first.u,
    93,
    0.5,
    h1('H.1.6'),
  ),
  figure(
    'end gauge: second-order term of expansion difference and temperature [nm]',
    termOf('expansion difference', 'temperature'),
    11.7,
    0.2,
    { ...h1('H.1.7, from memory'), why: 'printed digits; the printed inputs give 11.89' },
  ),
  figure(
    'end gauge: second-order term of expansion and temperature difference [nm]',
    termOf('expansion', 'temperature difference'),
    1.7,
    0.05,
    h1('H.1.7, from memory'),
  ),
  figure('end gauge: standard uncertainty with terms of second order [nm]', second.u, 34, 0.5, {
    ...h1('H.1.7, from memory'),
  }),
  figure('end gauge: standard uncertainty to second order, four digits [nm]', second.u, 33.91, 0.01, h1Again),
];

// ——— G.4.1: relative uncertainties in %
const parts = [
  { input: '9', contribution: 0.25 },
  { input: '4', contribution: 0.57 },
  { input: '14', contribution: 0.82 },
];
const combined = Math.hypot(0.25, 0.57, 0.82);
const g4 = { ...printed, source: `${gum}, G.4.1, example` };
const several = [
  figure('three factors: combined relative uncertainty [%]', combined, 1.03, 5e-3, g4),
  figure(
    'three factors: effective degrees of freedom [1]',
    effectiveDegreesOfFreedom({ u: combined, rows: parts }, Number),
    19,
    0.05,
    g4,
  ),
  figure(
    'three factors: effective degrees of freedom to six digits [1]',
    effectiveDegreesOfFreedom({ u: combined, rows: parts }, Number),
    18.9987,
    1e-4,
    { ...recomputed, source: independent('G.4.1') },
  ),
  figure('coverage factor for 95 % and 19 degrees of freedom [1]', coverageFactor(0.95, 19), 2.09, 5e-3, g4),
  figure('three factors: expanded uncertainty for 95 % [%]', coverageFactor(0.95, 19) * combined, 2.2, 0.05, g4),
];

// ——— H.2: resistance and reactance from five sets of readings
const voltage = [5.007, 4.994, 5.005, 4.99, 4.999];
const current = [19.663, 19.639, 19.64, 19.685, 19.678].map((each) => each / 1000);
const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
const sets = [voltage, current, phase];
const means = sets.map((each) => scatterOf(each).mean);
const covariance = Float64Array.from({ length: 9 }, (_, k) => {
  const [a, b] = [Math.floor(k / 3), k % 3];
  return sets[a].reduce((sum, each, s) => sum + (each - means[a]) * (sets[b][s] - means[b]), 0) / 20;
});
const joint: Joint = {
  ids: ['V', 'I', 'phase'],
  mean: Float64Array.from(means),
  covariance,
  logarithmic: [false, false, false],
};
const impedance = exampleModel({
  inputs: {
    V: [means[0], normal(Math.sqrt(covariance[0]))],
    I: [means[1], normal(Math.sqrt(covariance[4]))],
    phase: [means[2], normal(Math.sqrt(covariance[8]))],
  },
  outputs: {
    R: ([v, i, phi]) => (v / i) * Math.cos(phi),
    X: ([v, i, phi]) => (v / i) * Math.sin(phi),
    Z: ([v, i]) => v / i,
    'R + X': ([v, i, phi]) => (v / i) * (Math.cos(phi) + Math.sin(phi)),
    'R + Z': ([v, i, phi]) => (v / i) * (Math.cos(phi) + 1),
    'X + Z': ([v, i, phi]) => (v / i) * (Math.sin(phi) + 1),
  },
});
const slopes = sensitivities(impedance);
const value = (id: string) => slopes.y0[impedance.outputs.findIndex((output) => output.id === id)];
const u = (id: string, by?: Joint) => budget(impedance, id, slopes, by)!.u;
const correlation = (a: string, b: string) =>
  (u(`${a} + ${b}`, joint) ** 2 - u(a, joint) ** 2 - u(b, joint) ** 2) / (2 * u(a, joint) * u(b, joint));
const perSet = (of: (v: number, i: number, phi: number) => number) =>
  scatterOf(voltage.map((v, k) => of(v, current[k], phase[k])));
const resistances = perSet((v, i, phi) => (v / i) * Math.cos(phi));
const reactances = perSet((v, i, phi) => (v / i) * Math.sin(phi));
const h2 = { ...printed, source: `${gum}, H.2, tables H.2 and H.3` };
const h2Memory = { ...printed, source: `${gum}, H.2, table H.3, from memory` };
const h2Again = { ...recomputed, source: independent('H.2') };
const measured = [
  figure('impedance: mean voltage [V]', means[0], 4.999, 5e-5, h2),
  figure('impedance: mean current [mA]', 1000 * means[1], 19.661, 5e-4, h2),
  figure('impedance: mean phase [rad]', means[2], 1.04446, 5e-6, h2),
  figure('impedance: uncertainty of the mean voltage [V]', Math.sqrt(covariance[0]), 0.0032, 5e-5, h2),
  figure(
    'impedance: correlation of voltage and phase [1]',
    covariance[2] / Math.sqrt(covariance[0] * covariance[8]),
    0.86,
    5e-3,
    h2,
  ),
  figure('resistance [Ω]', value('R'), 127.732, 5e-4, h2),
  figure('reactance [Ω]', value('X'), 219.847, 5e-4, h2Memory),
  figure('impedance [Ω]', value('Z'), 254.26, 5e-4, h2Memory),
  figure('resistance: standard uncertainty [Ω]', u('R', joint), 0.071, 5e-4, h2),
  figure('impedance: standard uncertainty [Ω]', u('Z', joint), 0.236, 5e-4, h2),
  figure('correlation of resistance and reactance [1]', correlation('R', 'X'), -0.588, 5e-4, h2Memory),
  figure('correlation of resistance and impedance [1]', correlation('R', 'Z'), -0.485, 5e-4, h2Memory),
  figure('correlation of reactance and impedance [1]', correlation('X', 'Z'), 0.993, 5.1e-4, h2Memory),
  figure('resistance, set by set [Ω]', resistances.mean, 127.73163, 5e-6, h2Again),
  figure(
    'resistance, set by set: standard uncertainty [Ω]',
    Math.sqrt(resistances.variance / 5),
    0.0712735,
    5e-7,
    h2Again,
  ),
  figure('reactance, set by set [Ω]', reactances.mean, 219.846895, 5e-6, h2Again),
  figure(
    'reactance, set by set: standard uncertainty [Ω]',
    Math.sqrt(reactances.variance / 5),
    0.295489,
    5e-6,
    h2Again,
  ),
  figure('resistance: standard uncertainty without the correlations [Ω]', u('R'), 0.1945, 5e-5, h2Again),
];

// ——— H.3: a thermometer's corrections along a line, nothing known before
const temperatures = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
const line = exampleModel({
  inputs: { y1: [-0.1, null], y2: [0.01, null] },
  outputs: Object.fromEntries([...temperatures, 30].map((at) => [`at ${at}`, ([y1, y2]) => y1 + y2 * (at - 20)])),
});
const lineThrough = (own: number) =>
  fitInputs({
    inputs: line.inputs,
    free: ['y1', 'y2'],
    observations: temperatures.map((at, k) => ({
      id: `${at}`,
      model: line,
      output: `at ${at}`,
      value: corrections[k],
      u: own,
    })),
  });
// Readings of equal but unknown uncertainty: first as 1, then as the scatter about the line.
const scatter = Math.sqrt(lineThrough(1).chiSquare / 9);
const fitted = lineThrough(scatter);
const [y1, y2] = fitted.inputs;
const afterwards = withPosterior(line, fitted);
const predicted = sensitivities(afterwards);
const h3 = { ...printed, source: `${gum}, H.3` };
const thermometer = [
  figure('line by a fit: scatter about it [°C]', scatter, 0.0035, 5e-5, { ...h3, source: `${h3.source}, from memory` }),
  figure('line by a fit: correction at 20 °C [°C]', y1.value, -0.1712, 5e-5, h3),
  figure('line by a fit: standard uncertainty at 20 °C [°C]', y1.u, 0.0029, 5e-5, h3),
  figure('line by a fit: slope [1]', y2.value, 0.00218, 5e-6, h3),
  figure('line by a fit: standard uncertainty of the slope [1]', y2.u, 0.00067, 5e-6, h3),
  figure('line by a fit: correlation [1]', fitted.joint.covariance[1] / y1.u / y2.u, -0.93, 5e-4, h3),
  figure('line by a fit: degrees of freedom [1]', fitted.degreesOfFreedom, 9, 1e-9, h3),
  figure('line by a fit: correction at 30 °C [°C]', predicted.y0[temperatures.length], -0.1494, 5e-5, h3),
  figure(
    'line by a fit: standard uncertainty at 30 °C [°C]',
    budget(afterwards, 'at 30', predicted, fitted.joint)!.u,
    0.0041,
    5e-5,
    h3,
  ),
];

// ——— H.4: an activity against a standard, and H.5, H.6
const activity = exampleModel({
  inputs: {
    standard: [0.1368, null],
    ofStandard: [5.0192, null],
    mass: [5.0571, null],
    count: [652.6, null],
    known: [206.09, null],
  },
  outputs: { activity: ([a, ms, mx, rx, rs]) => a * (ms / mx) * (rx / rs) },
});
const days = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
const withinDays = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
const day = scatterOf(days);
const pooled = withinDays.reduce((sum, each) => sum + each ** 2, 0) / 10;
const hardness = exampleModel({
  inputs: { scale: [64, normal(0.5)], indentations: [0, normal(0.2)], block: [0, normal(0.11)] },
  outputs: { hardness: ([scale, indentations, block]) => scale + indentations + block },
});
const others = [
  figure('activity of a sample against a standard [Bq/g]', evaluateAt(activity).y[0], 0.43, 5e-4, {
    ...printed,
    source: `${gum}, H.4`,
  }),
  figure('voltage standard over ten days: mean above 10 V [µV]', day.mean, 97, 0.5, {
    ...printed,
    source: `${gum}, H.5, table H.9`,
  }),
  figure('voltage standard: scatter of the days [µV]', Math.sqrt(day.variance), 57, 0.5, {
    ...printed,
    source: `${gum}, H.5, table H.9`,
  }),
  figure('voltage standard: scatter within a day [µV]', Math.sqrt(pooled), 85, 0.5, {
    ...printed,
    source: `${gum}, H.5, table H.9`,
  }),
  figure('voltage standard: F of the days [1]', (5 * day.variance) / pooled, 2.25, 0.02, {
    ...printed,
    why: 'the daily scatters are printed with two digits',
    source: `${gum}, H.5, equation (H.27)`,
  }),
  figure(
    'hardness: combined standard uncertainty [HRC]',
    budget(hardness, 'hardness', sensitivities(hardness))!.u,
    0.55,
    5e-3,
    {
      ...printed,
      source: `${gum}, H.6.4`,
    },
  ),
];

// ——— what must not come out
const scaled = exampleModel({
  inputs: { value: [1, null], scale: [1, normal(0.2)] },
  outputs: { reading: ([each, scale]) => each * scale },
});
const together = fitInputs({
  inputs: scaled.inputs,
  free: ['value', 'scale'],
  observations: [
    [1.5, 0.15],
    [1, 0.1],
  ].map(([reading, own], k) => ({ id: `${k}`, model: scaled, output: 'reading', value: reading, u: own })),
});
const traps: Trap[] = [
  {
    what: 'mean of 1.5 and 1.0, each known to 10 %, with a scale of 20 % in common [1]',
    computed: together.inputs[0].value,
    published: 0.88,
    tolerance: 0.12,
    why: 'below both readings',
    source: 'R. W. Peelle (1987), from memory',
    reason:
      'a covariance made from the readings themselves gives the lower one less scale error, and a mean outside both',
  },
  {
    what: 'end gauge: standard uncertainty when products of inputs count [nm]',
    computed: second.u,
    published: 32,
    tolerance: 1,
    why: 'half the difference',
    source: `${gum}, H.1.5`,
    reason: 'two inputs of value zero have no slope, and their product has an uncertainty all the same (H.1.7)',
  },
];

export const topic: Topic = {
  title: 'Uncertainty of results',
  field: 'metrology',
  figures: [...endGauge, ...several, ...measured, ...thermometer, ...others],
  traps,
  unchecked: [
    'GUM H.5: estimates of the variance between days from the single readings, which the table does not print',
  ],
};
