import { type Caution, cautions } from './cautions.ts';
import type { DescribedChange } from './changes-of.ts';
import type { ExpectedReading } from './expected-readings.ts';
import type { LimiterReading, LowLoad } from './low-load.ts';
import type { SenseCheck } from './sense-check.ts';
import { isByHand, isCooling, isElectrical } from './work.ts';

export type Phase =
  | 'before'
  | 'isolate'
  | 'change'
  | 'inspect'
  | 'measure'
  | 'low load'
  | 'soak'
  | 'full load'
  | 'after';

/** One thing to do, and to tick. */
export interface ProcedureItem {
  /** Its place on the list, from 1. */
  readonly number: number;
  /** Its name, the same as long as the study has the change. */
  readonly id: string;
  readonly phase: Phase;
  readonly does: string;
  readonly details: readonly string[];
  /** When to go no further, and what it then probably is. */
  readonly stop: string | null;
  readonly cautions: readonly string[];
  readonly readings: readonly ExpectedReading[];
}

/** What a checklist is made from. */
export interface ProcedureBasis {
  /** Title of the study. */
  readonly study: string;
  readonly step: string;
  readonly title: string;
  readonly about: string;
  /** Step that the changes come on top of. */
  readonly before: string;
  readonly changes: readonly DescribedChange[];
  readonly points: readonly SenseCheck[];
  /** Null: no limiter holds by power, or there is no operating point at that load. */
  readonly low: LowLoad | null;
  /** What the instruments are expected to read at full load. */
  readonly full: readonly ExpectedReading[];
  /** Limits that are near and that no instrument watches. */
  readonly unwatched: readonly string[];
  /** Limits without data. */
  readonly open: readonly string[];
}

interface Draft extends Partial<Omit<ProcedureItem, 'number' | 'cautions'>> {
  readonly id: string;
  readonly phase: Phase;
  readonly does: string;
  readonly warns?: readonly Caution[];
}

/** The checklist in the order of the work. */
export function procedureItems(
  made: ProcedureBasis,
  work: { readonly byHand: boolean; readonly electrical: boolean },
): readonly ProcedureItem[] {
  const { changes, points, step } = made;
  const drafts: Draft[] = [
    ...preparation(made),
    ...(work.byHand ? isolation() : []),
    ...changes.filter((change) => isByHand(change.work)).map(changeItem),
    ...(work.byHand ? inspection(changes, work.electrical) : []),
    ...points.map(measurement),
    ...(work.byHand ? [reconnection()] : []),
    ...changes.filter(({ work: kind }) => kind === 'setting').map(changeItem),
    lowLoadItem(made.low, made.before),
    soakItem(made.low),
    fullLoadItem(made),
    ...afterwards(step),
  ];
  return drafts.map(({ warns = [], ...draft }, i) => ({
    details: [],
    stop: null,
    readings: [],
    ...draft,
    number: i + 1,
    cautions: warns.map((caution) => cautions[caution]),
  }));
}

function preparation({ step, open, before }: ProcedureBasis): Draft[] {
  return [
    {
      id: 'ask-the-gate',
      phase: 'before',
      does: `Ask the gate about ${step} (\`uprate gate\`), and begin only when it says go.`,
      details: [
        `It looks at what was measured at ${before}.`,
        ...(open.length > 0 ? [`Limits without data, and unknown is not safe: ${open.join('; ')}.`] : []),
      ],
    },
    { id: 'back-up', phase: 'before', does: 'Back up what is on the machine.', warns: ['data'] },
    {
      id: 'be-ready',
      phase: 'before',
      does: 'Have a smoke alarm in the room and a switch that cuts the power within reach; plan the time to stay.',
      warns: ['watch'],
    },
  ];
}

function isolation(): Draft[] {
  return [
    {
      id: 'unplug',
      phase: 'isolate',
      does: 'Shut the machine down and unplug the adapter, from the wall and from the board.',
      warns: ['mains'],
    },
    {
      id: 'battery',
      phase: 'isolate',
      does: 'Open the case and disconnect the battery, if there is one, before anything else is touched.',
      warns: ['battery'],
    },
    {
      id: 'discharge',
      phase: 'isolate',
      does: 'Press the power button for ten seconds, then measure the voltage across the input capacitors and at the adapter’s socket.',
      stop: 'Above 1 V: wait and measure again (common practice, no source).',
      warns: ['charge'],
    },
  ];
}

function changeItem(change: DescribedChange): Draft {
  const { id, work, does, where, why, photo, undo, done } = change;
  const warns: Caution[] = [];
  if (isElectrical(work)) warns.push('fumes');
  if (work.startsWith('resistor') || work === 'divider') warns.push('short');
  if (isCooling(work)) warns.push('hot');
  if (isLiquidMetal(change)) warns.push('gallium', 'plating');
  return {
    id,
    phase: 'change',
    does,
    details: [
      ...(where ? [`Where: ${where}.`] : []),
      ...(why ? [`Why: ${why}.`] : []),
      photo ? `Picture: ${photo}.` : 'Photograph the place before and after.',
      ...(work === 'divider'
        ? ['Measure each of its resistors before it is soldered in: in place, others lie across it.']
        : []),
      `To undo: ${undo}`,
      ...(done ? [`Done ${done}, by the study.`] : []),
    ],
    warns,
  };
}

/** Whether a change, or what the study says of its place, speaks of a metal that is liquid when it is warm. */
function isLiquidMetal({ work, title, why = '', fields, materials }: DescribedChange): boolean {
  if (work !== 'interface') return false;
  const said = [title, why, ...materials, ...fields.flatMap(({ after }) => after ?? [])].join(' ');
  return /gallium|galinstan|liquid.?metal/i.test(said);
}

