const inch = 0.0254;
const squareMil = 25.4e-6 * 25.4e-6;

/**
 * Coefficients of fusing currents [A/in^1.5].
 * Source: W. H. Preece, Proc. Royal Society 36 (1884) and 44 (1888), as reprinted in wire tables.
 */
export const fusingCoefficients = {
  copper: 10_244,
  aluminium: 7585,
  platinum: 5172,
  iron: 3148,
  tin: 1642,
  lead: 1379,
} as const;

/**
 * Direct current that in the end melts a bare straight wire in free air [A].
 *
 * I = a·d^1.5, d in inches
 *
 * a  coefficient of the metal [A/in^1.5]
 * d  diameter [m]
 * Valid for wires long against their diameter, after seconds to minutes. Far above any current a wire may carry: a bound, no rating.
 * Source: W. H. Preece, Proc. Royal Society 36 (1884) 464.
 */
export function slowFusingCurrent(diameter: number, coefficient: number): number {
  return coefficient * (diameter / inch) ** 1.5;
}

/**
 * Diameter of the wire that a direct current in the end melts [m].
 *
 * d = (I/a)^(2/3), in inches
 *
 * Symbols, range and source as for the current.
 */
export function slowFusingDiameter(current: number, coefficient: number): number {
  return (current / coefficient) ** (2 / 3) * inch;
}

/**
 * Current that melts a copper conductor within a short time, no heat leaving it [A].
 *
 * I = A·√(log10(1 + (T_m − T)/(234 + T))/(33·t)), A in circular mils, temperatures in °C
 *
 * A    section [m²]
 * t    time [s], more than zero
 * T    temperature at the start [K]
 * T_m  melting point of copper, 1083 °C
 * Valid up to about 10 s; after that heat flows off and the true current is higher.
 * Source: I. M. Onderdonk's equation, form as in D. Brooks, Fusing Current, Printed Circuit Design (constants from memory).
 */
export function fastFusingCurrent(section: number, time: number, temperature: number): number {
  const celsius = temperature - 273.15;
  const circularMils = section / (squareMil * (Math.PI / 4));
  return circularMils * Math.sqrt(Math.log10(1 + (1083 - celsius) / (234 + celsius)) / (33 * time));
}
