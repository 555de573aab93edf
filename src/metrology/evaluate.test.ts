import { expect, test } from 'vitest';
import { evaluateAt, outputIndex, startValues } from './evaluate.ts';
import { exampleModel, normal } from './example.test-data.ts';

const product = exampleModel({
  inputs: { a: [2, normal(0.1)], b: [3, null] },
  outputs: { product: ([a, b]) => a * b },
  ending: ([a]) => (a > 10 ? 'runaway' : 'solved'),
});

test('a later evaluation leaves an earlier result alone', () => {
  const first = evaluateAt(product);
  const second = evaluateAt(product, Float64Array.of(20, 3));
  expect([...first.y]).toEqual([6]);
  expect(first.status.ending).toBe('solved');
  expect(second.status.ending).toBe('runaway');
  expect([...second.y]).toEqual([Number.NaN]);
});

test('start values are the best values in order', () => {
  expect([...startValues(product)]).toEqual([2, 3]);
});

test('a wrong number of values and an unknown output are programming errors', () => {
  expect(() => evaluateAt(product, Float64Array.of(1))).toThrow('1 values for 2 inputs');
  expect(() => outputIndex(product, 'sum')).toThrow('no output "sum"; there are: product');
});
