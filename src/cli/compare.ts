import { Refusal, refuse } from '../fault/fault.ts';
import { type Comparison, compareSamples } from '../metrology/comparison.ts';
import { differenceByPooling } from '../metrology/mean-difference.ts';
import type { QuantileDefinition } from '../metrology/quantile.ts';
import { rankSum } from '../metrology/rank-sum.ts';
import { adjustByBenjaminiHochberg, adjustByHolm } from '../metrology/several-tests.ts';
import { compareRuns } from './compare-runs.ts';
import { comparisonText, writePlain } from './comparison-text.ts';
import type { Outcome } from './envelope.ts';
import { type NamedSample, readSampleFile, readSampleList } from './read-sample.ts';

export interface CompareOptions {
  readonly before?: string;
  /** Each is compared with what was before. */
  readonly after?: readonly string[];
  readonly paired?: boolean;
  /** Per cent. */
  readonly confidence?: number;
  /** A share below, such as 0.01, whose quantile is compared as well. */
  readonly quantile?: number;
  readonly definition?: number;
  readonly seed?: number;
  /** The study whose runs are compared in place of samples. */
  readonly study?: string;
  readonly channel?: string;
}

/** One comparison with its samples' names, and its chance adjusted for the others. */
export interface NamedComparison extends Comparison {
  readonly names: readonly [before: string, after: string];
  /** Probability adjusted by Holm for the number of comparisons made together. */
  readonly chanceAmongAll: number;
}

/** The `compare` verb: one sample, or run, with others; whether a difference shows and how large it may be. */
export async function runCompare(named: readonly string[], options: CompareOptions): Promise<Outcome> {
  const confidence = (options.confidence ?? 95) / 100;
  if (options.study !== undefined) {
    if (options.before !== undefined || options.after !== undefined)
      throw new Refusal(refuse('compare/two-ways', { one: '--study', other: 'numbers' }));
    return compareRuns(options.study, named, options.channel, confidence);
  }
  const [before, ...others] = await samplesOf(named, options);
  const paired = options.paired ?? false;
  const rule = {
    paired,
    confidence,
    seed: options.seed ?? 1,
    quantile:
      options.quantile === undefined
        ? null
        : { p: options.quantile, definition: (options.definition ?? 8) as QuantileDefinition },
  };
  const made = others.map((after) => {
    const names = { before: before.name, after: after.name };
    if (paired && before.values.length !== after.values.length) {
      const counts = { one: before.values.length, other: after.values.length };
      throw new Refusal(refuse('compare/not-pairs', { ...names, ...counts }));
    }
    const comparison = compareSamples(before.values, after.values, rule);
    if (comparison.difference) return { names: [names.before, names.after] as const, ...comparison };
    const apart = writePlain(comparison.after.mean - comparison.before.mean, null);
    throw new Refusal(refuse('compare/no-scatter', { ...names, difference: apart, paired: paired ? 1 : 0 }));
  });
  const chances = made.map(({ difference }) => difference!.chance);
  const [holm, rates] = [adjustByHolm(chances), adjustByBenjaminiHochberg(chances)];
  const comparisons = made.map((comparison, k): NamedComparison => ({ ...comparison, chanceAmongAll: holm[k] }));
  const text = comparisons.map((comparison) => comparisonText(comparison, rule, comparisons.length));
  const results = comparisons.map((comparison, k) => ({
    ...comparison,
    falseDiscoveryRate: rates[k],
    pooled: paired ? null : differenceByPooling(comparison.before, comparison.after, confidence),
    ranks: paired ? null : rankSum(before.values, others[k].values),
  }));
  return { text: text.join('\n\n'), json: { ...rule, comparisons: results }, exit: 0 };
}

async function samplesOf(files: readonly string[], { before, after = [] }: CompareOptions): Promise<NamedSample[]> {
  const listed = before !== undefined || after.length > 0;
  if (listed && files.length > 0)
    throw new Refusal(refuse('compare/two-ways', { one: 'a file', other: '--before or --after' }));
  if (listed ? before === undefined || after.length === 0 : files.length < 2)
    throw new Refusal(refuse('compare/samples-missing'));
  if (!listed) return Promise.all(files.map(readSampleFile));
  const many = after.length > 1;
  const samples = after.map((text, k) => {
    const sample = readSampleList('--after', text);
    return many ? { ...sample, name: `after ${k + 1}` } : sample;
  });
  return [readSampleList('--before', before!), ...samples];
}
