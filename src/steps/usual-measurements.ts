import type { KindName } from '../quantity/kind.ts';

/** A way to measure a number of one kind on a bench, with what it usually attains. */
export interface UsualMeasurement {
  readonly by: string;
  /** Standard uncertainty: a share of the value [1] and a fixed part [SI], added as squares. */
  readonly share: number;
  readonly fixed: number;
  /** Time it takes [h]. */
  readonly hours: number;
}

/**
 * What a small bench attains with care, by kind of quantity. Common practice, no source: a study overrides each with `advice.measurements`.
 * A kind that isn't here can't be measured with a multimeter, an oscilloscope, thermocouples and a known load.
 */
export const usualMeasurements: Readonly<Partial<Record<KindName, UsualMeasurement>>> = {
  resistance: { by: 'four-wire, with a known current', share: 0.005, fixed: 5e-6, hours: 0.5 },
  voltage: { by: 'multimeter', share: 0.002, fixed: 5e-6, hours: 0.25 },
  current: { by: 'across a known resistor', share: 0.01, fixed: 0.005, hours: 0.5 },
  power: { by: 'voltage and current on its feed', share: 0.02, fixed: 0.05, hours: 1 },
  temperature: { by: 'thermometer beside it', share: 0, fixed: 0.3, hours: 0.25 },
  'temperature-difference': { by: 'two thermocouples', share: 0, fixed: 0.5, hours: 0.5 },
  'thermal-resistance': { by: 'two thermocouples across it at a known power', share: 0.06, fixed: 0, hours: 3 },
  'film-coefficient': { by: 'a heated surface of known power in the same air', share: 0.08, fixed: 0, hours: 4 },
  'thermal-conductivity': { by: 'a sample between two plates at a known power', share: 0.08, fixed: 0, hours: 4 },
  'area-thermal-resistance': { by: 'a sample between two plates at a known power', share: 0.08, fixed: 0, hours: 4 },
  length: { by: 'calliper', share: 0, fixed: 2e-5, hours: 0.25 },
  area: { by: 'calliper', share: 0.01, fixed: 0, hours: 0.25 },
  time: { by: 'oscilloscope', share: 0.05, fixed: 5e-10, hours: 1 },
  frequency: { by: 'oscilloscope', share: 0.005, fixed: 0, hours: 0.5 },
  inductance: { by: 'bridge, the part taken off', share: 0.03, fixed: 0, hours: 2 },
  capacitance: { by: 'bridge, the part taken off', share: 0.03, fixed: 0, hours: 2 },
  ratio: { by: 'what goes in and what comes out, read together', share: 0.01, fixed: 0.002, hours: 1 },
  'temperature-coefficient': { by: 'four-wire, cold and warm', share: 0.1, fixed: 0, hours: 2 },
  'volume-flow': { by: 'anemometer across the intake', share: 0.08, fixed: 0, hours: 1 },
  force: { by: 'spring balance', share: 0.05, fixed: 0, hours: 0.5 },
  pressure: { by: 'pressure-sensitive film', share: 0.1, fixed: 0, hours: 2 },
};

/** Time of a run at one step until everything is steady, with what is there to read it [h]. Common practice, no source. */
export const RUN_HOURS = 1;

/** Noise that a steady value keeps, as a part of its instrument's shared uncertainty, where the study states no repeatability [1]. Common practice, no source. */
export const STEADY_NOISE = 0.2;

/** A thermocouple glued to a place of the board: its standard uncertainty [K] and the time to fix it [h]. Common practice, no source. */
export const gluedThermocouple = { u: 1, hours: 0.5 };

/** An instrument compared with a better one: what is left of its uncertainty [1], and the time [h]. Common practice, no source. */
export const calibration = { left: 1 / 3, hours: 2 };
