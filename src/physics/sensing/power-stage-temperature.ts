/** How a power stage writes its junction temperature as a voltage. */
export interface TemperatureOutput {
  /** Voltage at 0 °C [V]. */
  readonly offset: number;
  /** Voltage per kelvin [V/K], more than zero. */
  readonly slope: number;
  /** Junction temperatures it can say [K]; a voltage above is a fault signal. */
  readonly lowest: number;
  readonly highest: number;
}

/**
 * Junction temperature from a power stage's analogue output [K].
 *
 * T = 273.15 K + (U − U0)/s
 *
 * U    voltage of the output [V]
 * U0   voltage at 0 °C [V]
 * s    voltage per kelvin [V/K], not zero
 * Valid over the range the data sheet states, often −40 °C to 150 °C, within ±2 K or more unless calibrated.
 * Source: Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019, TSEN thermal voltage definition (0.6 V, 8 mV/K).
 */
export function stageTemperature(voltage: number, offset: number, slope: number): number {
  return 273.15 + (voltage - offset) / slope;
}

/**
 * Voltage of a power stage's analogue output at a junction temperature [V].
 *
 * U = U0 + s·(T − 273.15 K)
 *
 * Symbols, range and source as for the temperature.
 */
export function stageVoltage(temperature: number, offset: number, slope: number): number {
  return offset + slope * (temperature - 273.15);
}

/** What a line that several stages drive says of them. */
export type SharedLineReading =
  /** At least one stage is at this temperature and none is hotter [K]; their mean is open (null) unless there is one stage only. */
  | { readonly says: 'temperature'; readonly hottest: number; readonly mean: number | null }
  /** Below what any output can be: not driven, or not connected. */
  | { readonly says: 'no-signal' }
  /** Above what any temperature can be: a stage reports a fault, and no temperature is known. */
  | { readonly says: 'fault' };

/**
 * What the voltage of a line that several stages drive together says.
 *
 * U = max(Uᵢ): each output can only pull the line up, so the hottest stage wins.
 *
 * Uᵢ   voltage of each stage's output [V]
 * Valid for outputs alike, that rise with temperature.
 * Source: Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019, TSEN pins; data sheets of power stages with a combined temperature and fault pin.
 */
export function readSharedLine(voltage: number, output: TemperatureOutput, stages: number): SharedLineReading {
  const temperature = stageTemperature(voltage, output.offset, output.slope);
  if (temperature > output.highest) return { says: 'fault' };
  if (!(temperature >= output.lowest)) return { says: 'no-signal' };
  return { says: 'temperature', hottest: temperature, mean: stages === 1 ? temperature : null };
}
