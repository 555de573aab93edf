import { expect, test } from 'vitest';
import { load, sketchText, supply } from '../board/sketch.test-data.ts';
import { planStep } from '../steps/plan.ts';
import { readStudy } from '../study/read.ts';
import { type BudgetQuestion, explainBudget } from './plan-budget.ts';

/** 0.3 V of the adapter and 0.4 V of the limit make 0.5 V of the margin. */
const reading = readStudy(
  sketchText({
    parts: [supply('adapter', 20).replace('voltage: 20 V', 'voltage: 20 V ± 0.6 V (k=2)'), load('rest', 'adapter', 10)],
    limits: '{mine: {of: parts.adapter.voltage, under: 21 V ± 0.8 V (k=2), reason: a test}}',
  }),
  'edge.yaml',
);
if (!reading.ok) throw new Error('the sketch reads');
const { study } = reading;
const plans = [planStep(study, 'as-is', { samples: 0, seed: 1 })];
const explain = (changed: Partial<BudgetQuestion>) =>
  explainBudget(study, plans, { limit: 'limits.mine', by: 'input', global: false, seed: 1, ...changed });

test('by input, by part, by source: the same variance', () => {
  expect(explain({}).text).toMatch(/limits\.mine\.under .* 64\.0 %\n.*parts\.adapter\.voltage .* 36\.0 %/);
  expect(explain({ by: 'part' }).text).toMatch(
    /limits\.mine +1 +0\.4 V +64\.0 %\n +parts\.adapter +1 +0\.3 V +36\.0 %/,
  );
  expect(explain({ by: 'source' }).text).toMatch(/not said +2 +0\.5 V +100\.0 %/);
});

test('over whole distributions: of a straight line the same parts, with their errors, and nothing together', () => {
  const { text, budgets } = explain({ global: true });
  expect(text).toMatch(/limits\.mine\.under +6[345]\.\d % ± \d\.\d % +6[345]\.\d % ± \d\.\d %/);
  expect(text).toMatch(/only together: -?[012]\.\d % ± \d\.\d % of the variance/);
  expect(budgets[0]).toMatchObject({ step: 'as-is', limit: 'limits.mine', global: { lost: 0, seed: 1 } });
});

test('where readings were few, the degrees of freedom and what they make of the interval', () => {
  const few = readStudy(
    sketchText({
      parts: [
        supply('adapter', 20).replace('voltage: 20 V', 'voltage: "20 V ± 0.3 V (k=1, 4 dof)"'),
        load('rest', 'adapter', 10),
      ],
      limits: '{mine: {of: parts.adapter.voltage, under: 21 V ± 0.8 V (k=2), reason: a test}}',
    }),
    'edge.yaml',
  );
  if (!few.ok) throw new Error('the sketch reads');
  const question = { limit: 'limits.mine', by: 'input', global: false, seed: 1 } as const;
  const { text, budgets } = explainBudget(few.study, [planStep(few.study, 'as-is', { samples: 0, seed: 1 })], question);
  // ν = 0.5⁴/(0.3⁴/4) = 30.9, and t₀.₉₇₅(30) = 2.04 (JCGM 100:2008, table G.2).
  expect(text).toMatch(/parts\.adapter\.voltage +20\.00 V ± 0\.30 V +4 /);
  expect(text).toMatch(/30\.9 effective degrees of freedom: .* 2\.04 u to each side/);
  expect(budgets[0]).toMatchObject({ degreesOfFreedom: expect.closeTo(0.0625 / (0.0081 / 4), 6) });
  expect(explain({}).text).not.toMatch(/degrees of freedom/);
});

test('where a margin bends, which inputs bend it or count only together', () => {
  const bent = readStudy(
    sketchText({
      parts: [
        supply('adapter', 20).replace('voltage: 20 V', 'voltage: 20 V ± 16 V (k=2)'),
        load('rest', 'adapter', 10).replace('power: 10 W', 'power: 10 W ± 4 W (k=2)'),
      ],
      limits: '{mine: {of: parts.adapter.current, under: 1 A, reason: a test}}',
    }),
    'edge.yaml',
  );
  if (!bent.ok) throw new Error('the sketch reads');
  const question = { limit: 'limits.mine', by: 'input', global: false, seed: 1 } as const;
  const plan = planStep(bent.study, 'as-is', { samples: 4096, seed: 1 });
  const { text, budgets } = explainBudget(bent.study, [plan], question);
  expect(plan.margins[0].disagree).toBe(true);
  expect(text).toMatch(/Monte Carlo; .*\n {2}second order adds parts\.adapter\.voltage \d+\.\d %, /);
  // P/U: mean P/U·(1 + u²) with u = 0.4, so the margin's is 1 − 0.5·1.16 = 0.42 A.
  expect(text).toMatch(/mean 0\.42 A ± /);
  const [made] = budgets;
  const terms = 'secondOrder' in made ? (made.secondOrder?.terms ?? []) : [];
  expect(terms.map(({ inputs }) => inputs.length)).toContain(2);
});
