import { expect, test } from 'vitest';
import { groupOf } from './input-groups.ts';

const partOf = (id: string) => groupOf('part', { id, source: '' });
const sourceOf = (source: string) => groupOf('source', { id: 'x', source });

test('a part, a heat link, a limiter: whatever its numbers describe', () => {
  expect(partOf('parts.core-vr.losses.points.0.loss')).toBe('parts.core-vr');
  expect(partOf('heat.links.die-plate.through.0.bond-line.area')).toBe('heat.links.die-plate');
  expect(partOf('heat.streams.blower.flow')).toBe('heat.streams.blower');
  expect(partOf('heat.ambient')).toBe('heat.ambient');
  expect(partOf('limiters.package-limit.reads.0.gain')).toBe('limiters.package-limit');
  expect(partOf('demand.crest')).toBe('demand');
});

test('a source by its kind, and one in other words by itself', () => {
  expect(sourceOf('data sheet, page 4')).toBe('data sheet');
  expect(sourceOf('invented data sheet')).toBe('data sheet');
  expect(sourceOf('Measured with four wires')).toBe('measured');
  expect(sourceOf('estimated from a test with a dummy load')).toBe('estimated');
  expect(sourceOf('read from the label')).toBe('read from the label');
  expect(sourceOf('')).toBe('not said');
});
