import { type Shared, type TiedInput, type Ties, tiesOf } from '../metrology/ties.ts';
import type { Step } from './study.ts';

/** What the numbers of a step have in common, as its study says; null when nothing. `inputs`: the numbers, in the order of the vector to come. */
export function tiesOfStep({ board, quantities }: Step, inputs: readonly TiedInput[]): Ties | null {
  const { shared = {}, correlations = [] } = board;
  const entering = Object.values(shared).map((entry): Shared => {
    const enters = 'factor' in entry ? 'factor' : 'offset';
    return { input: quantities.get('factor' in entry ? entry.factor : entry.offset)!, enters, of: entry.of };
  });
  return tiesOf(inputs, entering, correlations);
}
