import type { Dial, StepPlan } from '../steps/step-plan.ts';

/** What the page asks of the sampling worker. The study goes as text: reading it again is quicker than copying what it became. */
export interface SamplingJob {
  readonly file: string;
  readonly text: string;
  readonly steps: readonly string[];
  readonly samples: number;
  readonly seed: number;
  readonly dial?: Dial;
}

/** What it hears back. */
export type SamplingWord =
  | { readonly kind: 'progress'; readonly step: string; readonly share: number }
  | { readonly kind: 'plan'; readonly plan: StepPlan }
  | { readonly kind: 'done' };
