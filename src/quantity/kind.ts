/** Exponents of kilogram, metre, second, ampere and kelvin. */
export type Dimension = readonly [kg: number, m: number, s: number, A: number, K: number];

/** A kind of quantity: what it is called in a message, its dimension, its SI unit and an example of how it is written. */
export interface Kind {
  /** With its article: "an electrical resistance". */
  readonly title: string;
  readonly dimension: Dimension;
  readonly siUnit: string;
  readonly example: string;
}

function kind(title: string, dimension: Dimension, siUnit: string, example: string): Kind {
  return { title, dimension, siUnit, example };
}

/** The kinds of quantity a study or a formula speaks of. */
export const kinds = {
  ratio: kind('a ratio', [0, 0, 0, 0, 0], '1', '0.9 or 90 %'),
  count: kind('a count', [0, 0, 0, 0, 0], '1', '6'),
  resistance: kind('an electrical resistance', [1, 2, -3, -2, 0], 'Ω', '5 mΩ ± 1 %'),
  voltage: kind('a voltage', [1, 2, -3, -1, 0], 'V', '19.5 V ± 2 %'),
  current: kind('a current', [0, 0, 0, 1, 0], 'A', '6 A'),
  power: kind('a power', [1, 2, -3, 0, 0], 'W', '54 W'),
  energy: kind('an energy', [1, 2, -2, 0, 0], 'J', '120 kJ'),
  charge: kind('an electric charge', [0, 0, 1, 1, 0], 'C', '12 nC'),
  temperature: kind('a temperature', [0, 0, 0, 0, 1], 'K', '25 degC ± 2 K'),
  'temperature-difference': kind('a temperature difference', [0, 0, 0, 0, 1], 'K', '30 K'),
  'thermal-resistance': kind('a thermal resistance', [-1, -2, 3, 0, 1], 'K/W', '0.5 K/W ± 10 %'),
  'thermal-conductance': kind('a thermal conductance', [1, 2, -3, 0, -1], 'W/K', '2 W/K'),
  'thermal-conductivity': kind('a thermal conductivity', [1, 1, -3, 0, -1], 'W/(m·K)', '8 W/(m·K) ± 10 %'),
  'area-thermal-resistance': kind('a thermal resistance times area', [-1, 0, 3, 0, 1], 'K·m²/W', '10 K·mm²/W'),
  'film-coefficient': kind('a film coefficient', [1, 0, -3, 0, -1], 'W/(m²·K)', '40 W/(m²·K) ~ 25 %'),
  'heat-capacity': kind('a heat capacity', [1, 2, -2, 0, -1], 'J/K', '15 J/K'),
  'specific-heat': kind('a specific heat', [0, 2, -2, 0, -1], 'J/(kg·K)', '700 J/(kg·K)'),
  'specific-energy': kind('an energy per mass', [0, 2, -2, 0, 0], 'J/kg', '2.26 MJ/kg'),
  'temperature-coefficient': kind('a temperature coefficient', [0, 0, 0, 0, -1], '1/K', '50 ppm/K'),
  'voltage-temperature-coefficient': kind('a voltage per kelvin', [1, 2, -3, -1, -1], 'V/K', '8 mV/K'),
  length: kind('a length', [0, 1, 0, 0, 0], 'm', '0.5 mm'),
  area: kind('an area', [0, 2, 0, 0, 0], 'm²', '180 mm²'),
  volume: kind('a volume', [0, 3, 0, 0, 0], 'm³', '2 mL'),
  time: kind('a time', [0, 0, 1, 0, 0], 's', '12 ns'),
  frequency: kind('a frequency', [0, 0, -1, 0, 0], 'Hz', '600 kHz'),
  inductance: kind('an inductance', [1, 2, -2, -2, 0], 'H', '220 nH ± 20 %'),
  capacitance: kind('a capacitance', [-1, -2, 4, 2, 0], 'F', '22 uF ± 20 %'),
  mass: kind('a mass', [1, 0, 0, 0, 0], 'kg', '12 g'),
  density: kind('a density', [1, -3, 0, 0, 0], 'kg/m³', '8.9 g/cm³'),
  speed: kind('a speed', [0, 1, -1, 0, 0], 'm/s', '3 m/s'),
  force: kind('a force', [1, 1, -2, 0, 0], 'N', '40 N'),
  stiffness: kind('a stiffness', [1, 0, -2, 0, 0], 'N/m', '20 N/mm'),
  'surface-tension': kind('a surface tension', [1, 0, -2, 0, 0], 'N/m', '72 mN/m'),
  torque: kind('a torque', [1, 2, -2, 0, 0], 'N·m', '6 lbf·in'),
  pressure: kind('a pressure', [1, -1, -2, 0, 0], 'Pa', '300 kPa'),
  diffusivity: kind('a kinematic viscosity or a diffusivity', [0, 2, -1, 0, 0], 'm²/s', '16 mm²/s'),
  'volume-flow': kind('a volume flow', [0, 3, -1, 0, 0], 'm³/s', '10 CFM'),
  'mass-flow': kind('a mass flow', [1, 0, -1, 0, 0], 'kg/s', '5 g/s'),
  angle: kind('an angle', [0, 0, 0, 0, 0], 'rad', '30 deg'),
  'current-density': kind('a current density', [0, -2, 0, 1, 0], 'A/m²', '3 A/dm²'),
  'electrochemical-equivalent': kind('a mass per charge', [1, 0, -1, -1, 0], 'kg/C', '1.095 g/(A·h)'),
} satisfies Record<string, Kind>;

export type KindName = keyof typeof kinds;
