import { expect, test } from 'vitest';

/** One published figure beside what a law gives for the same inputs. */
export interface Published {
  /** What it is, with its inputs. */
  readonly what: string;
  readonly computed: number;
  readonly published: number;
  /** Largest difference allowed, in the unit of the figure. */
  readonly tolerance: number;
  /** Where the tolerance comes from. */
  readonly why: string;
  /** Title, organisation, year, equation or table. */
  readonly source: string;
}

/** One test a figure: the law meets it, and a law that is one per cent off doesn't. */
export function testPublished(figures: readonly Published[]): void {
  test.each(figures.map((figure) => [figure.what, figure] as const))('%s', (_, figure) => {
    const { computed, published, tolerance, source, why } = figure;
    const differenceAt = (factor: number) => Math.abs(factor * computed - published);
    expect(differenceAt(1), `${source}; ${why}`).toBeLessThanOrEqual(tolerance);
    expect(Math.min(differenceAt(0.99), differenceAt(1.01)), 'one per cent must show').toBeGreaterThan(tolerance);
  });
}
