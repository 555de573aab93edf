const mil = 25.4e-6;

/** Coefficient of a trace on an outer layer, in still air [A/(K^0.44·mil^1.45)]. Source: IPC-2221, as fitted to its chart. */
export const outerTrace = 0.048;
/** Coefficient of a trace on an inner layer [A/(K^0.44·mil^1.45)]. Source: IPC-2221, as fitted to its chart. */
export const innerTrace = 0.024;

/**
 * Current that warms a copper trace by a given rise [A].
 *
 * I = k·ΔT^0.44·A^0.725, A = w·t in square mils
 *
 * w, t  width and thickness of the copper [m]
 * ΔT    rise of the trace over the board around it [K]
 * k     0.048 on an outer layer, 0.024 on an inner one
 * Valid up to 35 A outside and 17.5 A inside, 100 K, 400 mil; one trace alone, without planes near it.
 * Source: IPC-2221, chart of conductor sizes, as the fit that is in general use.
 */
export function traceCurrent(width: number, thickness: number, rise: number, layer: number): number {
  return layer * rise ** 0.44 * ((width * thickness) / (mil * mil)) ** 0.725;
}

/**
 * Width of a copper trace that a current warms by a given rise [m].
 *
 * w = (I/(k·ΔT^0.44))^(1/0.725)/t, in mils
 *
 * Symbols, range and source as for its current.
 */
export function traceWidth(current: number, thickness: number, rise: number, layer: number): number {
  return ((current / (layer * rise ** 0.44)) ** (1 / 0.725) * mil * mil) / thickness;
}
