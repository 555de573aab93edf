import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const calcWords = {
  'calc/unknown-formula': (d) => ({
    found: `there is no formula "${d.name}"`,
    expected: `one of ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : '`uprate calc` lists the formulas',
  }),
  'calc/bad-assignment': (d) => ({
    found: `"${d.text}" is not an input with its value`,
    expected: "name=value, for example a='5 mΩ ± 1 %'",
    remedy: 'put quotes around a value with spaces, and no spaces in front of the equals sign',
  }),
  'calc/given-twice': (d) => ({
    found: `"${d.name}" is given twice`,
    expected: 'each input once',
    remedy: 'leave one out',
  }),
  'calc/unknown-input': (d) => ({
    found: `"${d.formula}" has no input "${d.name}"`,
    expected: `its inputs: ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : `\`uprate calc ${d.formula}\` explains its inputs`,
  }),
  'calc/missing-inputs': (d) => ({
    found: `"${d.formula}" also needs ${list(d.missing)}`,
    expected: list(d.expected, '; '),
    remedy: `add ${list(d.example, ' ')}`,
  }),
  'calc/cannot-exist': (d) => ({
    found: `"${d.text}" can't be ${d.input} (${d.title})`,
    expected: String(d.expected),
    remedy: 'check the sign and the unit',
  }),
  'calc/requirement': (d) => ({
    found: `"${d.formula}" has no result for these values`,
    expected: String(d.says),
    remedy: 'check the values, and whether two of them are exchanged',
  }),
  'calc/runaway': (d) => ({
    found: `there is no steady temperature: each kelvin more causes loss that warms it by a kelvin or more (thermal runaway)`,
    expected: `a loop gain below 1 in ${d.equation}`,
    remedy: 'lower the thermal resistance, or the loss that grows',
  }),
  'calc/outside-valid-range': (d) => ({
    found: `outside the range in which "${d.formula}" is known to hold`,
    expected: String(d.says),
    remedy: 'take the result as a hint only; measure instead',
  }),
  'calc/no-uncertainty': (d) => ({
    found: `no uncertainty is stated for ${list(d.inputs)}, so none of theirs is in the result`,
    expected: 'a value with its uncertainty, for example 5 mΩ ± 1 %',
    remedy: 'add a tolerance from the data sheet, or a guess as in 45 um ~ 30 %',
  }),
  'calc/draws-lost': (d) => ({
    found: `${d.lost} of ${d.samples} draws within the stated uncertainties have no result (${d.runaway} by thermal runaway); interval and uncertainty speak of the others only`,
    expected: 'a result for every value that the inputs may have',
    remedy: 'state smaller uncertainties from a measurement, or stay further away',
  }),
  'calc/methods-disagree': (d) => ({
    found: `first order and Monte Carlo disagree about the uncertainty of ${list(d.outputs)}; Monte Carlo is given`,
    remedy: 'the budget shows first order and is a hint only',
  }),
} satisfies Words;

function list(value: FaultData[string], separator = ', '): string {
  return Array.isArray(value) ? value.join(separator) : String(value);
}
