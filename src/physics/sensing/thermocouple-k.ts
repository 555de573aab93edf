import type { ThermocoupleType } from './thermocouple-type.ts';

/**
 * Type K: nickel-chromium against nickel-aluminium.
 *
 * Direct coefficients [mV/°C^i] from lowest order, inverse coefficients [°C/mV^i] from lowest order.
 * Source: NIST Monograph 175 (1993), reference and inverse functions for type K; IEC 60584-1 has the same reference functions.
 */
export const typeK: ThermocoupleType = {
  letter: 'K',
  title: 'K (nickel-chromium / nickel-aluminium)',
  lowest: -270,
  direct: [
    {
      to: 0,
      coefficients: [
        0, 0.039450128025, 2.3622373598e-5, -3.2858906784e-7, -4.9904828777e-9, -6.7509059173e-11, -5.7410327428e-13,
        -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23,
      ],
    },
    {
      to: 1372,
      coefficients: [
        -0.017600413686, 0.038921204975, 1.8558770032e-5, -9.9457592874e-8, 3.1840945719e-10, -5.6072844889e-13,
        5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26,
      ],
      bump: { height: 0.1185976, rate: -0.0001183432, centre: 126.9686 },
    },
  ],
  lowestInverse: -5.891,
  inverse: [
    {
      to: 0,
      error: { low: -0.02, high: 0.04 },
      coefficients: [
        0, 25.173462, -1.1662878, -1.0833638, -0.8977354, -0.37342377, -0.086632643, -0.010450598, -0.00051920577,
      ],
    },
    {
      to: 20.644,
      error: { low: -0.05, high: 0.04 },
      coefficients: [
        0, 25.08355, 0.07860106, -0.2503131, 0.0831527, -0.01228034, 0.0009804036, -4.41303e-5, 1.057734e-6,
        -1.052755e-8,
      ],
    },
    {
      to: 54.886,
      error: { low: -0.05, high: 0.06 },
      coefficients: [-131.8058, 48.30222, -1.646031, 0.05464731, -0.0009650715, 8.802193e-6, -3.11081e-8],
    },
  ],
};
