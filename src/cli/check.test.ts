import { expect, test } from 'vitest';
import { runCheck } from './check.ts';

test('a sound study: what is open and what has no uncertainty, each with its line, and a line that sums up', async () => {
  const { text, exit } = await runCheck('test/boards/small.yaml');
  expect(text).toBe(`numbers without an uncertainty:
  line 5: demand.scale: "10" has no uncertainty

test/boards/small.yaml: no faults, 2 steps, no open ratings, 1 number without uncertainty`);
  expect(exit).toBe(0);
});

test('the mini-PC reads without faults, every number has an uncertainty, and what nobody knows is open', async () => {
  const { json, exit } = await runCheck('examples/mini-pc');
  const { faults, open, warnings, steps } = json as Record<string, { data: { field: string } }[]>;
  expect({ exit, faults, warnings }).toEqual({ exit: 0, faults: [], warnings: [] });
  expect(open.map(({ data }) => data.field)).toEqual([
    'parts.fuse.rated-current',
    'parts.core.rated-current',
    'heat.nodes.network.limit',
  ]);
  expect(steps).toEqual(['as-delivered', 'stacked-22', 'stacked-12', 'stacked-9']);
});
