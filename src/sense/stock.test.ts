import { expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import { defaultStock } from './default-stock.ts';
import { readStock } from './stock.ts';

const entry = "tolerance: 1 %, temperature-coefficient: 75 ppm/K, rated-power: 1 W, size: '2512'";
const list = (values: string, more = '') => `stock: 1\nresistors:\n  - { values: [${values}], ${entry} }\n${more}`;

function stockOf(text: string) {
  const reading = readStock(text, 'stock.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.stock;
}

test('the default list: 60 values from 0.2 mΩ to 1 Ω, rising, and chip resistors of two series', () => {
  const { resistors, chips, joint, kelvin } = stockOf(defaultStock);
  const values = resistors.map(({ resistance }) => resistance.value);
  expect(values).toHaveLength(60);
  expect([values[0], values.at(-1)]).toEqual([0.2e-3, 1]);
  expect([...values].sort((a, b) => a - b)).toEqual(values);
  // Four decades of E24 and of E96, both ends included.
  expect(chips.map(({ name }) => name)).toContain('4.99 kΩ 1 %, 0603');
  expect(chips.map(({ name }) => name)).toContain('51 Ω 1 %, 0603');
  expect(joint).toEqual({ low: 20e-6, high: 200e-6 });
  expect(kelvin).toEqual({ low: 0, high: 20e-6 });
});

test('a part has its value with its tolerance, its coefficient, its rating and a name', () => {
  const [part] = stockOf(list('22 mohm')).resistors;
  expect(part.name).toBe('22 mΩ 1 %, 2512');
  expect(part.resistance).toMatchObject({ value: 0.022, text: '22 mohm ± 1 %' });
  expect(part.resistance.spread).toEqual({ shape: 'rectangular', low: 0.022 * 0.99, high: 0.022 * 1.01 });
  expect(part).toMatchObject({ coefficient: 75e-6, ratedPower: 1, derating: null, source: 'stock list' });
});

test('a joint of one’s own, and a value that stands twice counts once', () => {
  const { joint, resistors } = stockOf(list('22 mohm, 10 mohm, 22 mohm', 'joint: 0.05..0.1 mohm\n'));
  expect(joint).toEqual({ low: 0.05e-3, high: 0.1e-3 });
  expect(resistors.map(({ resistance }) => resistance.value)).toEqual([0.01, 0.022]);
});

test.each([
  [
    'a plain short',
    list('22 mohm, 0 ohm'),
    3,
    'is a plain short: the reading falls to zero and nothing limits any more',
  ],
  ['nearly a short', list('0.05 mohm'), 3, 'is a plain short'],
  ['an unknown field', list('22 mohm').replace("size: '2512'", 'colour: red'), 3, 'colour'],
  ['a unit of another kind', list('22 mW'), 3, 'is a power'],
  ['no values', `stock: 1\nresistors:\n  - { ${entry} }\n`, 3, 'has no values to choose from'],
  [
    'a series without its ends',
    `stock: 1\nresistors:\n  - { series: E24, from: 1 mohm, ${entry} }\n`,
    3,
    'has no values',
  ],
  ['an empty list', 'stock: 1\nresistors: []\n', 2, 'resistors'],
  ['another file', '- just\n- a list\n', 1, 'this is no stock list'],
  ['no YAML', 'stock: [1\n', 2, ''],
])('%s is refused where it stands', (_, text, line, says) => {
  const reading = readStock(text, 'stock.yaml');
  if (reading.ok) throw new Error('was read');
  expect(reading.faults[0].place?.line).toBe(line);
  const said = sayFault(reading.faults[0]).found;
  expect(said).toContain(says);
  expect(said).not.toMatch(/undefined|NaN|\[object/);
});
