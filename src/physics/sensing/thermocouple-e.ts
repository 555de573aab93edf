import type { ThermocoupleType } from './thermocouple-type.ts';

/**
 * Type E: nickel-chromium against copper-nickel.
 *
 * Direct coefficients [mV/°C^i] from lowest order, inverse coefficients [°C/mV^i] from lowest order.
 * Source: NIST Monograph 175 (1993), reference and inverse functions for type E; IEC 60584-1 has the same reference functions.
 */
export const typeE: ThermocoupleType = {
  letter: 'E',
  title: 'E (nickel-chromium / copper-nickel)',
  lowest: -270,
  direct: [
    {
      to: 0,
      coefficients: [
        0, 0.058665508708, 4.5410977124e-5, -7.7998048686e-7, -2.5800160843e-8, -5.9452583057e-10, -9.3214058667e-12,
        -1.0287605534e-13, -8.0370123621e-16, -4.3979497391e-18, -1.6414776355e-20, -3.9673619516e-23,
        -5.5827328721e-26, -3.4657842013e-29,
      ],
    },
    {
      to: 1000,
      coefficients: [
        0, 0.05866550871, 4.5032275582e-5, 2.8908407212e-8, -3.3056896652e-10, 6.502440327e-13, -1.9197495504e-16,
        -1.2536600497e-18, 2.1489217569e-21, -1.4388041782e-24, 3.5960899481e-28,
      ],
    },
  ],
  lowestInverse: -8.825,
  inverse: [
    {
      to: 0,
      error: { low: -0.01, high: 0.03 },
      coefficients: [
        0, 16.977288, -0.4351497, -0.15859697, -0.092502871, -0.026084314, -0.0041360199, -0.0003403403, -1.156489e-5,
      ],
    },
    {
      to: 76.373,
      error: { low: -0.02, high: 0.02 },
      coefficients: [
        0, 17.057035, -0.23301759, 0.0065435585, -7.3562749e-5, -1.7896001e-6, 8.4036165e-8, -1.3735879e-9,
        1.0629823e-11, -3.2447087e-14,
      ],
    },
  ],
};
