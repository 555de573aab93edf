import { findRoot } from '../../numeric/root.ts';

/** Coefficients of industrial platinum [1/°C, 1/°C², 1/°C⁴]. Source: IEC 60751:2008. */
const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;

/**
 * Resistance of an industrial platinum resistor [Ω]; null outside −200 °C to 850 °C.
 *
 * R = R0·(1 + A·t + B·t²), below 0 °C R = R0·(1 + A·t + B·t² + C·(t − 100 °C)·t³)
 *
 * R0   resistance at 0 °C, 100 Ω for a Pt100 [Ω]
 * t    temperature, T − 273.15 K [°C]
 * A B C  3.9083e-3 /°C, −5.775e-7 /°C², −4.183e-12 /°C⁴
 * Valid from −200 °C to 850 °C.
 * Source: IEC 60751:2008, Callendar–Van Dusen equation.
 */
export function rtdResistance(resistanceAtZero: number, temperature: number): number | null {
  const celsius = temperature - 273.15;
  return celsius >= -200 - 1e-9 && celsius <= 850 + 1e-9 ? resistanceAtZero * relativeResistance(celsius) : null;
}

/**
 * Temperature of an industrial platinum resistor [K]; null outside −200 °C to 850 °C.
 *
 * From 0 °C t = (−A + √(A² − 4·B·(1 − R/R0)))/(2·B); below, the resistance equation is solved by Brent's method, to 1e-9 K.
 *
 * R, R0   resistance, and resistance at 0 °C [Ω]
 * Valid from −200 °C to 850 °C, to the rounding of the printed table (0.005 Ω for 100 Ω) beyond each end.
 * Source: IEC 60751:2008.
 */
export function rtdTemperature(resistanceAtZero: number, resistance: number): number | null {
  const relative = resistance / resistanceAtZero;
  if (!(relative >= relativeResistance(-200) - 5e-5 && relative <= relativeResistance(850) + 5e-5)) return null;
  const celsius =
    relative < 1
      ? findRoot((t) => relativeResistance(t) - relative, -201, 0).x
      : (-A + Math.sqrt(A * A - 4 * B * (1 - relative))) / (2 * B);
  return celsius + 273.15;
}

/** R/R0 [1]. */
function relativeResistance(celsius: number): number {
  const positive = 1 + A * celsius + B * celsius ** 2;
  return celsius >= 0 ? positive : positive + C * (celsius - 100) * celsius ** 3;
}
