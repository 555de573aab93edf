import { describe, expect, test } from 'vitest';
import type { KindName } from '../../quantity/kind.ts';
import { readQuantity } from '../../quantity/read.ts';
import { asModel, type Formula } from '../formula.ts';
import { diePressureFormula } from './mechanics/die-pressure.ts';
import { padCompressionFormula } from './mechanics/pad-compression.ts';
import { plateTiltFormula } from './mechanics/plate-tilt.ts';
import { preloadTorqueFormula } from './mechanics/preload-torque.ts';
import { screwStressFormula } from './mechanics/screw-stress.ts';
import { springRateFormula } from './mechanics/spring-rate.ts';
import { stackUpFormula } from './mechanics/stack-up.ts';
import { torquePreloadFormula } from './mechanics/torque-preload.ts';

/** A formula's example with some inputs changed: how it ends, its results by name [SI], and what it warns of. */
function evaluate(formula: Formula, changes: Readonly<Record<string, string>> = {}) {
  const read = (text: string, kind: KindName) => {
    const reading = readQuantity(text, kind);
    if (!reading.ok) throw new Error(text);
    return reading.quantity;
  };
  const given = { ...formula.example.inputs, ...changes };
  const model = asModel(
    formula,
    Object.fromEntries(formula.inputs.map(({ name, kind }) => [name, read(given[name], kind)])),
  );
  const x = Float64Array.from(model.inputs, ({ value }) => value);
  const y = new Float64Array(model.outputs.length);
  const { ending } = model.evaluate(x, y);
  return {
    ending,
    result: Object.fromEntries(formula.outputs.map(({ name }, i) => [name, y[i]])) as Record<string, number>,
    warnings: formula.valid.filter((condition) => !condition.holds(x)).length,
  };
}

describe('results that no example shows', () => {
  test('stack-up: 20 − 10 − 5 = 5 mm, and 0.35 mm either way', () => {
    const { gap, least, greatest } = evaluate(stackUpFormula).result;
    expect([gap, least, greatest].map((value) => Math.round(value * 1e8) / 1e5)).toEqual([5, 4.65, 5.35]);
  });

  test('pad: nothing without contact', () => {
    expect(evaluate(padCompressionFormula, { space: '1.2 mm' })).toMatchObject({
      result: { pressure: 0, force: 0 },
      warnings: 2,
    });
    expect(evaluate(padCompressionFormula, { space: '1 mm' }).result).toEqual({ strain: 0, pressure: 0, force: 0 });
  });

  // (d2/2)·(π·f·d2 − P)/(π·d2 + f·P) + μ·dh/2 with f = 0.115470, d2 = 7.350481 mm, worked out by hand.
  test('preload-torque: M8×1 loosens at 16.1 N·m, and its nut factor is 0.1378', () => {
    const { result } = evaluate(preloadTorqueFormula);
    expect(result.loosening).toBeCloseTo(16.139, 2);
    expect(result['nut-factor']).toBeCloseTo(0.13778, 4);
  });

  test('plate-tilt: 533.3 and 266.7 N sink by 106.7 and 53.3 mm', () => {
    const { result } = evaluate(plateTiltFormula);
    expect(result['first-force']).toBeCloseTo(1600 / 3, 9);
    expect(result['second-force']).toBeCloseTo(800 / 3, 9);
    expect(result['first-sink']).toBeCloseTo(0.32 / 3, 12);
    expect(result['second-sink']).toBeCloseTo(0.16 / 3, 12);
  });

  test('die-pressure: a quarter of the width off, a quarter has lifted', () => {
    const { result, warnings } = evaluate(diePressureFormula, { offset: '3.75 mm' });
    expect(result.contact).toBeCloseTo(0.75, 12);
    expect(result.lowest).toBe(0);
    expect(warnings).toBe(1);
  });
});

describe('where they refuse, and where they warn', () => {
  test.each([
    [diePressureFormula, { offset: '7.5 mm' }],
    [padCompressionFormula, { 'strain-1': '40 %' }],
    [padCompressionFormula, { 'pressure-2': '100 kPa' }],
    [plateTiltFormula, { position: '3.1 m' }],
    [preloadTorqueFormula, { pitch: '4 mm' }],
    [preloadTorqueFormula, { 'thread-friction': '1' }],
    [screwStressFormula, { pitch: '1.5 mm' }],
    [springRateFormula, { coil: '5 mm' }],
    [torquePreloadFormula, { diameter: '0 mm' }],
  ] as const)('%#: infeasible', (formula, changes) => {
    expect(evaluate(formula, changes).ending).toBe('infeasible');
  });

  test.each([
    [diePressureFormula, { offset: '2.5 mm' }, 0],
    [diePressureFormula, { offset: '2.6 mm' }, 1],
    [padCompressionFormula, { space: '0.56 mm', 'strain-2': '50 %' }, 0],
    [padCompressionFormula, { space: '0.54 mm', 'strain-2': '50 %' }, 1],
    [padCompressionFormula, { space: '0.81 mm', 'strain-1': '10 %' }, 1],
    [padCompressionFormula, { space: '0.72 mm', 'strain-1': '29 %' }, 1],
    [padCompressionFormula, { space: '0.58 mm' }, 1],
    [plateTiltFormula, { force: '4000 N' }, 1],
    [plateTiltFormula, { force: '3900 N' }, 0],
    [preloadTorqueFormula, { 'thread-friction': '0.04' }, 1],
    [preloadTorqueFormula, { 'head-friction': '0.31' }, 1],
    [preloadTorqueFormula, { 'thread-friction': '0.05', 'head-friction': '0.3' }, 0],
    [screwStressFormula, { diameter: '0.9 mm', pitch: '0.2 mm' }, 1],
    [screwStressFormula, { diameter: '1 mm', pitch: '0.2 mm' }, 0],
    [screwStressFormula, { diameter: '40 mm' }, 1],
    [screwStressFormula, { diameter: '39 mm' }, 0],
    [springRateFormula, { coil: '19 mm' }, 1],
    [springRateFormula, { coil: '20 mm' }, 0],
    [springRateFormula, { coil: '100 mm' }, 0],
    [springRateFormula, { coil: '101 mm' }, 1],
    [springRateFormula, { coils: '1.9' }, 1],
    [springRateFormula, { coils: '2' }, 0],
    [stackUpFormula, { 'plate-tolerance': '21 mm' }, 1],
    [stackUpFormula, { 'component-tolerance': '11 mm' }, 1],
    [stackUpFormula, { 'pad-tolerance': '6 mm' }, 1],
    [stackUpFormula, { 'pad-tolerance': '5 mm' }, 0],
    [torquePreloadFormula, { 'nut-factor': '0.07' }, 1],
    [torquePreloadFormula, { 'nut-factor': '0.08' }, 0],
    [torquePreloadFormula, { 'nut-factor': '0.35' }, 0],
    [torquePreloadFormula, { 'nut-factor': '0.36' }, 1],
  ] as const)('%#: warnings', (formula, changes, warnings) => {
    expect(evaluate(formula, changes)).toMatchObject({ ending: 'solved', warnings });
  });
});
