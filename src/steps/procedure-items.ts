import { type Caution, cautions } from './cautions.ts';
import type { DescribedChange } from './changes-of.ts';
import { fullLoadItem, lowLoadItem, measurement, soakItem } from './procedure-checks.ts';
import type { Draft, ProcedureBasis, ProcedureItem } from './procedure-item.ts';
import { isByHand, isCooling, isElectrical } from './work.ts';

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

function reconnection(): Draft {
  return {
    id: 'reconnect',
    phase: 'low load',
    does: 'Reconnect the battery, if there is one, then the adapter; start the machine and watch its idle power and temperatures for a minute.',
    stop: 'Anything smells, clicks, or is hot at once: cut the power.',
    warns: ['battery'],
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
