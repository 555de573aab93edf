import { describe, expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import { type KindName, kinds } from './kind.ts';
import { readQuantity } from './read.ts';
import { standardUncertainty } from './spread.ts';

function value(text: string, kind: KindName): number {
  return quantity(text, kind).value;
}

function quantity(text: string, kind: KindName) {
  const read = readQuantity(text, kind);
  if (!read.ok) throw new Error(`${text}: ${JSON.stringify(read.fault)}`);
  return read.quantity;
}

function u(text: string, kind: KindName): number {
  const { spread, value } = quantity(text, kind);
  return standardUncertainty(spread!, value);
}

function refusal(text: string, kind: KindName) {
  const read = readQuantity(text, kind);
  if (read.ok) throw new Error(`${text} was read as ${read.quantity.value}`);
  for (const sentence of Object.values(sayFault(read.fault)))
    expect(sentence.replaceAll(text, '')).not.toMatch(/undefined|NaN/);
  return { code: read.fault.code, marked: text.slice(read.offset, read.offset + read.length) };
}

describe('a number with a unit is the double nearest to its decimal value in SI', () => {
  // Prefixes: The International System of Units (SI brochure), 9th edition, table 7.
  test.each<[string, KindName, number]>([
    ['5 mΩ', 'resistance', 0.005],
    ['5.02 mohm', 'resistance', 0.00502],
    ['0.1 mOhm', 'resistance', 1e-4],
    ['47 pF', 'capacitance', 47e-12],
    ['4.7 nH', 'inductance', 4.7e-9],
    ['22 uF', 'capacitance', 22e-6],
    ['22 \u00b5F', 'capacitance', 22e-6],
    ['22 \u03bcF', 'capacitance', 22e-6],
    ['600 kHz', 'frequency', 6e5],
    ['1.2 MHz', 'frequency', 1.2e6],
    ['2 GHz', 'frequency', 2e9],
    ['1e-3 V', 'voltage', 1e-3],
    ['1e-3 mV', 'voltage', 1e-6],
    ['.5 mm', 'length', 5e-4],
    ['5 m', 'length', 5],
    ['3 mm²', 'area', 3e-6],
    ['3 mm2', 'area', 3e-6],
    ['3 mm^2', 'area', 3e-6],
    ['2 mL', 'volume', 2e-6],
    ['90 min', 'time', 5400],
    ['2.6 Ah', 'charge', 9360],
    ['50 Wh', 'energy', 180_000],
    ['8.9 g/cm³', 'density', 8900],
    ['3 A/dm²', 'current-density', 300],
    ['50 ppm/K', 'temperature-coefficient', 5e-5],
    ['0.39 %/K', 'temperature-coefficient', 0.0039],
    ['50 ppm/°C', 'temperature-coefficient', 5e-5],
    ['8 mV/K', 'voltage-temperature-coefficient', 0.008],
    ['10 K·mm²/W', 'area-thermal-resistance', 1e-5],
    ['10 mm2K/W', 'area-thermal-resistance', 1e-5],
    ['10 mm²·K/W', 'area-thermal-resistance', 1e-5],
    ['40 W/(m²·K)', 'film-coefficient', 40],
    ['40 W/m2K', 'film-coefficient', 40],
    ['40 W/m²·K', 'film-coefficient', 40],
    ['8 W/(m*K)', 'thermal-conductivity', 8],
    ['8 W/m/K', 'thermal-conductivity', 8],
    ['8 W/mK', 'thermal-conductivity', 8],
    ['8 W/m·K', 'thermal-conductivity', 8],
    ['8 W/mK', 'thermal-conductance', 8000],
    ['25 degC', 'temperature', 298.15],
    ['25.1 °C', 'temperature', 298.25],
    ['25 C', 'temperature', 298.15],
    ['\u221210 °C', 'temperature', 263.15],
    ['300 K', 'temperature', 300],
    ['30 mK', 'temperature-difference', 0.03],
    ['5\u00a0mΩ', 'resistance', 0.005],
    ['90 %', 'ratio', 0.9],
    ['0.9', 'ratio', 0.9],
    ['6', 'count', 6],
    ['0 V', 'voltage', 0],
    ['5 \u2126', 'resistance', 5],
    ['5 \u212a', 'temperature', 5],
    ['5\u2009V', 'voltage', 5],
    ['-0.5 V', 'voltage', -0.5],
    ['-40 degC', 'temperature', 233.15],
    ['-273.15 degC', 'temperature', 0],
    ['0.1 in', 'length', 0.00254],
    ['0.3 ft', 'length', 0.09144],
    ['0.393 %/K', 'temperature-coefficient', 0.00393],
    ['3 mV/V', 'ratio', 0.003],
    ['250 mrad', 'angle', 0.25],
  ])('%s of %s', (text, kind, expected) => {
    expect(value(text, kind)).toBe(expected);
  });

  // 1.095 g/(A·h) is Faraday's law for nickel: 58.6934 g/mol / (2 · 96485.33212 C/mol) · 3600 s/h (atomic weight: IUPAC 2021; Faraday constant: CODATA 2018).
  test('grams an ampere hour, with and without brackets', () => {
    const nickel = 0.0586934 / (2 * 96485.33212);
    for (const text of ['1.095 g/(A·h)', '1.095 g/A·h', '1.095 g/Ah'])
      expect(value(text, 'electrochemical-equivalent') / nickel).toBeCloseTo(1, 4);
  });

  // NIST Special Publication 811 (2008), appendix B.8; factors as printed there, to seven digits.
  test.each<[string, KindName, number, number]>([
    ['1 lbf·in', 'torque', 0.1129848, 5e-8],
    ['1 psi', 'pressure', 6894.757, 5e-4],
    ['1 bar', 'pressure', 1e5, 0],
    ['1 CFM', 'volume-flow', 4.719474e-4, 5e-11],
    ['1 L/min', 'volume-flow', 1.666667e-5, 5e-12],
    ['1 in', 'length', 0.0254, 0],
    ['1 ft', 'length', 0.3048, 0],
    ['1 mil', 'length', 2.54e-5, 0],
    ['1 lbf', 'force', 4.448222, 5e-7],
    ['1 deg', 'angle', 0.01745329, 5e-9],
    ['1 lb', 'mass', 0.45359237, 0],
    ['1 rpm', 'frequency', 0.01666667, 5e-9],
    ['77 degF', 'temperature', 298.15, 1e-12],
    ['32 °F', 'temperature', 273.15, 1e-12],
  ])('%s by the conversion factors of NIST SP 811', (text, kind, expected, tolerance) => {
    expect(Math.abs(value(text, kind) - expected)).toBeLessThanOrEqual(tolerance);
  });

  // ASTM B258, table 1: diameters in mm, to the four digits that tables print.
  test.each([
    ['AWG 0000', 11.68],
    ['4/0 AWG', 11.68],
    ['AWG 1/0', 8.251],
    ['0 AWG', 8.251],
    ['AWG 18', 1.024],
    ['18 AWG', 1.024],
    ['AWG24', 0.5106],
    ['AWG 36', 0.127],
    ['AWG 40', 0.07987],
  ])('%s is a diameter of %s mm', (text, millimetres) => {
    expect(Number((1000 * value(text, 'length')).toPrecision(4))).toBe(millimetres);
  });
});

describe('an uncertainty is read as it is written', () => {
  test.each<[string, KindName, number, number]>([
    ['5 mΩ ± 1 %', 'resistance', 0.00495, 0.00505],
    ['5 mΩ +- 1 %', 'resistance', 0.00495, 0.00505],
    ['5 mΩ +/- 1%', 'resistance', 0.00495, 0.00505],
    ['5 mohm ± 0.05 mohm', 'resistance', 0.00495, 0.00505],
    ['5 ± 0.05 mohm', 'resistance', 0.00495, 0.00505],
    ['5 mohm ± 50 uohm', 'resistance', 0.00495, 0.00505],
    ['10 V ± 100 ppm', 'voltage', 9.999, 10.001],
    ['0.4..0.6 K/W', 'thermal-resistance', 0.4, 0.6],
    ['400 mK/W .. 0.6 K/W', 'thermal-resistance', 0.4, 0.6],
    ['20..30 degC', 'temperature', 293.15, 303.15],
    ['5 V +10 % -5 %', 'voltage', 4.75, 5.5],
    ['5 V +10 % / -5 %', 'voltage', 4.75, 5.5],
    ['5 V +0.5 V -0.25 V', 'voltage', 4.75, 5.5],
    ['5 V +10 % -0 %', 'voltage', 5, 5.5],
    ['5 V +0/-5 %', 'voltage', 4.75, 5],
    ['12 CFM ± 15 %', 'volume-flow', 10.2 * 4.719474432e-4, 13.8 * 4.719474432e-4],
    ['0.4 %/K ± 5 %', 'temperature-coefficient', 0.0038, 0.0042],
    ['50 ppm ± 10 %', 'ratio', 45e-6, 55e-6],
    ['100 uF +80/-20 %', 'capacitance', 80e-6, 180e-6],
    ['25 degC ± 2 K', 'temperature', 296.15, 300.15],
    ['25 degC ± 2 degC', 'temperature', 296.15, 300.15],
    ['25 ± 2 °C', 'temperature', 296.15, 300.15],
    ['90 % ± 2 %', 'ratio', 0.88, 0.92],
    ['0.90 ± 0.02', 'ratio', 0.88, 0.92],
    ['20 ± 2', 'count', 18, 22],
    ['20 ± 10 %', 'count', 18, 22],
    ['−10 V ± 10 %', 'voltage', -11, -9],
  ])('%s is a rectangle', (text, kind, low, high) => {
    const { spread } = quantity(text, kind);
    if (spread?.shape !== 'rectangular') throw new Error(JSON.stringify(spread));
    expect(spread.low / low).toBeCloseTo(1, 15);
    expect(spread.high / high).toBeCloseTo(1, 15);
  });

  // JCGM 100:2008 (GUM), 7.2.2: a mass of nominally 100 g with a combined standard uncertainty of 0.35 mg, in the ways printed there.
  test.each([
    '100.02147(35) g',
    '100.02147 g ± 0.00035 g (k=1)',
    // 7.2.4: the expanded uncertainty of the same mass, U = k·u with k = 2.26 is 0.00079 g.
    '100.02147 g ± 0.000791 g (k = 2.26)',
  ])('%s is normal', (text) => {
    const { value, spread } = quantity(text, 'mass');
    expect(value).toBe(0.10002147);
    expect(spread?.shape).toBe('normal');
    expect(u(text, 'mass')).toBeCloseTo(0.35e-6, 12);
  });

  test('digits in brackets count in the last place, exponents and offsets included', () => {
    expect(u('5.02(3) mΩ', 'resistance')).toBe(3e-5);
    expect(u('5.02(13)e-3 Ω', 'resistance')).toBe(1.3e-4);
    expect(u('1200(30) W', 'power')).toBe(30);
    expect(u('25.0(5) degC', 'temperature')).toBe(0.5);
    expect(value('25.0(5) degC', 'temperature')).toBe(298.15);
  });

  test('a small guess is normal; a large one about a positive quantity keeps its relative deviation as a log-normal one, with the written value as median', () => {
    expect(quantity('45 um ~ 3 um', 'length').spread).toEqual({ shape: 'normal', u: 3e-6 });
    expect(quantity('45 um ~ 10 %', 'length').spread?.shape).toBe('normal');
    const wide = quantity('45 um ~ 30 %', 'length');
    expect(wide.value).toBe(45e-6);
    // A log-normal's coefficient of variation is sqrt(exp(σ²) − 1) (Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 1, ch. 14).
    if (wide.spread?.shape !== 'log-normal') throw new Error('not log-normal');
    expect(Math.sqrt(Math.exp(wide.spread.sigma ** 2) - 1)).toBeCloseTo(0.3, 12);
    // The bound is 20 % as written, however the product of value and share would be rounded.
    for (const text of ['5 W ~ 20 %', '0.7 W ~ 20 %', '0.7 W ~ 0.14 W', '0.7 ~ 0.14 W'])
      expect(quantity(text, 'power').spread?.shape).toBe('log-normal');
    expect(quantity('0 W ~ 3 W', 'power').spread).toEqual({ shape: 'normal', u: 3 });
    expect(quantity('1 V ~ 30 %', 'voltage').spread).toEqual({ shape: 'normal', u: 0.3 });
    expect(quantity('45 um (sigma=0.25)', 'length').spread).toEqual({ shape: 'log-normal', sigma: 0.25 });
  });
});

describe('what can be meant in two ways, or not at all, is refused with its place', () => {
  test.each<[string, KindName, string, string]>([
    ['5 mΩ', 'temperature', 'quantity/wrong-dimension', 'mΩ'],
    ['  5 kohm', 'power', 'quantity/wrong-dimension', 'kohm'],
    ['30 deg', 'ratio', 'quantity/wrong-dimension', 'deg'],
    ['30 %', 'angle', 'quantity/wrong-dimension', '%'],
    ['600 %', 'count', 'quantity/wrong-dimension', '%'],
    ['5', 'resistance', 'quantity/missing-unit', '5'],
    ['5 ± 1 %', 'resistance', 'quantity/missing-unit', '5 ± 1 %'],
    ['5 V ± 1', 'voltage', 'quantity/missing-unit', '1'],
    ['5 mOmh', 'resistance', 'quantity/unknown-unit', 'mOmh'],
    [`5 ${'('.repeat(150)}`, 'resistance', 'quantity/unknown-unit', '('.repeat(150)],
    [`5 ${' '.repeat(1e6)}..`, 'resistance', 'quantity/not-a-number', ''],
    ['4 R', 'resistance', 'quantity/unknown-unit', 'R'],
    ['5 mΩ about', 'resistance', 'quantity/unknown-unit', 'mΩ about'],
    ['5 mΩ ± 1 % or so', 'resistance', 'quantity/unknown-unit', '% or so'],
    ['1,5 V', 'voltage', 'quantity/comma', '1,5'],
    ['1,000 V', 'voltage', 'quantity/comma', '1,000'],
    [',5 V', 'voltage', 'quantity/comma', ',5'],
    ['5 V ± 0,5 %', 'voltage', 'quantity/comma', '0,5'],
    ['0.4..0,6 K/W', 'thermal-resistance', 'quantity/comma', '0.4..0,6'],
    ['1 000 V', 'voltage', 'quantity/split-number', '1 000 V'],
    ["1'000 V", 'voltage', 'quantity/split-number', "1'000 V"],
    ['1_000 V', 'voltage', 'quantity/split-number', '1_000 V'],
    ['NaN V', 'voltage', 'quantity/not-a-number', 'NaN V'],
    ['Infinity V', 'voltage', 'quantity/not-a-number', 'Infinity V'],
    ['0x10 V', 'voltage', 'quantity/not-a-number', '0x10 V'],
    ['1.2.3 V', 'voltage', 'quantity/not-a-number', '1.2.3 V'],
    ['', 'voltage', 'quantity/not-a-number', ''],
    ['mΩ', 'resistance', 'quantity/not-a-number', 'mΩ'],
    ['1e999 V', 'voltage', 'quantity/out-of-reach', '1e999'],
    ['1e-400 V', 'voltage', 'quantity/out-of-reach', '1e-400'],
    ['1e-999999999 V ± 1 V', 'voltage', 'quantity/out-of-reach', '1e-999999999'],
    ['-300 degC', 'temperature', 'quantity/below-absolute-zero', '-300'],
    ['-1..300 K', 'temperature', 'quantity/below-absolute-zero', '-1'],
    ['25 degC ± 1 %', 'temperature', 'quantity/percent-of-temperature', '1 %'],
    ['30 degC', 'temperature-difference', 'quantity/scale-for-difference', 'degC'],
    ['90 ± 2 %', 'ratio', 'quantity/ambiguous-tolerance', '2 %'],
    ['0.9 ± 2 %', 'ratio', 'quantity/ambiguous-tolerance', '2 %'],
    ['90 % ± 0.02', 'ratio', 'quantity/missing-unit', '0.02'],
    ['5 m Ω', 'resistance', 'quantity/wrong-dimension', 'm Ω'],
    ['5 V ± 1 A', 'voltage', 'quantity/wrong-dimension', 'A'],
    ['5 V..6 A', 'voltage', 'quantity/wrong-dimension', 'A'],
    ['5..6..7 V', 'voltage', 'quantity/not-a-number', '5..6..7 V'],
    ['5 - 6 V', 'voltage', 'quantity/bad-tolerance', '- 6 V'],
    ['5\u20136 V', 'voltage', 'quantity/bad-tolerance', '\u20136 V'],
    ['5 V -5 % +10 %', 'voltage', 'quantity/bad-tolerance', '-5 % +10 %'],
    ['5 V +0 % -0 %', 'voltage', 'quantity/bad-tolerance', '+0 % -0 %'],
    ['5 V ± 0 V', 'voltage', 'quantity/bad-tolerance', '0 V'],
    ['5 V +1 V -1e-400 V', 'voltage', 'quantity/bad-tolerance', '1e-400 V'],
    ['5 V ± 1e-20 V', 'voltage', 'quantity/bad-tolerance', '1e-20 V'],
    ['5 V ± 1e999999 V', 'voltage', 'quantity/out-of-reach', '1e999999 V'],
    ['5 V ~ 3 % (k=2)', 'voltage', 'quantity/bad-tolerance', 'k=2'],
    ['5 V +10 % -5 % (k=2)', 'voltage', 'quantity/bad-tolerance', 'k=2'],
    ['5 V ± 1 % ± 2 %', 'voltage', 'quantity/two-uncertainties', '± 2 %'],
    ['5 ± 1 ohm ± 2 ohm', 'resistance', 'quantity/two-uncertainties', '± 2 ohm'],
    ['5.02(3)..6 mΩ', 'resistance', 'quantity/two-uncertainties', '5.02(3)..6 mΩ'],
    ['0.4..0.6 K/W ± 10 %', 'thermal-resistance', 'quantity/two-uncertainties', '0.4..0.6 K/W ± 10 %'],
    ['0.6..0.4 K/W', 'thermal-resistance', 'quantity/bad-range', '0.6..0.4 K/W'],
    ['5 V ±', 'voltage', 'quantity/bad-tolerance', ''],
    ['5 V ± -1 %', 'voltage', 'quantity/bad-tolerance', '-1 %'],
    ['0 V ± 1 %', 'voltage', 'quantity/bad-tolerance', '1 %'],
    ['5 V +10 %', 'voltage', 'quantity/bad-tolerance', '+10 %'],
    ['5 V ± 1 V (k=0)', 'voltage', 'quantity/bad-tolerance', 'k=0'],
    ['5.02(3) mΩ ± 1 %', 'resistance', 'quantity/two-uncertainties', '1 %'],
    ['5.02(0) mΩ', 'resistance', 'quantity/bad-tolerance', '5.02(0)'],
    ['5 V ± 1 % (triangle)', 'voltage', 'quantity/unknown-shape', '(triangle)'],
    ['5 V ± 1 V (96 %)', 'voltage', 'quantity/unknown-shape', '(96 %)'],
    ['5 V ± 1 V (95 %, 9 dof)', 'voltage', 'quantity/bad-shape', '(95 %, 9 dof)'],
    ['5 V ~ 1 V (95 %)', 'voltage', 'quantity/bad-tolerance', '95 %'],
    ['4..6 V (95 %)', 'voltage', 'quantity/bad-shape', '(95 %)'],
    ['5 V (triangular)', 'voltage', 'quantity/bad-shape', '(triangular)'],
    ['5.02(3) V (triangular)', 'voltage', 'quantity/bad-shape', '(triangular)'],
    ['5 V ± 1 % (9 dof)', 'voltage', 'quantity/bad-shape', '(9 dof)'],
    ['5 W ~ 30 % (9 dof)', 'power', 'quantity/bad-shape', '(9 dof)'],
    ['5.02(3) V (k=2)', 'voltage', 'quantity/bad-shape', '(k=2)'],
    ['5.02(3) V (1 readings)', 'voltage', 'quantity/bad-shape', '1 readings'],
    ['5.02(3) V (0 dof)', 'voltage', 'quantity/bad-shape', '0 dof'],
    ['5 V ± 1 V (k=2, 3 dof, 4 dof)', 'voltage', 'quantity/bad-shape', '(k=2, 3 dof, 4 dof)'],
    ['5 V ± 1 V (k=2, triangular)', 'voltage', 'quantity/bad-shape', '(k=2, triangular)'],
    ['5 V ± 1 V (triangular, flat ± 0.5 V)', 'voltage', 'quantity/bad-shape', '(triangular, flat ± 0.5 V)'],
    ['5 V ± 1 V (flat 0.5 V)', 'voltage', 'quantity/bad-shape', '0.5 V'],
    ['5 V ± 1 V (flat ± 1 V)', 'voltage', 'quantity/shape-too-wide', '± 1 V'],
    ['5 V ± 1 V (limits ± 1.1 V)', 'voltage', 'quantity/shape-too-wide', '± 1.1 V'],
    ['5 V ± 1 V (limits ± 0 V)', 'voltage', 'quantity/bad-tolerance', '0 V'],
    ['5 V ± 1 V (limits ± 1 A)', 'voltage', 'quantity/wrong-dimension', 'A'],
    ['5 V ± 1 V (without ± 1 V)', 'voltage', 'quantity/shape-too-wide', '± 1 V'],
    ['5 V ± 1 V (without 3..5 V)', 'voltage', 'quantity/shape-too-wide', '3..5 V'],
    ['5 V ± 1 V (without 5..4.5 V)', 'voltage', 'quantity/bad-range', '5..4.5 V'],
    ['5 V ± 1 V (without 4.5..5 A)', 'voltage', 'quantity/wrong-dimension', 'A'],
    ['25 degC ± 2 K (flat ± 1 %)', 'temperature', 'quantity/percent-of-temperature', '1 %'],
    ['10 V or 10 V', 'voltage', 'quantity/bad-choice', '10 V or 10 V'],
    ['one of 10 V', 'voltage', 'quantity/bad-choice', 'one of 10 V'],
    ['one of', 'voltage', 'quantity/bad-choice', ''],
    ['10 V (50 %) or 12 V', 'voltage', 'quantity/bad-choice', '10 V (50 %) or 12 V'],
    ['10 V (50 %) or 12 V (40 %)', 'voltage', 'quantity/bad-choice', '10 V (50 %) or 12 V (40 %)'],
    ['10 V (100 %) or 12 V (0 %)', 'voltage', 'quantity/bad-choice', '10 V (100 %) or 12 V (0 %)'],
    ['10 V or 12 V ± 1 %', 'voltage', 'quantity/bad-choice', '12 V ± 1 %'],
    ['10.0(1) V or 12 V', 'voltage', 'quantity/bad-choice', '10.0(1) V'],
    ['10 V or 12 A', 'voltage', 'quantity/wrong-dimension', 'A'],
    ['0.9 or 80 %', 'ratio', 'quantity/bad-choice', '0.9 or 80 %'],
    ['10 or 12', 'voltage', 'quantity/missing-unit', '10 or 12'],
    ['10 V or 12,5 V', 'voltage', 'quantity/comma', '12,5'],
    ['-5 V (sigma=0.3)', 'voltage', 'quantity/bad-tolerance', '(sigma=0.3)'],
  ])('%s for %s: %s', (text, kind, code, marked) => {
    const refused = refusal(text, kind);
    expect(refused.code).toBe(code);
    if (marked !== '') expect(refused.marked).toBe(marked);
  });

  test.each<[string, KindName, string]>([
    ['5 mOmh', 'resistance', 'mohm'],
    ['5 kOhms', 'resistance', 'kohm'],
    ['5 amp', 'current', 'A'],
    ['5 MHZ', 'frequency', 'MHz'],
    ['5 K/w', 'thermal-resistance', 'K/W'],
  ])('%s: the nearest unit of that kind is named', (text, kind, near) => {
    const read = readQuantity(text, kind);
    expect(!read.ok && read.fault.data.near).toBe(near);
  });
});

test.each(Object.entries(kinds))('%s: its example and its SI unit are read', (kind, { example, siUnit }) => {
  for (const each of example.split(' or ')) expect(readQuantity(each, kind as KindName).ok).toBe(true);
  expect(value(siUnit === '1' ? '3' : `3 ${siUnit}`, kind as KindName)).toBe(3);
});
