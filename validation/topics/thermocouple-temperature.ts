import { typeE } from '../../src/physics/sensing/thermocouple-e.ts';
import { typeJ } from '../../src/physics/sensing/thermocouple-j.ts';
import { typeK } from '../../src/physics/sensing/thermocouple-k.ts';
import { typeN } from '../../src/physics/sensing/thermocouple-n.ts';
import { typeT } from '../../src/physics/sensing/thermocouple-t.ts';
import { inverseTemperature, thermocoupleTemperature } from '../../src/physics/sensing/thermocouple-temperature.ts';
import type { ThermocoupleType } from '../../src/physics/sensing/thermocouple-type.ts';
import { independentEvaluations, rowsOf } from '../tables/thermocouples.ts';
import type { Figure, Topic } from '../topic.ts';

const types = [typeK, typeT, typeJ, typeE, typeN];

export const topic: Topic = {
  title: 'Thermocouples: temperature',
  field: 'sensing',
  figures: [
    ...types.flatMap(tableFigures),
    ...types.flatMap(publishedInverseFigures),
    ...types.flatMap(evaluationFigures),
    ...referenceFigures(),
  ],
  unchecked: [
    'temperatures below −200 °C (J: −210 °C): no inverse function is published for them, and none is offered',
  ],
};

function exactly(type: ThermocoupleType, millivolts: number, reference = 0): number {
  return thermocoupleTemperature(type, 1e-3 * millivolts, reference + 273.15)! - 273.15;
}

function byPolynomial(type: ThermocoupleType, millivolts: number): number {
  return inverseTemperature(type, 1e-3 * millivolts)! - 273.15;
}

/** Every fifty degrees from −200 °C on, and the ends; near 0 °C one per cent is less than the table's half digit. */
function invertibleRows(type: ThermocoupleType) {
  const lowest = type === typeJ ? -210 : -200;
  return rowsOf(type.letter).filter(
    ([celsius]) => celsius >= lowest && celsius !== 0 && (celsius % 50 === 0 || celsius > 1300),
  );
}

/** Half a digit of the tables, 0.0005 mV, in °C: no sensitivity is below 9 µV/K here, nor below 25 µV/K above 0 °C. */
function halfDigit(celsius: number): number {
  return celsius < 0 ? 0.0005 / 0.009 : 0.0005 / 0.025;
}

function tableFigures(type: ThermocoupleType): Figure[] {
  return invertibleRows(type).map(([published, millivolts]) => ({
    what: `type ${type.letter} at ${millivolts} mV [°C]`,
    computed: exactly(type, millivolts),
    published,
    tolerance: halfDigit(published),
    why: 'voltage printed to 0.001 mV',
    source: `NIST Monograph 175 (1993), table of type ${type.letter}; IEC 60584-1`,
    tier: 'A',
  }));
}

function publishedInverseFigures(type: ThermocoupleType): Figure[] {
  return invertibleRows(type).map(([published, millivolts]) => {
    const { error } = type.inverse.find(({ to }) => millivolts <= to)!;
    return {
      what: `type ${type.letter} at ${millivolts} mV by the published inverse polynomial [°C]`,
      computed: byPolynomial(type, millivolts),
      published,
      tolerance: Math.max(-error.low, error.high) + halfDigit(published),
      why: 'published error of the polynomial, and voltage printed to 0.001 mV',
      source: `NIST Monograph 175 (1993), table and inverse function of type ${type.letter}`,
      tier: 'A',
    };
  });
}

function evaluationFigures(type: ThermocoupleType): Figure[] {
  return independentEvaluations[type.letter].inverses.map(([millivolts, published]) => ({
    what: `inverse polynomial of type ${type.letter} at ${millivolts} mV to nine digits [°C]`,
    computed: byPolynomial(type, millivolts),
    published,
    tolerance: 1e-5,
    why: 'nine digits',
    source: `coefficients of NIST Monograph 175 (1993), type ${type.letter}, evaluated with 40 digits by an independent program`,
    tier: 'C',
  }));
}

function referenceFigures(): Figure[] {
  const cases = [
    { type: typeK, millivolts: 4.53, reference: 24.5, published: 134.46425 },
    { type: typeK, millivolts: 3, reference: 25, published: 97.68066 },
    { type: typeT, millivolts: 2, reference: 25, published: 71.86456 },
  ];
  const source = 'functions of NIST Monograph 175 (1993) inverted by an independent program';
  return [
    ...cases.map(
      ({ type, millivolts, reference, published }): Figure => ({
        what: `type ${type.letter} at ${millivolts} mV, terminals at ${reference} °C [°C]`,
        computed: exactly(type, millivolts, reference),
        published,
        tolerance: 1e-5,
        why: 'printed to 0.00001 °C',
        source,
        tier: 'C',
      }),
    ),
    {
      what: 'what adding temperatures (25 °C + 3 mV/40.96 µV/K) says too much of 3 mV of type K [K]',
      computed: 25 + 3 / 0.04096 - exactly(typeK, 3, 25),
      published: 0.5616,
      tolerance: 1e-3,
      why: 'printed to 0.0001 K',
      source,
      tier: 'C',
    },
  ];
}
