import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

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
} satisfies Words;
