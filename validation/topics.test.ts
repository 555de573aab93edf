/// <reference types="vite/types/importMeta.d.ts" />
import { describe, expect, test } from 'vitest';
import type { Topic } from './topic.ts';

const modules = import.meta.glob<{ topic: Topic }>('./topics/*.ts', { eager: true });
const topics = Object.values(modules).map(({ topic }) => topic);

describe.each(topics.map((topic) => [topic.title, topic] as const))('%s', (_, { figures, traps = [] }) => {
  test('figures have their own names', () => {
    const names = [...figures, ...traps].map(({ what }) => what);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  test.each(figures.map((figure) => [figure.what, figure] as const))('%s', (_, figure) => {
    const { computed, published, tolerance, source, why, coarse } = figure;
    const differenceAt = (factor: number) => Math.abs(factor * computed - published);
    expect(differenceAt(1), `${source}; ${why}`).toBeLessThanOrEqual(tolerance);
    const onePerCent = Math.min(differenceAt(0.99), differenceAt(1.01));
    if (coarse === undefined) expect(onePerCent, 'one per cent must show').toBeGreaterThan(tolerance);
    else expect(onePerCent, 'one per cent shows; "coarse" is not needed').toBeLessThanOrEqual(tolerance);
  });

  test.each(traps.map((trap) => [trap.what, trap] as const))('not met: %s', (_, trap) => {
    const { computed, published, tolerance, why, reason } = trap;
    expect(Number.isFinite(computed)).toBe(true);
    expect(tolerance, why).toBeGreaterThan(0);
    expect(Math.abs(computed - published), `${reason}; ${why}`).toBeGreaterThan(tolerance);
  });
});
