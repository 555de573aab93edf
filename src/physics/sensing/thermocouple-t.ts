import type { ThermocoupleType } from './thermocouple-type.ts';

/**
 * Type T: copper against copper-nickel.
 *
 * Direct coefficients [mV/°C^i] from lowest order, inverse coefficients [°C/mV^i] from lowest order.
 * Source: NIST Monograph 175 (1993), reference and inverse functions for type T; IEC 60584-1 has the same reference functions.
 */
export const typeT: ThermocoupleType = {
  letter: 'T',
  title: 'T (copper / copper-nickel)',
  lowest: -270,
  direct: [
    {
      to: 0,
      coefficients: [
        0, 0.038748106364, 4.4194434347e-5, 1.1844323105e-7, 2.0032973554e-8, 9.0138019559e-10, 2.2651156593e-11,
        3.6071154205e-13, 3.8493939883e-15, 2.8213521925e-17, 1.4251594779e-19, 4.8768662286e-22, 1.079553927e-24,
        1.3945027062e-27, 7.9795153927e-31,
      ],
    },
    {
      to: 400,
      coefficients: [
        0, 0.038748106364, 3.329222788e-5, 2.0618243404e-7, -2.1882256846e-9, 1.0996880928e-11, -3.0815758772e-14,
        4.547913529e-17, -2.7512901673e-20,
      ],
    },
  ],
  lowestInverse: -5.603,
  inverse: [
    {
      to: 0,
      error: { low: -0.02, high: 0.04 },
      coefficients: [0, 25.949192, -0.21316967, 0.79018692, 0.42527777, 0.13304473, 0.020241446, 0.0012668171],
    },
    {
      to: 20.872,
      error: { low: -0.03, high: 0.03 },
      coefficients: [0, 25.928, -0.7602961, 0.04637791, -0.002165394, 6.048144e-5, -7.293422e-7],
    },
  ],
};
