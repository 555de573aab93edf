import type { ComparisonRule, SampleCheck } from '../metrology/comparison.ts';
import { quantileDefinitions } from '../metrology/quantile.ts';
import type { Ratio } from '../metrology/ratio.ts';
import { adjustByHolm } from '../metrology/several-tests.ts';
import { writeValue } from '../quantity/write.ts';
import type { NamedComparison } from './compare.ts';
import { writeTable } from './text-table.ts';

/** A difference is taken to be shown below this probability (common practice, no source). */
const shown = 0.05;

/** A comparison in words: the samples, how they differ in every way, what to mind, and the verdict. */
export function comparisonText(comparison: NamedComparison, rule: ComparisonRule, among: number): string {
  const { names, before, after, pairs } = comparison;
  const samples: (readonly [string, SampleCheck])[] = [
    [names[0], before],
    [names[1], after],
  ];
  if (pairs) samples.push(['differences in pairs', pairs]);
  const { warnings, drifting } = warningsOf(samples);
  return [
    writeTable(
      [
        { heading: 'sample' },
        { heading: 'readings (independent)', align: 'right' },
        { heading: 'mean ± its uncertainty', align: 'right' },
        { heading: 'standard deviation', align: 'right' },
      ],
      samples.map(([name, { n, independent, mean, variance }]) => [
        name,
        `${n} (${independent.toFixed(0)})`,
        writePlain(mean, Math.sqrt(variance / independent)),
        Math.sqrt(variance).toPrecision(3),
      ]),
      '  ',
    ),
    writeTable(
      [{ heading: 'after against before' }, { heading: '', align: 'right' }, { heading: percentOf(rule.confidence) }],
      rowsOf(comparison, rule),
      '  ',
    ),
    ...(warnings.length > 0 ? [warnings.join('\n')] : []),
    verdictOf(comparison, rule, among) +
      (drifting ? '; but the readings drift, and drift alone may make such a difference' : ''),
  ].join('\n\n');
}

/** A bare number with the digits its uncertainty deserves. */
export function writePlain(value: number, u: number | null): string {
  return writeValue(value, u, '1', 'ratio');
}

/** A probability: per cent, or a power of ten where it is small. */
export function writeChance(p: number): string {
  if (p >= 0.0005) return `${Number((100 * p).toPrecision(2))} %`;
  return p >= 1e-300 ? p.toExponential(0) : 'below 1e-300';
}

function percentOf(share: number): string {
  return `${Number((100 * share).toPrecision(6))} %`;
}

function rowsOf(comparison: NamedComparison, { paired, quantile, seed }: ComparisonRule): string[][] {
  const { ratio, ratioByLogs: logs, drawn, quantile: between } = comparison;
  const difference = comparison.difference!;
  const { u, degreesOfFreedom } = difference;
  const to = (low: number, high: number) =>
    `${writePlain(low, u).split(' ±')[0]} to ${writePlain(high, u).split(' ±')[0]}`;
  const method = `${paired ? 'pairs' : 'Welch'}, ${degreesOfFreedom.toFixed(1)} degrees of freedom`;
  const rows = [[`difference (${method})`, writePlain(difference.difference, u), to(difference.low, difference.high)]];
  if (drawn)
    rows.push([`difference (BCa bootstrap, ${drawn.draws} draws, seed ${seed})`, '', to(drawn.low, drawn.high)]);
  if (ratio) rows.push(['ratio of the means (Fieller)', ratio.ratio.toPrecision(5), ratioInterval(ratio)]);
  if (logs) rows.push(['ratio of the geometric means (logarithms)', logs.ratio.toPrecision(5), ratioInterval(logs)]);
  if (quantile && between) {
    const name = `${percentOf(quantile.p)} quantile (definition ${quantile.definition}, ${quantileDefinitions[quantile.definition]})`;
    const step = writePlain(between.after - between.before, u).split(' ±')[0];
    rows.push([`difference of the ${name}`, step, to(between.low, between.high)]);
  }
  return rows;
}

function ratioInterval({ interval, ratio }: Ratio): string {
  if (!interval) return 'without bounds: the divisor may be zero';
  // Two digits of the half width.
  const u = Math.max((interval[1] - interval[0]) / 2, 1e-6 * Math.abs(ratio));
  return interval.map((end) => writePlain(end, u).split(' ±')[0]).join(' to ');
}

function warningsOf(samples: readonly (readonly [string, SampleCheck])[]): { warnings: string[]; drifting: boolean } {
  const chances = adjustByHolm(samples.map(([, { trend }]) => trend?.chanceCorrelated ?? 1));
  const warnings = samples.flatMap(([name, { n, independent, trend, warmUp }], k) => {
    const found: string[] = [];
    if (warmUp)
      found.push(
        `mind: the first ${warmUp.cut} readings of ${name} look like a warm-up (MSER); without them its mean is ${warmUp.mean.toPrecision(5)}`,
      );
    if (trend && chances[k] < shown) {
      const way = trend.s > 0 ? 'rise' : 'fall';
      const u = Math.max((trend.high - trend.low) / 4, 1e-4 * Math.abs(trend.slope)) * (n - 1);
      const [low, high] = [trend.low, trend.high].map((slope) => writePlain(slope * (n - 1), u).split(' ±')[0]);
      found.push(
        `mind: the readings of ${name} ${way}, by ${low} to ${high} from first to last (Mann–Kendall, by chance ${writeChance(chances[k])})`,
      );
    }
    if (independent < n)
      found.push(
        `mind: neighbours in ${name} are alike; its ${n} readings count as ${independent.toFixed(1)}, and no bootstrap or logarithms are given`,
      );
    return found;
  });
  return { warnings, drifting: chances.some((chance) => chance < shown) };
}

function verdictOf({ names, difference, ratio, chanceAmongAll }: NamedComparison, rule: ComparisonRule, among: number) {
  const { difference: size, u, low, high, chance } = difference!;
  const plain = (value: number) => writePlain(value, u).split(' ±')[0];
  const range = `${percentOf(rule.confidence)}: ${plain(low)} to ${plain(high)}`;
  const adjusted = among > 1 ? `, ${writeChance(chanceAmongAll)} among ${among} comparisons (Holm)` : '';
  if (!(chanceAmongAll < shown))
    return `verdict: no difference is shown between ${names[0]} and ${names[1]}; it may be anything of ${range} (by chance: ${writeChance(chance)}${adjusted})`;
  const times = ratio?.interval ? `, ${ratio.ratio.toPrecision(5)} times` : '';
  return `verdict: ${names[1]} is ${size > 0 ? 'higher' : 'lower'} than ${names[0]} by ${writePlain(Math.abs(size), u)} (${range})${times}; by chance: ${writeChance(chance)}${adjusted}`;
}
