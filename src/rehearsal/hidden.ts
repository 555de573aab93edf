import { quantile } from '../metrology/distribution.ts';
import type { RandomStream } from '../numeric/random.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Spread } from '../quantity/spread.ts';
import type { Step, Study } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';

/** What the numbers of a study really are on one virtual board [SI], by path; nobody at the bench can see them. */
export type HiddenValues = ReadonlyMap<string, number>;

/** Draws every number of a study from what the study says about it; a number that stays from step to step is drawn once. */
export function drawHidden(study: Study, random: RandomStream): HiddenValues {
  const drawn = new Map<string, number>();
  const values = new Map<string, number>();
  for (const step of study.steps) {
    const numbers = [...step.quantities].map(([{ value, spread }, id]) => ({ id, value, spread }));
    for (const { id, value, spread } of numbers) if (!drawn.has(id)) drawn.set(id, drawOf(value, spread, random));
    const x = Float64Array.from(numbers, ({ id }) => drawn.get(id)!);
    const real = tiesOfStep(step, numbers)?.apply(x) ?? x;
    numbers.forEach(({ id }, i) => {
      if (!values.has(id)) values.set(id, real[i]);
    });
  }
  return values;
}

/** A number of the board as it really is [SI]. */
export type Truth = (quantity: Quantity) => number;

/** Reads hidden values through the quantities of a step. */
export function truthAt({ quantities }: Step, hidden: HiddenValues): Truth {
  return (quantity) => hidden.get(quantities.get(quantity)!) ?? quantity.value;
}

/** One draw from a distribution around a best value [SI]. */
function drawOf(value: number, spread: Spread | null, random: RandomStream): number {
  if (spread === null) return value;
  switch (spread.shape) {
    case 'normal':
      return value + spread.u * random.normal();
    case 'log-normal':
      return value * Math.exp(spread.sigma * random.normal());
    default:
      return quantile(spread, value, random.uniform());
  }
}
