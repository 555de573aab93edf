import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const shapes =
  '(k=2) or (50, 90, 95, 95.45, 99 or 99.73 %) behind an expanded uncertainty; (triangular), (U-shaped), (flat ± 1 K), (limits ± 0.2 K) or (without ± 5 %) behind a tolerance or a range; (9 dof) or (10 readings) behind a standard uncertainty such as 5.02(3) mΩ or ± 0.06 mΩ (k=2)';

export const quantityWords = {
  'quantity/wrong-dimension': (d) => ({
    found: `"${d.text}" is ${d.foundKind}, but ${d.expectedKind} is due here`,
    expected: `${d.expectedKind}, for example ${d.example}`,
    remedy: `write a number with a unit of ${d.expectedKind}`,
  }),
  'quantity/missing-unit': (d) => ({
    found: `"${d.text}" has no unit`,
    expected: `${d.expectedKind} with its unit, for example ${d.example}`,
    remedy: 'add the unit; files have no default units',
  }),
  'quantity/unknown-unit': (d) => ({
    found: `"${d.unit}" in "${d.text}" is no unit that is known here`,
    expected: `a unit of ${d.expectedKind}, for example ${d.example}`,
    remedy: d.near ? `did you mean "${d.near}"?` : 'docs/quantities.md lists the units',
  }),
  'quantity/not-a-number': (d) => ({
    found: `"${d.text}" doesn't begin with a number`,
    expected: `${d.expectedKind}, for example ${d.example}`,
    remedy: 'write digits with a decimal point, no thousands separators',
  }),
  'quantity/comma': (d) => ({
    found: `"${d.text}" has a comma in its number`,
    expected: `${d.expectedKind} with a decimal point, for example ${d.example}`,
    remedy: 'write a point for the decimal mark, and no thousands separators',
  }),
  'quantity/split-number': (d) => ({
    found: `"${d.text}" has a gap in its number`,
    expected: `${d.expectedKind} with its digits in one piece, for example ${d.example}`,
    remedy: 'leave out thousands separators',
  }),
  'quantity/out-of-reach': (d) => ({
    found: `"${d.text}" is too large or too small for a computer's number`,
    expected: 'a number between 1e-307 and 1e308 in SI units, or 0',
    remedy: 'check the exponent',
  }),
  'quantity/below-absolute-zero': (d) => ({
    found: `"${d.text}" lies below absolute zero`,
    expected: 'a temperature above 0 K, which is -273.15 degC',
    remedy: 'check the number and its unit',
  }),
  'quantity/ambiguous-tolerance': (d) => ({
    found: `"${d.text}" gives a plain number a tolerance in %, which may mean points or a share of it`,
    expected: 'both in %, as in 90 % ± 2 %, or both plain, as in 0.90 ± 0.02',
    remedy: 'write both in the same way; the tolerance then counts in points',
  }),
  'quantity/bad-range': (d) => ({
    found: `"${d.text}" is a range that doesn't rise`,
    expected: 'the lower end first, as in 0.4..0.6 K/W',
    remedy: 'put the two ends in order',
  }),
  'quantity/bad-tolerance': (d) => ({
    found: `"${d.text}" has an uncertainty that can't be read`,
    expected:
      '± 1 %, ± 0.05 mΩ, ± 0.06 mΩ (k=2), ~ 30 %, +10 % -5 %, or (sigma=0.3) behind a positive number; a range as 0.4..0.6 K/W',
    remedy: 'write the uncertainty in one of these ways, larger than zero',
  }),
  'quantity/two-uncertainties': (d) => ({
    found: `"${d.text}" states its uncertainty twice`,
    expected: 'one of the two: 5.02(3) mΩ, or 5.02 mΩ ± 0.03 mΩ (k=1)',
    remedy: 'leave one out',
  }),
  'quantity/no-such-unit': (d) => ({
    found: `"${d.text}" has no unit that is known here`,
    expected: 'a number with its unit, for example 5 mΩ ± 1 % or 0 K ± 0.5 K',
    remedy: 'docs/quantities.md lists the units',
  }),
  'quantity/unknown-shape': (d) => ({
    found: `"${d.word}" in "${d.text}" is no shape of an uncertainty that is known here`,
    expected: shapes,
    remedy: d.near ? `did you mean "${d.near}"?` : 'write one of these, or leave the brackets out',
  }),
  'quantity/bad-shape': (d) => ({
    found: `what stands in brackets in "${d.text}" doesn't go with the uncertainty before it`,
    expected: shapes,
    remedy: 'change the one or the other, or leave the brackets out',
  }),
  'quantity/shape-too-wide': (d) => ({
    found: `what stands in brackets in "${d.text}" reaches beyond the tolerance before it`,
    expected:
      'flat: narrower than the tolerance; limits: at most as wide; without: a part inside it, as in ± 10 % (without ± 5 %)',
    remedy: 'make it narrower, or the tolerance wider',
  }),
  'quantity/bad-choice': (d) => ({
    found: `"${d.text}" names several values in a way that can't be read`,
    expected:
      'different values without an uncertainty of their own, as in 10 mΩ or 12 mΩ; or each with its probability, as in 10 mΩ (70 %) or 12 mΩ (30 %)',
    remedy: 'write it like that, each with its unit; probabilities add up to 100 %',
  }),
  'quantity/percent-of-temperature': (d) => ({
    found: `"${d.text}" takes a percentage of a temperature, which depends on where the scale begins`,
    expected: 'a difference, as in 25 degC ± 2 K',
    remedy: 'write the uncertainty in kelvins',
  }),
  'quantity/scale-for-difference': (d) => ({
    found: `"${d.text}" is a temperature on a scale (${d.unit}), but a temperature difference is due here`,
    expected: 'a difference in kelvins, for example 30 K',
    remedy: 'write K',
  }),
} satisfies Words;
