import type { Formula } from '../../formula.ts';
import { stageTemperature } from '../../sensing/power-stage-temperature.ts';

export const powerStageTemperatureFormula: Formula = {
  name: 'power-stage-temperature',
  title: "junction temperature from a power stage's analogue output; on a shared line, that of the hottest stage",
  equation: 'T = (U − U0)/s, in °C',
  room: 'sensing',
  inputs: [
    { name: 'voltage', symbol: 'U', title: 'voltage of the output', kind: 'voltage', unit: 'V', low: 0 },
    { name: 'offset', symbol: 'U0', title: 'voltage at 0 °C', kind: 'voltage', unit: 'V' },
    { name: 'slope', symbol: 's', title: 'voltage per kelvin', kind: 'voltage-temperature-coefficient', unit: 'mV/K' },
  ],
  outputs: [{ name: 'temperature', title: 'junction temperature', kind: 'temperature', unit: '°C' }],
  source: 'Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019, TSEN thermal voltage definition',
  requires: [
    {
      says: 'temperature above absolute zero',
      holds: (x) => x[2] !== 0 && stageTemperature(x[0], x[1], x[2]) > 0,
    },
  ],
  valid: [
    {
      says: 'temperature from −40 °C to 150 °C: a voltage above is a fault signal, below nothing drives the line',
      holds: (x) => {
        const temperature = stageTemperature(x[0], x[1], x[2]);
        return temperature >= 233.15 && temperature <= 423.15 + 1e-9;
      },
    },
  ],
  example: {
    inputs: { voltage: '1.20 V', offset: '0.6 V', slope: '8 mV/K' },
    result: { temperature: '75 °C' },
    source: 'Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019: 1.20 V at 75 °C',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = stageTemperature(x[0], x[1], x[2]);
    return 'solved';
  },
};
