import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { randomStream } from '../numeric/random.ts';
import { readStudy } from '../study/read.ts';
import { drawHidden } from './hidden.ts';

const small = readFileSync('test/boards/small.yaml', 'utf8');
const resistance = 'parts.core-sense.fitted.0.resistance';

const drawn = (more: string) => {
  const reading = readStudy(`${small}\n${more}`, 'study.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return drawHidden(reading.study, randomStream(7));
};

test('what a virtual board hides follows from what its numbers share', () => {
  const apart = drawn('shared: {meter: {factor: 100 % ± 20 %, of: [parts.core-sense.fitted.0.joint]}}\n');
  const together = drawn(`shared: {meter: {factor: 100 % ± 20 %, of: [${resistance}]}}\n`);
  const factor = together.get('shared.meter.factor')!;
  expect(factor).toBe(apart.get('shared.meter.factor'));
  expect(Math.abs(factor - 1)).toBeGreaterThan(0.001);
  expect(together.get(resistance)).toBe(factor * apart.get(resistance)!);
});

test('fully correlated numbers are off by as many of their uncertainties', () => {
  const values = drawn(`correlations: [{between: [demand.crest, ${resistance}], coefficient: -1}]\n`);
  // 1.1 ± 0.05 and 5 mΩ ± 1 %, both rectangles: the shares of their widths are opposite.
  const off = (values.get('demand.crest')! - 1.1) / 0.05;
  expect(Math.abs(off)).toBeGreaterThan(0.001);
  expect((values.get(resistance)! - 0.005) / 5e-5).toBeCloseTo(-off, 9);
});
