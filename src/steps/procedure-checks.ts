import type { LimiterReading, LowLoad } from './low-load.ts';
import type { Draft, ProcedureBasis } from './procedure-item.ts';
import type { SenseCheck } from './sense-check.ts';

/** What a changed sense point must measure. */
export function measurement({ part, title, expected, low, high, mistakes, meter }: SenseCheck): Draft {
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

/** What the firmware must read at a small load. */
export function lowLoadItem(low: LowLoad | null, before: string): Draft {
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

export function soakItem(low: LowLoad | null): Draft {
  return {
    id: 'soak',
    phase: 'soak',
    does: 'Stay at the small load for 15 minutes, until no temperature climbs any more (common practice, no source).',
    details: low && low.instruments.length > 0 ? ['Every instrument stays in its interval of the check before.'] : [],
    stop: 'A reading leaves its interval, or climbs on without end: switch off.',
    warns: ['hot'],
  };
}

/** What the instruments must show at full load, and where it is broken off. */
export function fullLoadItem({ full, unwatched }: ProcedureBasis): Draft {
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
