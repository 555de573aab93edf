import { expect, test } from 'vitest';
import { isByHand, workOf } from './work.ts';

const resistor = { resistance: '22 mohm ± 1 %', 'rated-power': '0.5 W' };
const bondLine = { 'yield-stress': '80 Pa ~ 30 %', conductivity: '5.5 W/(m*K) ± 15 %' };

test.each([
  ['a resistor where none was', 'parts.a.fitted.1', undefined, resistor, 'resistor-added'],
  ['a resistor taken off', 'parts.a.fitted.1', resistor, undefined, 'resistor-removed'],
  [
    'a resistor for a resistor',
    'parts.a.fitted.0',
    resistor,
    { ...resistor, resistance: '9 mohm' },
    'resistor-replaced',
  ],
  ['all of them', 'parts.a.fitted', [resistor], [resistor, resistor], 'resistor-replaced'],
  ['its resistance alone', 'parts.a.fitted.0.resistance', '5 mohm ± 1 %', '4 mohm ± 1 %', 'resistor-replaced'],
  ['its resistance, measured', 'parts.a.fitted.0.resistance', '5 mohm ± 1 %', '4.98(1) mohm', 'number'],
  [
    'the same figure from another data sheet is another part',
    'parts.a.fitted.0.resistance',
    '5 mohm ± 1 %',
    { value: '5 mohm ± 0.5 %', source: 'data sheet' },
    'resistor-replaced',
  ],
  [
    'its resistance, beyond what was known',
    'parts.a.fitted.0.resistance',
    '5 mohm ± 1 %',
    '5.06(1) mohm',
    'resistor-replaced',
  ],
  ['its resistance, known worse', 'parts.a.fitted.0.resistance', '5 mohm ± 1 %', '5 mohm ± 2 %', 'resistor-replaced'],
  ['the joint of the one that is there', 'parts.a.fitted.0.joint', '0.1 mohm ~ 50 %', '0.3 mohm ~ 50 %', 'number'],
  ['a divider on the sense lines', 'parts.a.divider', undefined, { series: '20 ohm', parallel: '100 ohm' }, 'divider'],
  ['another adapter', 'parts.adapter.rated-power', '120 W', '150 W', 'part'],
  ['the name of a part', 'parts.adapter.title', 'Adapter', 'Old adapter', 'number'],
  ['paste, by its path', 'heat.links.a.through.0.bond-line', bondLine, { ...bondLine, area: '1 cm^2' }, 'interface'],
  ['paste, by what it becomes', 'heat.links.a.through.0', { 'bond-line': bondLine }, { contact: {} }, 'interface'],
  ['a pad, by its material', 'heat.links.a.through.0', { layer: {} }, { layer: { material: 'pad' } }, 'pad'],
  ['a pad, by the name of its link', 'heat.links.stage-pad.through.0.layer.thickness', '1 mm', '2 mm', 'pad'],
  ['a sheet of a named material', 'heat.links.a.through.0', {}, { layer: { material: 'graphite' } }, 'interface'],
  ['a spreader', 'heat.links.a.through.1.spreading.thickness', '2 mm', '3 mm', 'cooling'],
  ['a blower', 'heat.streams.blower.flow', '12 CFM ± 15 %', '18 CFM ± 15 %', 'fan'],
  ['a pad under the plate', 'plate.pads.memory.thickness', '1 mm', '1.5 mm', 'pad'],
  ['a screw of the plate', 'plate.screws.a.force', '20 N', '30 N', 'cooling'],
  ['what the firmware allows', 'limiters.package.allowed', '54 W', '60 W', 'setting'],
  ['the room', 'heat.ambient', '25 degC ± 2 K', '30 degC ± 2 K', 'number'],
  ['a limit', 'heat.nodes.die.limit', '100 degC', '95 degC', 'number'],
  ['a limit of one’s own', 'limits.skin.under', '48 degC', '45 degC', 'number'],
])('%s', (_, at, before, after, work) => {
  expect(workOf({ at, before, after })).toBe(work);
});

test('figures and settings are no work by hand, everything else is', () => {
  expect(['number', 'setting'].map((work) => isByHand(work as 'number'))).toEqual([false, false]);
  expect(['resistor-added', 'pad', 'fan', 'part', 'divider'].map((work) => isByHand(work as 'pad'))).not.toContain(
    false,
  );
});
