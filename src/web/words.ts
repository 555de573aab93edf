import type { ChartState } from '../charts/state-mark.ts';
import type { Figure, LimiterState, Margin, StepPlan } from '../steps/step-plan.ts';

/** A text for the eye and the ear, with true minus signs; what is copied keeps those that programs read. */
export function withMinus(text: string): string {
  return text.replace(/(^|\s)-(?=\d)/g, '$1−');
}

/** A figure without its uncertainty: "54.3 W" of "54.3 W ± 0.8 W". */
export function bareFigure({ text }: Figure): string {
  return withMinus(text.split(' ± ')[0]!);
}

/** What `bareFigure` leaves out: "± 0.8 W". A number without uncertainty is one that the calculation takes as exact. */
export function uncertaintyOf({ text }: Figure): string {
  const [, uncertainty] = text.split(' ± ');
  return uncertainty ? `± ${uncertainty}` : 'taken as exact';
}

export function intervalOf({ interval: { low, high } }: Margin): string {
  return `${low.text} … ${high.text}`;
}

/** Why a step has no operating point, in the words of the ladder. */
export function noOperatingPoint(ending: StepPlan['ending']): string {
  switch (ending) {
    case 'runaway':
      return 'no steady state: heat runs away';
    case 'infeasible':
      return 'no operating point: the supply can’t deliver it';
    default:
      return 'no operating point: the solution did not settle';
  }
}

/**
 * The limiter whose power speaks for the step: the one that holds if it counts power, or else the first regulating one that does;
 * null where none counts power.
 */
export function powerLimiter({ limiters }: StepPlan): LimiterState | null {
  const powers = limiters.filter(({ real }) => real.unit === 'W');
  return powers.find(({ holds }) => holds) ?? powers.find(({ acts }) => acts === 'regulate') ?? powers[0] ?? null;
}

/** Who holds, as a person would say it. */
export function holderWord({ operating }: StepPlan): string {
  if (!operating) return '';
  return operating.holder === 'demand' ? 'nothing but its demand' : operating.holderTitle;
}

export function bindingMargin({ margins, binding }: StepPlan): Margin | null {
  return margins.find(({ id }) => id === binding) ?? null;
}

/** How the step stands as a whole. Unknown is never kept: one open limit makes a step open that would otherwise be kept. */
export function stepState(plan: StepPlan): { readonly state: ChartState; readonly word: string } {
  if (!plan.operating) return { state: 'none', word: plan.ending === 'runaway' ? 'runs away' : 'no solution' };
  const binding = bindingMargin(plan);
  if (binding && binding.state !== 'kept') return { state: binding.state, word: binding.state };
  if (plan.open.length > 0 || !binding) return { state: 'open', word: 'open' };
  return { state: 'kept', word: 'kept' };
}

export function openWord({ open }: StepPlan): string {
  return open.length === 0 ? '' : `${open.length} unknown`;
}

/** How the figures were made. */
export function methodWord({ sampling }: StepPlan): string {
  if (!sampling) return 'first order';
  return `${grouped(sampling.samples)} samples, seed ${sampling.seed}`;
}

/** A whole number with thin spaces between thousands. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ' ');
}

/** The plan in one sentence, for those who hear the page. */
export function spokenSummary(plan: StepPlan): string {
  if (!plan.operating) return `${plan.title}: ${noOperatingPoint(plan.ending)}.`;
  const limiter = powerLimiter(plan);
  const binding = bindingMargin(plan);
  const real = limiter ? `${bareFigure(limiter.real)} real, ` : '';
  const binds = binding
    ? `${binding.title} binds: margin ${bareFigure(binding.margin)}, ${binding.state}, exceeded with ${binding.exceed.text}`
    : 'no limit has data';
  return `${plan.title}: ${real}${binds}${plan.open.length ? `; ${plan.open.length} limits unknown` : ''}.`;
}
