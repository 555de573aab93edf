import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const calcWords = {
  'calc/unknown-formula': (d) => ({
    found: `there is no formula "${d.name}"`,
    expected:
      Array.isArray(d.near) && d.near.length > 0 ? `perhaps "${list(d.near, '", or "')}"` : 'the name of a formula',
    remedy: '`uprate calc` lists the formulas, `uprate calc --search WORD` those with a word',
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
  'calc/output-given': (d) => ({
    found: `"${d.name}" is a result of "${d.formula}", not an input`,
    expected: `its inputs: ${list(d.known)}`,
    remedy: `leave it out; or leave out the input that you look for and name it: --solve ${list(d.known, '|')}`,
  }),
  'calc/unknown-unknown': (d) => ({
    found: `"${d.formula}" has no input "${d.name}" to solve for`,
    expected: `one of its inputs: ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : `\`uprate calc ${d.formula}\` explains its inputs`,
  }),
  'calc/unknown-given': (d) => ({
    found: `"${d.name}" is to be solved for, and is given too`,
    expected: 'every other input, and one result',
    remedy: `leave out ${d.name}=…, or --solve`,
  }),
  'calc/one-target': (d) => ({
    found:
      Array.isArray(d.given) && d.given.length > 0
        ? `${list(d.given, ' and ')} are given`
        : 'no result is given to solve for',
    expected: `exactly one result of "${d.formula}": ${list(d.known, ' or ')}`,
    remedy: `for example ${d.example}`,
  }),
  'calc/no-root': (d) => ({
    found: `no ${d.input} gives ${d.output} ${d.given}`,
    expected:
      d.low === ''
        ? `inputs for which "${d.formula}" has a result`
        : `${d.output} from ${d.low} to ${d.high}: all that ${d.input} reaches with the other inputs as they are`,
    remedy: 'change another input, or ask for less',
  }),
  'calc/independent': (d) => ({
    found: `${d.output} doesn't depend on ${d.input} with the other inputs as they are: it is ${d.low}`,
    expected: 'an input that the result depends on',
    remedy: 'solve for another input',
  }),
  'calc/plateau': (d) => ({
    found: `every ${d.input} from ${d.from} to ${d.to} gives ${d.output} ${d.given}`,
    expected: 'a result that one value alone gives',
    remedy: 'ask for a result off the flat part',
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
