import { Refusal, refuse } from '../fault/fault.ts';
import { quantile } from '../metrology/distribution.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import { moments } from '../quantity/moments.ts';
import { readAnyKind } from '../quantity/read-any-kind.ts';
import { degreesOfFreedom, endsOf, type Spread, standardUncertainty } from '../quantity/spread.ts';
import { showValue, writeValue } from '../quantity/write.ts';
import type { Outcome } from './envelope.ts';
import { writeTable } from './text-table.ts';

const shapes: Readonly<Record<Spread['shape'], string>> = {
  normal: 'a standard uncertainty: normal',
  t: "a standard uncertainty from few readings: Student's t",
  'log-normal':
    'a large relative uncertainty of what is positive: log-normal, the best value in the middle of the odds',
  rectangular: 'certainly inside, nothing else known: flat',
  triangular: 'certainly inside, likeliest at the best value: a triangle',
  'u-shaped': 'certainly inside, swinging between the ends: U-shaped',
  trapezoidal: 'certainly inside, flat in the middle: a trapezoid',
  curvilinear: 'flat between limits that are themselves not known exactly: a curvilinear trapezoid',
  sorted: 'a tolerance from which a narrower one was sorted out: flat with a hole',
  choice: 'one of several values',
};

/** The `number` verb: what is said by a number as it is written, with the exact moments of its distribution. */
export function runNumber(text: string): Outcome {
  const read = readAnyKind(text);
  if (!read?.ok) throw new Refusal(read?.fault ?? refuse('quantity/no-such-unit', { text }));
  const { kind, value, spread, unit } = read.quantity;
  const heading = `${text.trim()}: ${kinds[kind].title}`;
  const json = { kind, unit: kinds[kind].siUnit, value };
  if (spread === null)
    return { text: `${heading}\nno uncertainty is stated`, json: { ...json, uncertainty: null }, exit: 0 };
  const known = moments(spread, value);
  const u = standardUncertainty(spread, value);
  const interval = { low: quantile(spread, value, 0.025), high: quantile(spread, value, 0.975) };
  const ends = endsOf(spread);
  const freedom = degreesOfFreedom(spread);
  const skewness = known.third === null ? null : known.third / known.variance! ** 1.5;
  const kurtosis = known.fourth === null ? null : known.fourth / known.variance! ** 2;
  const difference: KindName = kind === 'temperature' ? 'temperature-difference' : kind;
  const size = (number: number) => writeValue(number, null, kind === 'temperature' ? 'K' : unit, difference);
  // A digit more than u has, so that the ends of a narrow tolerance are told apart.
  const place = (number: number) => {
    const shown = showValue(number, u / 10, unit, kind);
    return `${shown.value} ${shown.unit}`.trim();
  };
  const plain = (number: number | null) => (number === null ? 'none: its ends are too heavy' : number.toPrecision(4));
  const rows = [
    ['best value', place(value)],
    ['mean', known.mean === null ? plain(null) : place(known.mean)],
    ['standard uncertainty', size(u)],
    ...(Number.isFinite(freedom) ? [['degrees of freedom', plain(freedom)]] : []),
    ['standard deviation', known.variance === null ? plain(null) : size(Math.sqrt(known.variance))],
    ['skewness', plain(skewness)],
    ['kurtosis (normal: 3)', plain(kurtosis)],
    ['95 % of the cases', `${place(interval.low)} to ${place(interval.high)}`],
    ...(ends ? [['certainly between', `${place(ends.low)} and ${place(ends.high)}`]] : []),
  ];
  // The headings are left out: the first column says what each row is.
  const table = writeTable([{ heading: '' }, { heading: '' }], rows, '  ')
    .split('\n')
    .slice(1)
    .join('\n');
  return {
    text: `${heading}\n${shapes[spread.shape]}\n\n${table}`,
    json: {
      ...json,
      uncertainty: {
        ...spread,
        standardUncertainty: u,
        degreesOfFreedom: Number.isFinite(freedom) ? freedom : null,
        ...known,
        interval,
        ends,
      },
    },
    exit: 0,
  };
}
