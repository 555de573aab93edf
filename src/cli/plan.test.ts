import { expect, test } from 'vitest';
import { runPlan } from './plan.ts';

test('drawn until accurate, a plan says so, and each margin its method', async () => {
  const { text, json } = await runPlan('examples/accelerator', { step: 'as-delivered', samples: 'auto', seed: 3 });
  expect(text).toMatch(/draws with seed 3 until the near margins are accurate/);
  expect(text).toMatch(/\d+ draws in \d+ blocks: \d+ near margins? accurate to a tenth of the first digit of u/);
  const { steps } = json as {
    steps: { margins: { why: string; shortest: { low: { value: number }; high: { value: number } } }[] }[];
  };
  for (const { why, shortest } of steps[0].margins) {
    expect(why).toMatch(/^(first order, as|second order, as|Monte Carlo;)/);
    expect(shortest.low.value).toBeLessThan(shortest.high.value);
  }
});
