import { Refusal, refuse, sayFault, writeFault } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { planStep } from '../steps/plan.ts';
import type { Grouping, Margin, StepPlan } from '../steps/step-plan.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { explainBudget } from './plan-budget.ts';
import { plural, writeTable } from './text-table.ts';

export interface PlanCommandOptions {
  readonly step?: string;
  readonly budget?: string;
  readonly by?: Grouping | 'input';
  readonly global?: boolean;
  readonly samples?: number | 'auto';
  readonly seed?: number;
  readonly against?: string;
  readonly reach?: boolean;
  readonly limiter?: string;
  readonly confidence?: number;
  readonly progress?: (text: string) => void;
}

const defaultSamples = 20_000;
const defaultSeed = 1;

/** The `plan` verb: every step, or one; why a margin is uncertain; the plan beside a recording; or how far the power may go. */
export async function runPlan(studyArgument: string, options: PlanCommandOptions): Promise<Outcome> {
  const { study, folder } = await loadStudy(studyArgument);
  if (options.against !== undefined) {
    const { planAgainst } = await import('./plan-against.ts');
    return planAgainst(study, folder, options.against);
  }
  if (options.reach) return (await import('./plan-reach.ts')).planReach(study, options);
  if (options.limiter !== undefined || options.confidence !== undefined)
    throw new Refusal(refuse('reach/needs-reach', { option: options.limiter ? '--limiter' : '--confidence' }));
  const { samples = defaultSamples, seed = defaultSeed, budget, by = 'input', global = false } = options;
  if (budget === undefined && (options.by !== undefined || global))
    throw new Refusal(refuse('command/needs-budget', { option: global ? '--global' : '--by' }));
  if (global && options.by !== undefined) throw new Refusal(refuse('command/global-by-input', {}));
  const steps = options.step === undefined ? study.steps.map(({ id }) => id) : [namedStep(study, options.step)];
  if (budget !== undefined) refuseUnknownLimit(study, steps, budget);
  const plans = steps.map((id, i) =>
    planStep(study, id, { samples, seed, progress: progressOf(options.progress, `step ${i + 1} of ${steps.length}`) }),
  );
  const solved = plans.every(({ ending }) => ending === 'solved');
  if (budget !== undefined) {
    const { text, budgets } = explainBudget(study, plans, { limit: budget, by, global, seed });
    return { text, json: jsonSafe({ budgets }), exit: 0 };
  }
  const text = [
    `${study.title}\n${plural(plans.length, 'step')}, ${sampling(samples, seed)}. ± is one standard uncertainty; intervals hold 95 %.`,
    ladder(plans),
    ...plans.map((plan) => describe(plan, options.step === undefined ? shownMargins : plan.margins.length)),
    cautions,
  ].join('\n\n');
  return {
    text,
    json: jsonSafe({ steps: plans, binding: plans.map(({ id, binding }) => ({ step: id, binding })) }),
    exit: solved ? 0 : 1,
  };
}

/** Tells how far a step's draws are, now and then: a line on the way, no result. */
function progressOf(tell: PlanCommandOptions['progress'], step: string) {
  if (!tell) return undefined;
  let last = 0;
  return (done: number, total: number) => {
    const tenth = Math.floor((10 * done) / total);
    if (tenth === last) return;
    last = tenth;
    tell(done === total ? '\r\x1b[K' : `\r${step}: ${tenth}0 % of ${total} draws`);
  };
}

const cautions = `Before any change to the board: unplug the adapter, disconnect the battery, let capacitors discharge; back up data; never test unattended.
Never short a sense resistor outright: the reading falls to zero and nothing limits any more. The manufacturer's ratings win over these figures.`;

function ladder(plans: readonly StepPlan[]): string {
  const rows = plans.map((plan) => {
    const { operating, limiters, margins, binding } = plan;
    if (!operating) return [plan.id, 'no operating point', '', '', plan.ending, '', '', ''];
    const holder = limiters.find(({ holds }) => holds);
    const first = margins.find(({ id }) => id === binding);
    return [
      plan.id,
      operating.holder,
      holder?.real.text ?? operating.processorPower.text,
      holder?.reads.text ?? '',
      first?.id ?? 'none known',
      first?.margin.text ?? '',
      first?.exceed.text ?? '',
      String(plan.open.length),
    ];
  });
  return writeTable(
    [
      { heading: 'step' },
      { heading: 'held by' },
      { heading: 'really', align: 'right' },
      { heading: 'reads', align: 'right' },
      { heading: 'binds' },
      { heading: 'margin', align: 'right' },
      { heading: 'exceeded', align: 'right' },
      { heading: 'open', align: 'right' },
    ],
    rows,
  );
}

/** Margins that are shown of each step when all steps are; the others are further from their limits. */
const shownMargins = 10;

