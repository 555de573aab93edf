import { Refusal, refuse, writeFault } from '../fault/fault.ts';
import { type CoolingReach, type LimitReach, type Reach, reachOf } from '../steps/reach.ts';
import type { Lifting } from '../steps/reach-lifting.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { namedStep } from './named-step.ts';
import { plural, writeTable } from './text-table.ts';

export interface ReachCommandOptions {
  readonly step?: string;
  readonly limiter?: string;
  readonly confidence?: number;
  readonly samples?: number | 'auto';
  readonly seed?: number;
}

const defaultSamples = 1000;

/** `plan --reach`: how far the power may go as far as each limit is concerned, on every heat path of the study. */
export function planReach(study: Study, options: ReachCommandOptions): Outcome {
  const { limiter: wanted, confidence = 0.95, seed: scrambling = 1 } = options;
  if (options.samples === 'auto') throw new Refusal(refuse('reach/no-auto'));
  const step = options.step === undefined ? study.steps[study.steps.length - 1].id : namedStep(study, options.step);
  // Twenty draws beyond the quantile that is looked for, at the least.
  const draws = options.samples ?? Math.max(defaultSamples, Math.ceil(20 / (1 - confidence)));
  const result = reachOf(study, step, { limiter: wanted, confidence, samples: draws, seed: scrambling });
  if (!result.ok) throw new Refusal(result.faults);
  const { reach } = result;
  const { limiter, present, samples, seed } = reach;
  const sure = percent(reach.confidence);
  const drawn = samples >= 2 ? `${samples} draws with seed ${seed}` : 'first order only';
  const text = [
    `Power path of step ${step}; real power at ${limiter.id} (${limiter.title})${present ? `, at this step ${present.text}` : ''}.`,
    `At ${sure}: the highest power at which a limit is kept with ${sure} confidence, one-sided; ${drawn}.`,
    ...reach.coolings.map((cooling) => `\n${describe(cooling, sure)}`),
    ...(reach.coolings.length > 1 ? [`\n${sideBySide(reach, sure)}`] : []),
  ];
  return { text: text.join('\n'), json: { reach }, exit: reach.coolings.some(({ range }) => range) ? 0 : 1 };
}

const ends = {
  demand: 'the load asks for no more',
  runaway: 'above, the heat runs away',
  infeasible: 'above, a supply or a regulator can’t carry the loads',
  unsettled: 'above, the equations don’t settle',
};

function describe({ cooling, own, range, settles, limits, open, faults }: CoolingReach, sure: string): string {
  const head = `── cooling of ${cooling.steps.join(', ')}${own ? ' (as this step has it)' : ''}`;
  if (!range) return [head, ...faults.map(writeFault)].join('\n');
  const binding = limits.filter(({ ending }) => ending !== 'kept');
  const kept = limits.filter(({ ending }) => ending === 'kept');
  const lines = [
    head,
    ...(cooling.changed.length > 0 ? [`changed with it: ${cooling.changed.join(', ')}`] : []),
    `looked at from ${range.low.text} to ${range.high.text}: ${ends[range.end]}`,
    ...(settles ? [`there is an operating point up to ${settles.text} at ${sure}`] : []),
    '',
    binding.length > 0 ? table(binding, range, sure) : nothingBinds(kept.length, range.high.text, sure),
  ];
  if (binding.some(({ method }) => method === 'monte-carlo'))
    lines.push('  * by Monte Carlo: first order gives another power, because the board bends here');
  if (binding.some(({ falls }) => !falls))
    lines.push('  ~ its margin doesn’t fall all the way: this is where it is passed first');
  const lifted = binding.filter(({ lifting }) => lifting && lifting.byOneOf.length > 0).slice(0, LIFTED);
  if (lifted.length > 0) lines.push('', '  to lift it to where the next one binds, one of these alone would do:');
  for (const { id, lifting } of lifted) lines.push(`    ${id}`, ...sayLifting(lifting!));
  if (kept.length > 0)
    lines.push('', `  kept up to ${range.high.text} at ${sure}: ${someOf(kept.map(({ id }) => id))}`);
  if (open.length > 0)
    lines.push(
      '',
      `  unknown at any power, and unknown is not safe: ${plural(open.length, 'limit')} without data`,
      ...open.map(({ id, title }) => `    ${title}; fill in ${id}`),
    );
  return lines.join('\n');
}

function table(limits: readonly LimitReach[], range: NonNullable<CoolingReach['range']>, sure: string): string {
  return writeTable(
    [
      { heading: 'limit' },
      { heading: `at ${sure}`, align: 'right' },
      { heading: 'at best values', align: 'right' },
      { heading: 'next binds at', align: 'right' },
      { heading: 'lacks there', align: 'right' },
      { heading: 'beyond it' },
    ],
    limits.map((limit) => [
      `${limit.id}${limit.method === 'monte-carlo' ? ' *' : ''}${limit.falls ? '' : ' ~'}`,
      limit.power ? shortPower(limit) : `below ${range.low.text}`,
      limit.best?.text ?? (limit.ending === 'nowhere' ? '' : `above ${range.high.text}`),
      limit.lifting?.target.text ?? '',
      limit.lifting?.lacks.text ?? '',
      limit.consequence,
    ]),
    '  ',
  );
}

function nothingBinds(kept: number, high: string, sure: string): string {
  if (kept === 0) return '  no limit has data: nothing is known to bind, and nothing is known to be kept';
  return `  ${plural(kept, 'limit')} with data, and none of them binds up to ${high} at ${sure}`;
}

/** Limits whose lifting is told; those further away come after several others have been lifted. */
const LIFTED = 4;

const shortPower = ({ power }: LimitReach) => power!.text.replace(/ ± .*/, '');

function sayLifting({ byOneOf, steps }: Lifting): string[] {
  return [
    ...byOneOf.map(({ input, from, to }) => `      ${pathOf(input)} from ${from.text} to ${to.text}`),
    ...steps.map(({ step, inputs }) => `      step ${step} changes ${someOf(inputs.map(pathOf))}`),
  ];
}

const pathOf = (input: string) => input.replace(/#.*/, '');

/** The first few of many names, and how many more there are. */
function someOf(names: readonly string[]): string {
  const more = names.length - 3;
  return more > 1 ? `${names.slice(0, 3).join(', ')} and ${more} more` : names.join(', ');
}

/** What each cooling does for each limit. */
function sideBySide({ coolings }: Reach, sure: string): string {
  const solved = coolings.filter(({ range }) => range);
  const binds = (limit: LimitReach | undefined) => limit !== undefined && limit.ending !== 'kept';
  const ids = [...new Set(solved.flatMap(({ limits }) => limits.filter(binds).map(({ id }) => id)))];
  const rows = ids.map((id) => [
    id,
    ...solved.map(({ limits, range }) => {
      const limit = limits.find((each) => each.id === id);
      if (!limit) return '–';
      if (limit.ending === 'nowhere') return `below ${range!.low.text}`;
      return limit.ending === 'kept' ? `above ${range!.high.text}` : shortPower(limit);
    }),
  ]);
  const columns = solved.map(({ cooling }) => ({ heading: cooling.step, align: 'right' as const }));
  return `── the coolings beside each other, at ${sure}\n${writeTable([{ heading: 'limit' }, ...columns], rows, '  ')}`;
}

const percent = (share: number) => `${Number((100 * share).toPrecision(6))} %`;
