/**
 * Temperature coefficient of a resistor with another conductor in series, such as terminals of copper [1/K].
 *
 * α = (1 − s)·α_R + s·α_C
 *
 * s    share of the other conductor in the whole resistance [1], 0 to 1
 * α_R  coefficient of the resistor itself [1/K]
 * α_C  coefficient of the other conductor [1/K]; annealed copper 3.93e-3
 * Valid where both are at the same temperature.
 * Source: sum of two straight lines; copper after IEC 60028:1925.
 */
export function mixedCoefficient(share: number, resistorCoefficient: number, otherCoefficient: number): number {
  return (1 - share) * resistorCoefficient + share * otherCoefficient;
}
