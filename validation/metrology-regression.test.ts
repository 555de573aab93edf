import { describe, expect, test } from 'vitest';
import { exampleModel } from '../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../src/metrology/fit.ts';

// NIST Statistical Reference Datasets, nonlinear regression (https://www.itl.nist.gov/div898/strd/nls/nls_main.shtml): data and certified
// values to 11 digits. Nothing is known beforehand, so every parameter is free without an uncertainty, and the uncertainties of the
// parameters are scaled by the residual standard deviation afterwards, as certified.
interface Certified {
  readonly name: string;
  readonly curve: (x: number, b: Float64Array) => number;
  readonly starts: readonly (readonly number[])[];
  readonly parameters: readonly number[];
  readonly deviations: readonly number[];
  readonly residualSquares: number;
  readonly data: readonly (readonly [x: number, y: number])[];
}

const certified: readonly Certified[] = [
  {
    name: 'Misra1a',
    curve: (x, [b1, b2]) => b1 * (1 - Math.exp(-b2 * x)),
    starts: [
      [500, 0.0001],
      [250, 0.0005],
    ],
    parameters: [238.94212918, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    residualSquares: 0.12455138894,
    data: [
      [77.6, 10.07],
      [114.9, 14.73],
      [141.1, 17.94],
      [190.8, 23.93],
      [239.9, 29.61],
      [289, 35.18],
      [332.8, 40.02],
      [378.4, 44.82],
      [434.8, 50.76],
      [477.3, 55.05],
      [536.8, 61.01],
      [593.1, 66.4],
      [689.1, 75.47],
      [760, 81.78],
    ],
  },
  {
    name: 'Eckerle4',
    curve: (x, [b1, b2, b3]) => (b1 / b2) * Math.exp(-0.5 * ((x - b3) / b2) ** 2),
    starts: [
      [1, 10, 500],
      [1.5, 5, 450],
    ],
    parameters: [1.5543827178, 4.0888321754, 451.54121844],
    deviations: [1.5408051163e-2, 4.6803020753e-2, 4.6800518816e-2],
    residualSquares: 1.4635887487e-3,
    data: [
      [400, 0.0001575],
      [405, 0.0001699],
      [410, 0.000235],
      [415, 0.0003102],
      [420, 0.0004917],
      [425, 0.000871],
      [430, 0.0017418],
      [435, 0.00464],
      [436.5, 0.0065895],
      [438, 0.0097302],
      [439.5, 0.0149002],
      [441, 0.023731],
      [442.5, 0.0401683],
      [444, 0.0712559],
      [445.5, 0.1264458],
      [447, 0.2073413],
      [448.5, 0.2902366],
      [450, 0.3445623],
      [451.5, 0.3698049],
      [453, 0.3668534],
      [454.5, 0.3106727],
      [456, 0.2078154],
      [457.5, 0.1164354],
      [459, 0.0616764],
      [460.5, 0.03372],
      [462, 0.0194023],
      [463.5, 0.0117831],
      [465, 0.0074357],
      [470, 0.0022732],
      [475, 0.00088],
      [480, 0.0004579],
      [485, 0.0002345],
      [490, 0.0001586],
      [495, 0.0001143],
      [500, 7.1e-5],
    ],
  },
  {
    name: 'Chwirut2',
    curve: (x, [b1, b2, b3]) => Math.exp(-b1 * x) / (b2 + b3 * x),
    starts: [
      [0.1, 0.01, 0.02],
      [0.15, 0.008, 0.01],
    ],
    parameters: [0.16657666537, 5.1653291286e-3, 1.2150007096e-2],
    deviations: [3.830328681e-2, 6.6621605126e-4, 1.5304234767e-3],
    residualSquares: 513.04802941,
    data: [
      [0.5, 92.9],
      [1, 57.1],
      [1.75, 31.05],
      [3.75, 11.5875],
      [5.75, 8.025],
      [0.875, 63.6],
      [2.25, 21.4],
      [3.25, 14.25],
      [5.25, 8.475],
      [0.75, 63.8],
      [1.75, 26.8],
      [2.75, 16.4625],
      [4.75, 7.125],
      [0.625, 67.3],
      [1.25, 41.0],
      [2.25, 21.15],
      [4.25, 8.175],
      [0.5, 81.5],
      [3, 13.12],
      [0.75, 59.9],
      [3, 14.62],
      [1.5, 32.9],
      [6, 5.44],
      [3, 12.56],
      [6, 5.44],
      [1.5, 32.0],
      [3, 13.95],
      [0.5, 75.8],
      [2, 20.0],
      [4, 10.42],
      [0.75, 59.5],
      [2, 21.67],
      [5, 8.55],
      [0.75, 62.0],
      [2.25, 20.2],
      [3.75, 7.76],
      [5.75, 3.75],
      [3, 11.81],
      [0.75, 54.7],
      [2.5, 23.7],
      [4, 11.55],
      [0.75, 61.3],
      [2.5, 17.7],
      [4, 8.74],
      [0.75, 59.2],
      [2.5, 16.3],
      [4, 8.62],
      [0.5, 81.0],
      [6, 4.87],
      [3, 14.62],
      [0.5, 81.7],
      [2.75, 17.17],
      [0.5, 81.3],
      [1.75, 28.9],
    ],
  },
  {
    name: 'MGH09',
    curve: (x, [b1, b2, b3, b4]) => (b1 * (x * x + b2 * x)) / (x * x + b3 * x + b4),
    starts: [
      [25, 39, 41.5, 39],
      [0.25, 0.39, 0.415, 0.39],
    ],
    parameters: [0.19280693458, 0.19128232873, 0.12305650693, 0.13606233068],
    deviations: [1.1435312227e-2, 0.19633220911, 8.0842031232e-2, 9.0025542308e-2],
    residualSquares: 3.0750560385e-4,
    data: [
      [4, 0.1957],
      [2, 0.1947],
      [1, 0.1735],
      [0.5, 0.16],
      [0.25, 0.0844],
      [0.167, 0.0627],
      [0.125, 0.0456],
      [0.1, 0.0342],
      [0.0833, 0.0323],
      [0.0714, 0.0235],
      [0.0625, 0.0246],
    ],
  },
];

describe.each(certified)('$name', ({ curve, starts, parameters, deviations, residualSquares, data }) => {
  test.each(starts.map((start) => ({ start })))('from $start', ({ start }) => {
    const model = exampleModel({
      inputs: Object.fromEntries(start.map((value, k) => [`b${k + 1}`, [value, null]])),
      outputs: Object.fromEntries(data.map(([x], k) => [`y${k}`, (b) => curve(x, b)])),
    });
    const size = Math.sqrt(residualSquares / data.length);
    const result = fitInputs({
      inputs: model.inputs,
      free: model.inputs.map((input) => input.id),
      observations: data.map(([, value], k) => ({ id: `${k}`, model, output: `y${k}`, value, u: size })),
      maxPasses: 500,
    });
    expect(result.ending).toBe('converged');
    expect(Math.abs((result.chiSquare * size ** 2) / residualSquares - 1)).toBeLessThan(1e-8);
    const scale = Math.sqrt(result.chiSquare / (data.length - parameters.length));
    result.inputs.forEach(({ value, u }, k) => {
      // The fit ends with a step below 1e-5 of a parameter's uncertainty.
      expect(Math.abs(value - parameters[k]) / deviations[k]).toBeLessThan(1e-5);
      expect(Math.abs((u * scale) / deviations[k] - 1)).toBeLessThan(1e-4);
    });
  });
});
