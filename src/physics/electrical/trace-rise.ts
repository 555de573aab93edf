const mil = 25.4e-6;

/** One fit of a trace's rise: ΔT = scale·I^current·w^width·t^thickness, in ampere, mil and kelvin. */
export interface TraceFit {
  readonly scale: number;
  readonly current: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * Fits to the charts of IPC-2152. Inner layers by copper weight.
 * Source: D. Brooks and J. Adam, Trace Currents and Temperatures Revisited, 2015, table 3-1.
 */
export const traceFits = {
  outer: { scale: 215.3, current: 2, width: -1.15, thickness: -1 },
  'inner, half ounce': { scale: 120, current: 2, width: -1.1, thickness: -1.52 },
  'inner, one ounce': { scale: 200, current: 1.9, width: -1.1, thickness: -1.52 },
  'inner, two ounces': { scale: 300, current: 2, width: -1.15, thickness: -1.52 },
  'inner, three ounces': { scale: 262.5, current: 1.9, width: -1.15, thickness: -1.52 },
} satisfies Record<string, TraceFit>;

/**
 * Rise of a copper trace over the board around it [K].
 *
 * ΔT = K·I^a·w^b·t^c, w and t in mils
 *
 * I     current [A]
 * w, t  width and thickness of the copper [m]
 * K, a, b, c  constants of the fit
 * Valid for one trace alone on a board without planes, in still air; planes near it make it cooler.
 * Source: D. Brooks and J. Adam, Trace Currents and Temperatures Revisited, 2015, fits to the charts of IPC-2152.
 */
export function traceRise(current: number, width: number, thickness: number, fit: TraceFit): number {
  return fit.scale * current ** fit.current * (width / mil) ** fit.width * (thickness / mil) ** fit.thickness;
}

/**
 * Current that warms a copper trace by a given rise [A].
 *
 * I = (ΔT/(K·w^b·t^c))^(1/a)
 *
 * Symbols, range and source as for its rise.
 */
export function traceRiseCurrent(rise: number, width: number, thickness: number, fit: TraceFit): number {
  return (rise / traceRise(1, width, thickness, fit)) ** (1 / fit.current);
}
