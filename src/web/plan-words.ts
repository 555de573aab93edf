import type { Dial, StepPlan } from '../steps/step-plan.ts';

/** What the page asks of a worker. The study goes as text: numbers in a read study know their addresses by identity, which a copy loses. */
export interface PlanJob {
  readonly file: string;
  readonly text: string;
  readonly steps: readonly string[];
  readonly samples: number;
  readonly seed: number;
  readonly dial?: Dial;
}

/** What it hears back. */
export type PlanWord =
  | { readonly kind: 'progress'; readonly step: string; readonly share: number }
  | { readonly kind: 'plan'; readonly plan: StepPlan }
  | { readonly kind: 'done' };
