import type { ThermocoupleType } from './thermocouple-type.ts';

/**
 * Type N: nickel-chromium-silicon against nickel-silicon.
 *
 * Direct coefficients [mV/°C^i] from lowest order, inverse coefficients [°C/mV^i] from lowest order.
 * Source: NIST Monograph 175 (1993), reference and inverse functions for type N; IEC 60584-1 has the same reference functions.
 */
export const typeN: ThermocoupleType = {
  letter: 'N',
  title: 'N (nickel-chromium-silicon / nickel-silicon)',
  lowest: -270,
  direct: [
    {
      to: 0,
      coefficients: [
        0, 0.026159105962, 1.0957484228e-5, -9.3841111554e-8, -4.6412039759e-11, -2.6303357716e-12, -2.2653438003e-14,
        -7.6089300791e-17, -9.3419667835e-20,
      ],
    },
    {
      to: 1300,
      coefficients: [
        0, 0.025929394601, 1.571014188e-5, 4.3825627237e-8, -2.5261169794e-10, 6.4311819339e-13, -1.0063471519e-15,
        9.9745338992e-19, -6.0863245607e-22, 2.0849229339e-25, -3.0682196151e-29,
      ],
    },
  ],
  lowestInverse: -3.99,
  inverse: [
    {
      to: 0,
      error: { low: -0.02, high: 0.03 },
      coefficients: [
        0, 38.436847, 1.1010485, 5.2229312, 7.2060525, 5.8488586, 2.7754916, 0.77075166, 0.11582665, 0.0073138868,
      ],
    },
    {
      to: 20.613,
      error: { low: -0.02, high: 0.03 },
      coefficients: [0, 38.6896, -1.08267, 0.0470205, -2.12169e-6, -0.000117272, 5.3928e-6, -7.98156e-8],
    },
    {
      to: 47.513,
      error: { low: -0.04, high: 0.02 },
      coefficients: [19.72485, 33.00943, -0.3915159, 0.009855391, -0.0001274371, 7.767022e-7],
    },
  ],
};
