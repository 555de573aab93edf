import { expect, test } from 'vitest';
import { writeFault } from '../../fault/fault.ts';
import { baths, checkBath } from './baths.ts';

const inside = { temperature: 323.15, ph: 4, currentDensity: 400 };

test('conditions within every published range raise nothing', () => {
  expect(checkBath('watts-nickel', inside)).toEqual([]);
});

// Watts bath: 40 °C to 65 °C, pH 3.5 to 5.1, 2 A/dm² to 10 A/dm² (handbooks of nickel plating).
test.each([
  ['temperature', 313.1, 313.2],
  ['temperature', 338.2, 338.1],
  ['ph', 3.4, 3.5],
  ['ph', 5.12, 5.1],
  ['currentDensity', 199, 200],
  ['currentDensity', 1001, 1000],
])('%s of %d is warned of, %d is not', (condition, outside, edge) => {
  const faults = checkBath('watts-nickel', { ...inside, [condition]: outside });
  expect(faults.map(({ code, severity }) => [code, severity])).toEqual([['physics/bath-outside-range', 'warning']]);
  expect(checkBath('watts-nickel', { ...inside, [condition]: edge })).toEqual([]);
});

test('a warning shows the condition and its range in everyday units', () => {
  const [hot] = checkBath('watts-nickel', { ...inside, temperature: 343.15 });
  expect(hot.data).toMatchObject({ value: 70, low: 40, high: 65, unit: '°C' });
  const [dense] = checkBath('watts-nickel', { ...inside, currentDensity: 1500 });
  expect(dense.data).toMatchObject({ value: 15, low: 2, high: 10, unit: 'A/dm²' });
  const [basic] = checkBath('watts-nickel', { ...inside, ph: 5.5 });
  expect(basic.data).toMatchObject({ value: 5.5, low: 3.5, high: 5.1, unit: '' });
  expect(writeFault(dense)).toContain('2 to 10 A/dm²');
});

// Bright nickel: 50 °C to 65 °C, pH 3 to 5; acid copper: 18 °C to 60 °C (platers' notes), 215 A/m² to 1080 A/m² (US EPA, AP-42, 12.20).
test('what has no published range stays open', () => {
  const codes = (name: string, temperature: number, currentDensity: number) =>
    checkBath(name, { temperature, ph: 3, currentDensity }).map(({ severity, data }) => [severity, data.condition]);
  expect(codes('bright-nickel', 323.16, 400)).toEqual([['open', 'a current density']]);
  expect(codes('bright-nickel', 338.16, 400)[0]).toEqual(['warning', 'a temperature']);
  expect(checkBath('bright-nickel', { temperature: 330, ph: 5.02, currentDensity: 400 }).length).toBe(2);
  expect(codes('acid-copper', 291.16, 215)).toEqual([['open', 'a pH']]);
  expect(codes('acid-copper', 333.14, 1080)).toEqual([['open', 'a pH']]);
  expect(codes('acid-copper', 291.14, 214)).toEqual([
    ['warning', 'a temperature'],
    ['open', 'a pH'],
    ['warning', 'a current density'],
  ]);
  expect(codes('acid-copper', 333.16, 1081).length).toBe(3);
});

test('a bath that is not in the table is refused', () => {
  expect(checkBath('watts', inside).map(({ code }) => code)).toEqual(['physics/unknown-bath']);
});

test('every bath says what may hurt someone, and to leave it to a commercial plater and the local code', () => {
  for (const { caution } of Object.values(baths)) {
    expect(caution).toContain('commercial plater');
    expect(caution).toContain('Local codes');
  }
});

// Efficiency of the cathode 92 % to 97 % in a Watts bath (Nickel Plating Handbook, 2014, from memory), 93 % to 97 % in bright nickel.
test('nickel baths lose 3 % to 8 % of their current to hydrogen', () => {
  expect(baths['watts-nickel'].efficiency).toEqual([0.92, 0.97]);
  expect(baths['bright-nickel'].efficiency).toEqual([0.93, 0.97]);
});
