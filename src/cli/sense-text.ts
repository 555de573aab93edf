import { writeValue } from '../quantity/write.ts';
import type { Failed } from '../sense/failures.ts';
import type { LowLoadCheck } from '../sense/low-load.ts';
import { dangerous, type OptionStep } from '../sense/option.ts';
import type { SenseOption, SensePlan } from '../sense/plan-sense.ts';
import type { Change } from '../sense/soldered.ts';
import type { Step } from '../study/study.ts';
import { writeChanges } from './changes-yaml.ts';
import { plural, writeTable } from './text-table.ts';

export interface SenseWords {
  readonly step: Step;
  /** Place of the option told in full, from 1. */
  readonly chosen: number;
  readonly stock: string;
  readonly meter: string;
  readonly byHand: boolean;
}

/** A sense plan as text: all options in a table, one of them in full, its changes as YAML, and what to be careful about. */
export function describeSense(plan: SensePlan, words: SenseWords): string {
  const { options, title, limiter, step, present, allowed } = plan;
  const { chosen, stock, byHand } = words;
  const option = options[chosen - 1];
  const head = `${title} (${limiter}) at step ${step}: it allows ${watts(allowed)} as it reads; really ${watts(present)} flow then, if nothing else holds before.`;
  const looked = plan.looked.map(({ sense, fits }) => `${fits} fits of ${sense}`).join(', ');
  const list = byHand
    ? ''
    : `${plural(options.length, 'option')} from ${stock}; every combination of ${looked} was looked at or ruled out. Fewer points are better: one for each per cent of error and of standard uncertainty, for a part that is soldered, and for one that is taken off; more for parts near their rating.`;
  const cannot = plan.looked.filter(({ divider }) => !divider).map(({ sense }) => sense);
  return [
    head,
    list,
    byHand ? '' : table(options),
    byHand || cannot.length === 0
      ? ''
      : `No dividers at ${cannot.join(', ')}: the study doesn’t say what filter is in their sense lines (\`divider\`).`,
    ...option.steps.map((each, t) => stepInFull(plan, words, option, each, t)),
    cautions,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function table(options: readonly SenseOption[]): string {
  const rows = options.flatMap(({ points, steps }, place) =>
    steps.map((each, t) => [
      t === 0 ? String(place + 1) : '',
      watts(each.target),
      each.changes.length === 0 ? 'nothing' : each.changes.map(sayChange).join('; '),
      writeValue(each.real, each.u, 'W', 'power'),
      signed(100 * each.error, '%'),
      interval(each),
      heaviest(each),
      String(each.work.soldered + each.work.removed),
      summary(each.failures, 'opens'),
      summary(each.failures, 'shorts'),
      t === 0 ? points.toFixed(2) : '',
    ]),
  );
  return writeTable(
    [
      { heading: '' },
      { heading: 'target', align: 'right' },
      { heading: 'solder' },
      { heading: 'real at the limit', align: 'right' },
      { heading: 'error', align: 'right' },
      { heading: '95 %', align: 'right' },
      { heading: 'of rating', align: 'right' },
      { heading: 'operations', align: 'right' },
      { heading: 'if one opens' },
      { heading: 'if one shorts' },
      { heading: 'points', align: 'right' },
    ],
    rows,
    '  ',
  );
}

/** `core-sense + 18 mohm ± 1 %`. */
function sayChange({ at, becomes, why }: Change): string {
  const [, sense] = at.split('.');
  if (!becomes) return `${sense}: take off`;
  if (at.endsWith('parallel')) {
    const [added, there] = String(becomes.source).split(' across ');
    return there === undefined ? `${sense}: divider off` : `${sense} / ${added}`;
  }
  const value = String(becomes.resistance).replace(/ ± .*/, '').replace('ohm', 'Ω');
  return `${sense} ${why === 'in its place' ? '=' : '+'} ${value}`;
}

/** The worst that a single failure of this mode does among the new parts; among all where none is new. */
function summary(failures: readonly Failed[], mode: Failed['mode']): string {
  const fresh = failures.filter(({ isOriginal }) => !isOriginal);
  const all = (fresh.length > 0 ? fresh : failures).filter((failure) => failure.mode === mode);
  const marked = dangerous(all).length > 0 ? ' !' : '';
  if (all.some(({ direction }) => direction === 'gives in')) return `no steady state${marked}`;
  const reals = all.flatMap(({ real }) => (real === null ? [] : [real]));
  const off = all.some(({ direction }) => direction === 'off') ? 'cut off' : '';
  if (reals.length === 0) return off;
  const lifts = all.some(({ direction }) => direction === 'rises');
  const says = lifts ? `rises to ${watts(Math.max(...reals))}` : `falls to ${watts(Math.min(...reals))}`;
  return `${says}${off && `, or ${off}`}${marked}`;
}

function heaviest({ dissipations }: OptionStep): string {
  const shares = dissipations.flatMap(({ power, rating }) => (rating === null ? [] : [power / rating]));
  if (shares.length === 0) return 'open';
  const open = shares.length < dissipations.length ? ', some open' : '';
  return `${(100 * Math.max(...shares)).toFixed(0)} %${open}`;
}

function stepInFull(plan: SensePlan, words: SenseWords, option: SenseOption, each: OptionStep, t: number): string {
  const place = option.steps.length > 1 ? `, step ${t + 1} of ${option.steps.length}` : '';
  const head = words.byHand ? '── as put in by hand' : `── option ${words.chosen}${place}: ${watts(each.target)}`;
  const before = t === 0 ? words.step.id : `the one before`;
  return [
    head,
    `really ${writeValue(each.real, each.u, 'W', 'power')} at the limit, 95 %: ${interval(each)}${words.byHand ? '' : `; ${signed(100 * each.error, '%')} from the target`}`,
    ...derating(plan, each, words.byHand),
    ...wholeBoard(plan, each),
    `\n${indent(dissipationTable(each))}`,
    `\n${indent(failureTable(each, words.step, plan.limiter))}`,
    ...marks(each),
    '',
    ...check(each.check, words.meter),
    '',
    ...correction(plan, each),
    ...others(each),
    '',
    `  changes on ${before}, for the study:`,
    '',
    asStep(plan, each),
  ].join('\n');
}

/** An option's steps as they stand in a study. */
export function optionAsSteps(plan: SensePlan, { steps }: SenseOption): string {
  return steps.map((step) => asStep(plan, step)).join('\n\n');
}

function asStep(plan: SensePlan, { target, changes }: OptionStep): string {
  return writeChanges(`sense-${idOf(target)}w`, `${watts(target)} at ${plan.title}`, changes);
}

function derating({ present }: SensePlan, { real, target }: OptionStep, byHand: boolean): string[] {
  const lower = byHand ? real < present * (1 - 1e-6) : target < present;
  return lower ? ['  This is below what is allowed now: a derating, not a raise.'] : [];
}

function wholeBoard({ limiter }: SensePlan, { whole, real }: OptionStep): string[] {
  if (!whole) return ['  With every limiter acting the board finds no steady state there: see `uprate plan`.'];
  const lines: string[] = [];
  if (whole.holder !== limiter)
    lines.push(
      whole.holder === 'demand'
        ? `  The processor asks for no more than ${watts(whole.real)}: this limit isn't reached.`
        : `  ${whole.holder} holds before, at ${watts(whole.real)}: this limit isn't reached (${watts(real)}).`,
    );
  if (whole.passed.length > 0) lines.push(`  Passed at that power: ${whole.passed.join(', ')}.`);
  return lines;
}

function dissipationTable({ dissipations }: OptionStep): string {
  return writeTable(
    [
      { heading: 'sense point' },
      { heading: 'part' },
      { heading: 'dissipates', align: 'right' },
      { heading: 'derated rating', align: 'right' },
      { heading: 'of it', align: 'right' },
    ],
    dissipations.map(({ sense, part, power, rating }) => [
      sense,
      part,
      writeValue(power, null, 'mW', 'power'),
      rating === null ? 'open' : writeValue(rating, null, 'W', 'power'),
      rating === null ? 'open' : `${((100 * power) / rating).toFixed(0)} %`,
    ]),
  );
}

function failureTable({ failures }: OptionStep, step: Step, limiter: string): string {
  const title = (id: string) => step.board.limiters[id]?.title ?? id;
  return writeTable(
    [{ heading: 'single failure' }, { heading: 'real power', align: 'right' }, { heading: 'what happens' }],
    failures.map((failure) => [
      `${failure.sense}, ${failure.part}: ${failure.mode === 'shorts' ? 'part shorts' : failure.isOriginal ? 'cracks, or its joint opens' : 'joint opens'}`,
      failure.real === null ? '–' : watts(failure.real),
      sayFailure(failure, limiter, title),
    ]),
  );
}

function sayFailure(failed: Failed, limiter: string, title: (id: string) => string): string {
  const { direction, holder, passed } = failed;
  const mark = dangerous([failed]).length > 0 ? `! passes ${passed.join(', ') || 'what the supply can give'}` : '';
  const says = {
    off: "the current's only way: everything behind it is off, and the amplifier's input sees the supply's voltage",
    'gives in': 'reading falls, nothing limits: the supply gives in, or the board heats up without end',
    falls: `reading rises, real power falls to ${watts(failed.real ?? 0)}`,
    stays: 'no change that could be told',
    rises: `reading falls, real power rises to ${watts(failed.real ?? 0)}; ${
      holder === limiter
        ? 'it still limits there'
        : holder === 'demand'
          ? 'nothing limits'
          : `only ${title(holder ?? '')} limits`
    }`,
  }[direction];
  return mark ? `${says} ${mark}` : says;
}

function marks({ failures, open }: OptionStep): string[] {
  const shorts = failures.filter(({ mode, isOriginal }) => mode === 'shorts' && isOriginal);
  const marked = dangerous(failures).length > 0;
  return [
    ...(open.length > 0 && failures.some(({ direction }) => direction === 'rises')
      ? [
          `  ${plural(open.length, 'limit')} without data: whether a failure passes them isn't known (\`uprate plan\` lists them)`,
        ]
      : []),
    ...(marked ? ['  ! a single failure lifts real power above a trip or a rating'] : []),
    ...(shorts.length > 0 && marked
      ? ['  (a short of a resistor that was there does the same to the board as it is)']
      : []),
  ];
}

function check(low: LowLoadCheck | null, meter: string): string[] {
  if (!low)
    return [
      '  low-load check: the board does not go low enough for one; compare readings before and after at the present limit instead',
    ];
  const { real, reads, band, before, misses } = low;
  const missed = misses.map(({ sense, part, mode }) => `${sense}, ${part}${mode === 'shorts' ? ' shorted' : ' open'}`);
  return [
    `  low-load check: at ${watts(real)} true it must read ${writeBand(reads, band)} (before: ${watts(before)}); otherwise switch off and look at the joints`,
    `    with ${meter}`,
    ...(missed.length > 0
      ? [`    it can't tell ${missed.join('; ')}: measure those with four wires before power comes on`]
      : []),
  ];
}

function writeBand(reads: number, band: number): string {
  const digits = Math.max(0, 1 - Math.floor(Math.log10(band)));
  return `${reads.toFixed(digits)} W ± ${band.toFixed(digits)} W`;
}

function correction({ limiter }: SensePlan, { corrections, correction: whole }: OptionStep): string[] {
  const factor = ({ factor, u }: { factor: number; u: number }) => `× ${writeValue(factor, u, '', 'ratio')}`;
  return [
    `  in logs, multiply what ${limiter} reads by ${factor(whole).slice(2)}; each point: ${corrections.map((each) => `${each.sense} ${factor(each)}`).join(', ')}`,
  ];
}

function others({ others: all }: OptionStep): string[] {
  return all.map(({ id, title, acts, allowed, before, after, actedAt, actsAt }) => {
    const moved =
      actedAt !== null && actsAt !== null ? `; it ${acts}s at ${watts(actsAt)} true instead of ${watts(actedAt)}` : '';
    return `  ${title} (${id}) reads the same points: ${after === null || before === null ? 'nothing that can be told' : `${watts(after)} instead of ${watts(before)}`} there, of ${watts(allowed)} allowed${moved}`;
  });
}

const cautions = `Before any change to the board: unplug the adapter, disconnect the battery, let capacitors discharge; back up data; never test unattended.
Never short a sense resistor outright: the reading falls to zero and nothing limits any more. The manufacturer's ratings win over these figures.
Measure the stacked resistance with four wires before power comes on, and raise the load slowly at the first start.`;

function interval({ real, u }: OptionStep): string {
  return `${(real - 1.96 * u).toFixed(1)} to ${(real + 1.96 * u).toFixed(1)} W`;
}

function watts(value: number): string {
  return `${Number(value.toPrecision(4)).toString()} W`;
}

function signed(value: number, unit: string): string {
  const text = Math.abs(value).toFixed(2);
  return `${value < 0 ? '−' : '+'}${text} ${unit}`;
}

function idOf(target: number): string {
  return String(Number(target.toPrecision(4))).replace('.', '-');
}

function indent(text: string): string {
  return text.replace(/^/gm, '  ');
}