function inspection(changes: readonly DescribedChange[], electrical: boolean): Draft[] {
  const cooled = changes.some(({ work }) => isCooling(work));
  const look = [
    ...(electrical ? ['every joint wetted, no bridge, no solder ball, the right marking, no neighbour moved'] : []),
    ...(cooled
      ? ['cooler seated flat, screws in turn to their torque, pads where they belong, no cable under it']
      : []),
  ];
  return [
    {
      id: 'inspect',
      phase: 'inspect',
      does: `Look at it through a magnifier: ${look.join('; ')}.`,
      stop: 'Anything else: mend it first.',
    },
    ...(electrical
      ? [
          {
            id: 'no-short',
            phase: 'inspect',
            does: 'Measure from the input to ground, and from each changed part to ground, with the board still without power.',
            stop: 'Lower than before the change: there is a bridge. Don’t connect power.',
          } as const,
        ]
      : []),
  ];
}

function measurement({ part, title, expected, low, high, mistakes, meter }: SenseCheck): Draft {
  const hidden = mistakes.filter(({ tells }) => !tells).map(({ what }) => what);
  return {
    id: `measure-${part}`,
    phase: 'measure',
    does: `Measure "${title}" with four wires, at the taps of its sense lines: ${low.text} to ${high.text}.`,
    details: [
      `Expected ${expected.text} at room temperature, joints and meter included (${meter}).`,
      'Let it cool after soldering; a current of 1 A or more makes the voltage readable.',
      `It would measure ${mistakes.map(({ what, measured }) => `${measured.text} with ${what}`).join('; ')}.`,
      ...(hidden.length > 0 ? [`This meter can’t tell: ${hidden.join('; ')}. Take a better one.`] : []),
    ],
    stop: 'Outside: don’t connect power, find out why. Near zero: it is bridged.',
    warns: ['short'],
  };
}

function reconnection(): Draft {
  return {
    id: 'reconnect',
    phase: 'low load',
    does: 'Reconnect the battery, if there is one, then the adapter; start the machine and watch its idle power and temperatures for a minute.',
    stop: 'Anything smells, clicks, or is hot at once: cut the power.',
    warns: ['battery'],
  };
}

function lowLoadItem(low: LowLoad | null, before: string): Draft {
  if (!low)
    return {
      id: 'low-load',
      phase: 'low load',
      does: `Run a small load, far below what ${before} has borne, and compare every reading with the run of ${before}.`,
      details: ['The study says nothing about this load: no limiter holds by power, or there is no operating point.'],
      stop: 'A reading moves that the step shouldn’t move, or the other way: switch off.',
      warns: ['watch'],
    };
  return {
    id: 'low-load',
    phase: 'low load',
    does: `Run a small load. ${low.readings.map(sayReading).join(' ')}`,
    details: low.readings.flatMap((reading) => [
      `"${reading.title}" reads ${reading.ratio.text} of what really flows; the band holds the prediction, the true power (${reading.measuredBy}) and the last digit shown. At another true power, multiply.`,
      ...(reading.tells === null ? [] : [sayUnchanged(reading)]),
    ]),
    stop: 'Outside: switch off. The change isn’t what it was to be, or the reading isn’t understood.',
    warns: ['watch'],
    readings: low.instruments,
  };
}

function sayReading({ title, real, low, high }: LimiterReading): string {
  return `At ${real.text} true, "${title}" must read ${low.text} to ${high.text}.`;
}

function sayUnchanged({ unchanged, tells }: LimiterReading): string {
  return tells
    ? `Unchanged it would read ${unchanged.text}, outside the band.`
    : `Unchanged it would read ${unchanged.text}, inside the band: at this load the check can’t tell. Measure the true power better, or take more load.`;
}

function soakItem(low: LowLoad | null): Draft {
  return {
    id: 'soak',
    phase: 'soak',
    does: 'Stay at the small load for 15 minutes, until no temperature climbs any more (common practice, no source).',
    details: low && low.instruments.length > 0 ? ['Every instrument stays in its interval of the check before.'] : [],
    stop: 'A reading leaves its interval, or climbs on without end: switch off.',
    warns: ['hot'],
  };
}

function fullLoadItem({ full, unwatched }: ProcedureBasis): Draft {
  const near = full.filter(({ abort }) => abort?.near).map(({ title }) => title);
  return {
    id: 'full-load',
    phase: 'full load',
    does: 'Record, then raise to full load in stages until everything is steady. Watch every instrument.',
    details: [
      ...(full.length === 0 ? ['The study has no instruments: nobody would see what happens.'] : []),
      ...(near.length > 0
        ? [
            `May have to be broken off before it is steady, because the expected interval reaches the limit: ${near.join('; ')}.`,
          ]
        : []),
      ...(unwatched.length > 0 ? [`Near, and watched by no instrument: ${unwatched.join('; ')}.`] : []),
    ],
    stop:
      full.length > 0
        ? 'Break off at the limits below at once. Beyond "stop and think", go back to the small load and find out why.'
        : 'Glue a thermometer to what gets hot first; without one, leave it at the small load.',
    warns: ['watch'],
    readings: full,
  };
}

function afterwards(step: string): Draft[] {
  return [
    { id: 'record', phase: 'after', does: 'Store the run in the study (`uprate import` or `uprate record`).' },
    {
      id: 'learn',
      phase: 'after',
      does: 'Let the board learn from it (`uprate fit`), and look at every residual.',
    },
    {
      id: 'gate',
      phase: 'after',
      does: `Ask the gate: does the board stand safely at ${step}, and may it climb on? Else take the step back (\`uprate undo\`).`,
    },
  ];
}
