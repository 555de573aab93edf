import { quantile } from '../metrology/distribution.ts';
import type { RandomStream } from '../numeric/random.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Spread } from '../quantity/spread.ts';
import type { Step, Study } from '../study/study.ts';

/** What the numbers of a study really are on one virtual board [SI], by path; nobody at the bench can see them. */
export type HiddenValues = ReadonlyMap<string, number>;

/** Draws every number of a study from what the study says about it; a number that stays from step to step is drawn once. */
export function drawHidden(study: Study, random: RandomStream): HiddenValues {
  const values = new Map<string, number>();
  for (const { quantities } of study.steps)
    for (const [quantity, path] of quantities)
      if (!values.has(path)) values.set(path, drawOf(quantity.value, quantity.spread, random));
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
