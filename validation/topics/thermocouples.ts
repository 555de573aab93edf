import { typeE } from '../../src/physics/sensing/thermocouple-e.ts';
import { typeJ } from '../../src/physics/sensing/thermocouple-j.ts';
import { typeK } from '../../src/physics/sensing/thermocouple-k.ts';
import { typeN } from '../../src/physics/sensing/thermocouple-n.ts';
import { typeT } from '../../src/physics/sensing/thermocouple-t.ts';
import { thermocoupleTolerance } from '../../src/physics/sensing/thermocouple-tolerance.ts';
import type { ThermocoupleType } from '../../src/physics/sensing/thermocouple-type.ts';
import {
  measuredThermocoupleVoltage,
  thermocoupleSensitivity,
  thermocoupleVoltage,
} from '../../src/physics/sensing/thermocouple-voltage.ts';
import { independentEvaluations, rowsOf } from '../tables/thermocouples.ts';
import type { Figure, Topic } from '../topic.ts';

const types = [typeK, typeT, typeJ, typeE, typeN];

export const topic: Topic = {
  title: 'Thermocouples: voltage',
  field: 'sensing',
  figures: [
    ...types.flatMap(tableFigures),
    ...fromMemory(),
    ...types.flatMap(evaluationFigures),
    ...types.flatMap(sensitivityFigures),
    ...referenceFigures(),
    ...toleranceFigures(),
  ],
  unchecked: [
    'type N between its published ends: no table of it was found; its coefficients are checked against an independent evaluation',
    'type E from −270 °C to −260 °C beyond an independent evaluation at −265 °C',
  ],
};

function voltageAt(type: ThermocoupleType, celsius: number): number {
  return 1e3 * thermocoupleVoltage(type, celsius + 273.15)!;
}

/** The printed tables; at 0 °C the reference function is zero by definition. */
function tableFigures(type: ThermocoupleType): Figure[] {
  return rowsOf(type.letter).map(([celsius, published]) => ({
    what: `type ${type.letter} at ${celsius} °C [mV]`,
    computed: voltageAt(type, celsius),
    published,
    tolerance: published === 0 ? 1e-6 : 0.000501,
    why: published === 0 ? 'where the two reference functions of type K meet' : 'printed to 0.001 mV',
    source: `NIST Monograph 175 (1993), table of type ${type.letter}; IEC 60584-1`,
    tier: 'A',
    ...(published === 0 && { coarse: 'zero by definition' }),
  }));
}

function fromMemory(): Figure[] {
  return [
    { celsius: 25, published: 0.659 },
    { celsius: 100, published: 2.774 },
  ].map(({ celsius, published }) => ({
    what: `type N at ${celsius} °C [mV]`,
    computed: voltageAt(typeN, celsius),
    published,
    tolerance: 0.000501,
    why: 'printed to 0.001 mV',
    source: 'NIST Monograph 175 (1993), table of type N, from memory',
    tier: 'A',
  }));
}

function evaluationFigures(type: ThermocoupleType): Figure[] {
  return independentEvaluations[type.letter].voltages.map(([celsius, published]) => ({
    what: `type ${type.letter} at ${celsius} °C to nine digits [mV]`,
    computed: voltageAt(type, celsius),
    published,
    tolerance: 1e-7,
    why: 'nine digits',
    source: `coefficients of NIST Monograph 175 (1993), type ${type.letter}, evaluated with 40 digits by an independent program`,
    tier: 'C',
  }));
}

function sensitivityFigures(type: ThermocoupleType): Figure[] {
  return independentEvaluations[type.letter].sensitivities.map(([celsius, published]) => ({
    what: `sensitivity of type ${type.letter} at ${celsius} °C [µV/K]`,
    computed: 1e6 * thermocoupleSensitivity(type, celsius + 273.15)!,
    published,
    tolerance: 1e-5,
    why: 'eight digits',
    source: `derivative of the function of NIST Monograph 175 (1993), type ${type.letter}, with 40 digits by an independent program`,
    tier: 'C',
  }));
}

/** A junction and terminals that are both in the table: the difference of two rows is what a meter reads. */
function referenceFigures(): Figure[] {
  const cases = [
    { type: typeK, celsius: 400, reference: 20, published: 16.397 - 0.798 },
    { type: typeK, celsius: 20, reference: 100, published: 0.798 - 4.096 },
    { type: typeT, celsius: 100, reference: 30, published: 4.279 - 1.196 },
    { type: typeJ, celsius: -40, reference: 20, published: -1.961 - 1.019 },
    { type: typeE, celsius: 150, reference: 40, published: 9.789 - 2.42 },
  ];
  return cases.map(({ type, celsius, reference, published }) => ({
    what: `type ${type.letter} between ${celsius} °C and terminals at ${reference} °C [mV]`,
    computed: 1e3 * measuredThermocoupleVoltage(type, celsius + 273.15, reference + 273.15)!,
    published,
    tolerance: 0.001001,
    why: 'difference of two rows printed to 0.001 mV',
    source: `NIST Monograph 175 (1993), table of type ${type.letter}`,
    tier: 'A',
  }));
}

function toleranceFigures(): Figure[] {
  const cases = [
    { type: typeK, grade: 1, celsius: 20, published: 1.5 },
    { type: typeK, grade: 1, celsius: 1000, published: 4 },
    { type: typeK, grade: 2, celsius: 100, published: 2.5 },
    { type: typeK, grade: 2, celsius: 1200, published: 9 },
    { type: typeT, grade: 1, celsius: 100, published: 0.5 },
    { type: typeT, grade: 1, celsius: 350, published: 1.4 },
    { type: typeT, grade: 2, celsius: -40, published: 1 },
    { type: typeT, grade: 2, celsius: 350, published: 2.625 },
    { type: typeJ, grade: 1, celsius: 100, published: 1.5 },
    { type: typeJ, grade: 1, celsius: 750, published: 3 },
    { type: typeJ, grade: 2, celsius: 100, published: 2.5 },
    { type: typeJ, grade: 2, celsius: 750, published: 5.625 },
    { type: typeE, grade: 2, celsius: 100, published: 2.5 },
    { type: typeE, grade: 2, celsius: 900, published: 6.75 },
    { type: typeN, grade: 1, celsius: 100, published: 1.5 },
    { type: typeN, grade: 1, celsius: 1000, published: 4 },
    { type: typeN, grade: 2, celsius: 100, published: 2.5 },
    { type: typeN, grade: 2, celsius: 1200, published: 9 },
  ] as const;
  const memory = [
    { type: typeE, grade: 1, celsius: 100, published: 1.5 },
    { type: typeE, grade: 1, celsius: 800, published: 3.2 },
  ] as const;
  const figure = (
    { type, grade, celsius, published }: (typeof cases)[number] | (typeof memory)[number],
    source: string,
  ): Figure => ({
    what: `tolerance of type ${type.letter}, class ${grade}, at ${celsius} °C, ± [K]`,
    computed: thermocoupleTolerance(type, grade, celsius + 273.15)!,
    published,
    tolerance: 1e-9,
    why: 'exact',
    source,
    tier: 'A',
  });
  return [
    ...cases.map((each) => figure(each, 'IEC 60584-2:1982, table 1')),
    ...memory.map((each) => figure(each, 'IEC 60584-2:1982, table 1, from memory')),
  ];
}
