import type { Example, Formula } from '../../formula.ts';
import { thermocoupleTemperature } from '../../sensing/thermocouple-temperature.ts';
import type { ThermocoupleType } from '../../sensing/thermocouple-type.ts';
import {
  measuredThermocoupleVoltage,
  referenceSlope,
  thermocoupleSensitivity,
} from '../../sensing/thermocouple-voltage.ts';

const reference = {
  name: 'reference',
  symbol: 'T_ref',
  title: "where the thermocouple's wires end",
  kind: 'temperature',
  unit: '°C',
  low: 0,
} as const;

const sensitivity = {
  name: 'sensitivity',
  title: 'change of voltage per kelvin there',
  kind: 'voltage-temperature-coefficient',
  unit: 'uV/K',
} as const;

const terminals = {
  says: 'wires end where it is −40 °C to 125 °C, as terminal blocks are',
  holds: (x: Float64Array) => x[1] >= 233.15 && x[1] <= 398.15,
};

const source = 'NIST Monograph 175 (1993); IEC 60584-1';

/** Temperature from the voltage of one type of thermocouple. */
export function thermocoupleTemperatureFormula(type: ThermocoupleType, example: Example): Formula {
  const { letter, title } = type;
  return {
    name: `thermocouple-${letter.toLowerCase()}`,
    title: `temperature from the voltage of a thermocouple type ${title}`,
    equation: 'E(T) = U + E(T_ref), E the reference function of the type; voltages are added, never temperatures',
    room: 'sensing',
    inputs: [
      { name: 'voltage', symbol: 'U', title: 'voltage between the leads', kind: 'voltage', unit: 'mV' },
      reference,
    ],
    outputs: [
      { name: 'temperature', title: 'temperature of the measuring junction', kind: 'temperature', unit: '°C' },
      sensitivity,
    ],
    source,
    requires: [
      {
        says: `voltages together within the range of type ${letter}, ${rangeOf(type, 'inverse')}`,
        holds: (x) => thermocoupleTemperature(type, x[0], x[1]) !== null,
      },
    ],
    valid: [terminals],
    example,
    compute(x, y) {
      const temperature = thermocoupleTemperature(type, x[0], x[1])!;
      y[0] = temperature;
      y[1] = 1e-3 * referenceSlope(type, temperature - 273.15);
      return 'solved';
    },
  };
}

/** Voltage of one type of thermocouple at a temperature. */
export function thermocoupleVoltageFormula(type: ThermocoupleType, example: Example): Formula {
  const { letter, title } = type;
  return {
    name: `thermocouple-${letter.toLowerCase()}-voltage`,
    title: `voltage of a thermocouple type ${title} at a temperature`,
    equation: 'U = E(T) − E(T_ref), E the reference function of the type',
    room: 'sensing',
    inputs: [
      {
        name: 'temperature',
        symbol: 'T',
        title: 'temperature of the measuring junction',
        kind: 'temperature',
        unit: '°C',
        low: 0,
      },
      reference,
    ],
    outputs: [{ name: 'voltage', title: 'voltage between the leads', kind: 'voltage', unit: 'mV' }, sensitivity],
    source,
    requires: [
      {
        says: `both temperatures within the range of type ${letter}, ${rangeOf(type, 'direct')}`,
        holds: (x) => measuredThermocoupleVoltage(type, x[0], x[1]) !== null,
      },
    ],
    valid: [terminals],
    example,
    compute(x, y) {
      y[0] = measuredThermocoupleVoltage(type, x[0], x[1])!;
      y[1] = thermocoupleSensitivity(type, x[0])!;
      return 'solved';
    },
  };
}

function rangeOf({ letter, lowest, direct }: ThermocoupleType, way: 'direct' | 'inverse'): string {
  const from = way === 'inverse' && letter !== 'J' ? -200 : lowest;
  return `−${-from} °C to ${direct[direct.length - 1].to} °C`;
}
