import { adcStep, adcVoltage, quantisationUncertainty } from '../../src/physics/sensing/adc.ts';
import { readSharedLine, stageTemperature, stageVoltage } from '../../src/physics/sensing/power-stage-temperature.ts';
import type { Figure, Topic } from '../topic.ts';

const dataSheet = 'Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019, electrical characteristics, TSEN voltage';
const sensorSheet = 'Texas Instruments, LMT90 data sheet SNIS177C';

export const topic: Topic = {
  title: 'Analogue temperature outputs',
  field: 'sensing',
  figures: [...stageFigures(), ...sensorFigures(), ...lineFigures(), ...converterFigures()],
  unchecked: ["the slope of any one power stage's own pin: it is the stage's data sheet that says it"],
};

function stageFigures(): Figure[] {
  const points = [
    [0.28, -40],
    [0.8, 25],
    [1.2, 75],
    [1.4, 100],
    [1.6, 125],
    [1.8, 150],
  ] as const;
  return points.flatMap(([volts, celsius]): Figure[] => [
    {
      what: `0.6 V at 0 °C and 8 mV/K: ${volts} V [°C]`,
      computed: stageTemperature(volts, 0.6, 8e-3) - 273.15,
      published: celsius,
      tolerance: 1e-9,
      why: 'the table is exactly straight',
      source: dataSheet,
      tier: 'B',
    },
    {
      what: `0.6 V at 0 °C and 8 mV/K: ${celsius} °C [V]`,
      computed: stageVoltage(celsius + 273.15, 0.6, 8e-3),
      published: volts,
      tolerance: 1e-9,
      why: 'the table is exactly straight',
      source: dataSheet,
      tier: 'B',
    },
  ]);
}

function sensorFigures(): Figure[] {
  const points = [
    [0.1, -40],
    [1.75, 125],
  ] as const;
  return points.map(([volts, celsius]) => ({
    what: `0.5 V at 0 °C and 10 mV/K: ${volts} V [°C]`,
    computed: stageTemperature(volts, 0.5, 10e-3) - 273.15,
    published: celsius,
    tolerance: 1e-9,
    why: 'the table is exactly straight',
    source: sensorSheet,
    tier: 'B',
  }));
}

function lineFigures(): Figure[] {
  const output = { offset: 0.6, slope: 8e-3, lowest: 233.15, highest: 423.15 };
  const line = Math.max(...[71.5, 80.2, 77].map((celsius) => stageVoltage(celsius + 273.15, 0.6, 8e-3)));
  const reading = readSharedLine(line, output, 3);
  return [
    {
      what: 'line shared by stages at 71.5, 80.2 and 77.0 °C [V]',
      computed: line,
      published: 1.2416,
      tolerance: 1e-9,
      why: '0.6 + 0.008·80.2',
      source: 'closed form, worked by hand',
      tier: 'C',
    },
    {
      what: 'what it says of the hottest [°C]',
      computed: reading.says === 'temperature' ? reading.hottest - 273.15 : Number.NaN,
      published: 80.2,
      tolerance: 1e-9,
      why: 'the hottest of the three',
      source: 'closed form, worked by hand',
      tier: 'C',
    },
  ];
}

function converterFigures(): Figure[] {
  const step = adcStep(3.3, 12);
  const temperatureOf = (code: number) => stageTemperature(adcVoltage(code, step, 1, 0), 0.6, 8e-3) - 273.15;
  const cases = [
    ['one step of 12 bits over 3.3 V at 8 mV/K [K]', step / 8e-3, 0.10071, 1e-5],
    ['its standard uncertainty [K]', quantisationUncertainty(step) / 8e-3, 0.02907, 1e-5],
    ['code 993 [°C]', temperatureOf(993), 25.003, 1e-3],
    ['code 1539 [°C]', temperatureOf(1539), 79.99, 1e-3],
  ] as const;
  return cases.map(([what, computed, published, tolerance]) => ({
    what,
    computed,
    published,
    tolerance,
    why: 'printed digits',
    source: 'worked in decimal arithmetic by an independent program',
    tier: 'C',
  }));
}
