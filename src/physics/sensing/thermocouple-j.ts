import type { ThermocoupleType } from './thermocouple-type.ts';

/**
 * Type J: iron against copper-nickel.
 *
 * Direct coefficients [mV/°C^i] from lowest order, inverse coefficients [°C/mV^i] from lowest order.
 * Source: NIST Monograph 175 (1993), reference and inverse functions for type J; IEC 60584-1 has the same reference functions.
 */
export const typeJ: ThermocoupleType = {
  letter: 'J',
  title: 'J (iron / copper-nickel)',
  lowest: -210,
  direct: [
    {
      to: 760,
      coefficients: [
        0, 0.050381187815, 3.047583693e-5, -8.568106572e-8, 1.3228195295e-10, -1.7052958337e-13, 2.0948090697e-16,
        -1.2538395336e-19, 1.5631725697e-23,
      ],
    },
    {
      to: 1200,
      coefficients: [
        296.45625681, -1.4976127786, 0.0031787103924, -3.1847686701e-6, 1.5720819004e-9, -3.0691369056e-13,
      ],
    },
  ],
  lowestInverse: -8.095,
  inverse: [
    {
      to: 0,
      error: { low: -0.05, high: 0.03 },
      coefficients: [
        0, 19.528268, -1.2286185, -1.0752178, -0.59086933, -0.17256713, -0.028131513, -0.002396337, -8.3823321e-5,
      ],
    },
    {
      to: 42.919,
      error: { low: -0.04, high: 0.04 },
      coefficients: [0, 19.78425, -0.2001204, 0.01036969, -0.0002549687, 3.585153e-6, -5.344285e-8, 5.09989e-10],
    },
    {
      to: 69.553,
      error: { low: -0.04, high: 0.03 },
      coefficients: [-3113.58187, 300.543684, -9.9477323, 0.17027663, -0.00143033468, 4.73886084e-6],
    },
  ],
};