function describe(plan: StepPlan, most: number): string {
  const head = `── ${plan.id}: ${plan.title}`;
  const { operating, solution } = plan;
  if (!operating || !solution) return [head, ...plan.faults.map(writeFault)].join('\n\n');
  const lines = [
    head,
    plan.changed.length > 0 ? `changed: ${plan.changed.join(', ')}` : 'nothing changed',
    `held by ${operating.holderTitle}; processor ${operating.processorPower.text}, from the wall ${operating.wallPower.text}`,
    '',
    writeTable(
      [
        { heading: 'limiter' },
        { heading: 'does' },
        { heading: 'really', align: 'right' },
        { heading: 'reads', align: 'right' },
        { heading: 'allowed', align: 'right' },
      ],
      plan.limiters.map((limiter) => [
        limiter.id,
        limiter.holds ? 'holds' : limiter.acts,
        limiter.real.text,
        limiter.reads.text,
        limiter.allowed.text,
      ]),
      '  ',
    ),
    '',
    writeTable(
      [
        { heading: 'limit' },
        { heading: 'value', align: 'right' },
        { heading: 'limit', align: 'right' },
        { heading: 'margin', align: 'right' },
        { heading: '95 %', align: 'right' },
        { heading: 'exceeded', align: 'right' },
        { heading: 'state' },
      ],
      plan.margins
        .slice(0, most)
        .map((margin) => [
          margin.id,
          margin.value.text,
          `${margin.side === 'under' ? '≤' : '≥'} ${margin.limit.text}`,
          margin.margin.text,
          `${margin.interval.low.text} to ${margin.interval.high.text}`,
          margin.exceed.text,
          `${margin.state}${markOf(margin)}`,
        ]),
      '  ',
    ),
  ];
  const left = plan.margins.length - most;
  if (left > 0) lines.push(`  and ${plural(left, 'limit')} less likely to be exceeded: --step ${plan.id} shows all`);
  lines.push(...remarks(plan.margins.slice(0, most)), ...drawing(plan));
  if (plan.open.length > 0) {
    lines.push('', '  open: limits without data (unknown is not safe)');
    for (const open of plan.open) lines.push(`    ${open.title}: ${open.value?.text ?? ''}; fill in ${open.field}`);
  }
  for (const note of plan.notes) {
    const { found, remedy } = sayFault(note);
    lines.push('', `  note: ${found}`, `  do: ${remedy}`);
  }
  if (plan.sampling && plan.sampling.failed > 0)
    lines.push(
      '',
      `  ${plan.sampling.failed} of ${plan.sampling.samples} draws have no steady state; they count as exceeding every limit.`,
    );
  lines.push(
    '',
    `  solved to ${solution.residual.toExponential(1)}; power from the wall and heat differ by ${solution.imbalance.toExponential(1)} of it`,
  );
  return lines.join('\n');
}

function markOf({ method, disagree }: Margin): string {
  if (!disagree) return '';
  return method === 'second-order' ? ' +' : ' *';
}

/** What the marks of the margins mean, and which uncertainties rest on few readings. */
function remarks(margins: readonly Margin[]): string[] {
  const marks = new Set(margins.map(markOf));
  const bends = 'first order gives another interval, because the board bends here';
  const shaped = 'or because an input decides that is not normally distributed';
  return [
    ...(marks.has(' *') ? [`  * by Monte Carlo: ${bends}, ${shaped}`] : []),
    ...(marks.has(' +') ? [`  + by second order, as the draws confirm: ${bends}`] : []),
    ...margins.flatMap(({ id, degreesOfFreedom: degrees }) =>
      degrees === null ? [] : [`  ${id}: ${degrees.toFixed(1)} effective degrees of freedom widen its interval`],
    ),
  ];
}

/** How drawing until the margins are accurate ended. */
function drawing({ sampling }: StepPlan): string[] {
  if (!sampling?.adaptive) return [];
  const { ended, blocks, asked, inaccurate } = sampling.adaptive;
  const drawn = `  ${sampling.samples} draws in ${plural(blocks, 'block')}`;
  if (ended === 'accurate')
    return [`${drawn}: ${plural(asked.length, 'near margin')} accurate to a tenth of the first digit of u`];
  return [`${drawn}, the most there may be; not accurate enough: ${inaccurate.join(', ')}`];
}

/** Told before any draw is made: a slip in a name shouldn't cost a Monte Carlo. */
function refuseUnknownLimit(study: Study, steps: readonly string[], wanted: string): void {
  const plans = steps.map((id) => planStep(study, id, { samples: 0, seed: defaultSeed }));
  const known = [...new Set(plans.flatMap(({ margins }) => margins.map(({ id }) => id)))];
  if (!known.includes(wanted))
    throw new Refusal(refuse('command/no-such-limit', { limit: wanted, known, nearest: nearestLimit(wanted, known) }));
}

/** The limit whose name is spelled most alike, whole or in its part behind the last point. */
function nearestLimit(wanted: string, known: readonly string[]): string {
  const last = (id: string) => id.slice(id.lastIndexOf('.') + 1);
  const end = nearest(wanted, known.map(last));
  return nearest(wanted, known) || (known.find((id) => end !== '' && last(id) === end) ?? '');
}

const sampling = (samples: number | 'auto', seed: number) =>
  samples === 'auto'
    ? `draws with seed ${seed} until the near margins are accurate`
    : samples >= 2
      ? `${samples} draws with seed ${seed}`
      : 'first order only';
