import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type MeanDifference, studentDifference, welchDegrees } from '../metrology/mean-difference.ts';
import { adjustByHolm } from '../metrology/several-tests.ts';
import { type WeightedMean, weightedMean } from '../metrology/weighted-mean.ts';
import { kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import { readChannels, readRun } from '../runs/read-run.ts';
import type { Channel } from '../runs/run.ts';
import { levelChannel, type Window, type WindowValue, windowsOf } from '../runs/windows.ts';
import { writeChance } from './comparison-text.ts';
import type { Outcome } from './envelope.ts';
import { locateStudy } from './load-study.ts';
import { writeTable } from './text-table.ts';

interface WindowPair {
  readonly window: string;
  /** What the window is in either run: its load. */
  readonly titles: readonly [before: string, after: string];
  readonly before: WindowValue;
  readonly after: WindowValue;
  readonly difference: MeanDifference;
  readonly chanceAmongAll: number;
}

/** Two runs of a study, window by window of the same name: one channel, or the power that tells the windows apart. */
export async function compareRuns(
  studyArgument: string,
  named: readonly string[],
  wanted: string | undefined,
  confidence: number,
): Promise<Outcome> {
  if (named.length !== 2) throw new Refusal(refuse('compare/two-runs', { count: named.length }));
  const { folder } = await locateStudy(studyArgument);
  const [one, other] = await Promise.all(named.map((id) => windowsOfRun(folder, id, wanted)));
  const common = one.windows.filter(({ id }) => other.windows.some((window) => window.id === id));
  if (common.length === 0) {
    const ids = { first: one.windows.map(({ id }) => id), second: other.windows.map(({ id }) => id) };
    throw new Refusal(refuse('compare/no-common-window', { one: named[0], other: named[1], ...ids }));
  }
  const found = common.flatMap(({ id, title, channels }) => {
    const before = channels[one.channel.name];
    const counterpart = other.windows.find((window) => window.id === id)!;
    const after = counterpart.channels[other.channel.name];
    const titles = [title, counterpart.title] as const;
    const difference = before && after ? differenceOfValues(before, after, confidence) : null;
    return difference ? [{ window: id, titles, before, after, difference }] : [];
  });
  if (found.length === 0) throw new Refusal(refuse('compare/no-uncertainty', { channel: one.channel.name }));
  const adjusted = adjustByHolm(found.map(({ difference }) => difference.chance));
  const pairs = found.map((pair, k): WindowPair => ({ ...pair, chanceAmongAll: adjusted[k] }));
  const over = weightedMean(
    pairs.map(({ difference }) => difference.difference),
    pairs.map(({ difference }) => difference.u),
  );
  const { kind, unit, name } = one.channel;
  return {
    text: runsText(named, one.channel, pairs, over, confidence),
    json: { runs: named, channel: name, unit: kind ? kinds[kind].siUnit : unit, confidence, windows: pairs, over },
    exit: 0,
  };
}

async function windowsOfRun(folder: string, id: string, wanted: string | undefined) {
  const run = await readRun(folder, id);
  const readings = await readChannels(folder, run);
  const level = levelChannel(run, readings);
  if (!level) throw new Refusal(refuse('run/no-power', { run: id }));
  const windows: Window[] = windowsOf(run, readings, level);
  const known = run.channels.filter(({ name }) => windows.some(({ channels }) => name in channels));
  const channel = known.find(({ name }) => name === (wanted ?? level.name));
  if (channel) return { windows, channel };
  const names = known.map(({ name }) => name);
  const near = nearest(wanted ?? '', names) ?? '';
  throw new Refusal(refuse('compare/no-such-channel', { run: id, channel: wanted ?? '', known: names, near }));
}

/** The uncertainty of each mean counts as one of as many readings as are independent. */
function differenceOfValues(before: WindowValue, after: WindowValue, confidence: number): MeanDifference | null {
  if (before.u === null || after.u === null) return null;
  const [one, other] = [before, after].map(({ mean, u, independent }) => {
    const n = Math.max(2, independent);
    return { n, mean, variance: u! ** 2 * n };
  });
  const variance = before.u ** 2 + after.u ** 2;
  return studentDifference(other.mean - one.mean, variance, welchDegrees(one, other), confidence);
}

function runsText(
  [one, other]: readonly string[],
  channel: Channel,
  pairs: readonly WindowPair[],
  over: WeightedMean,
  confidence: number,
): string {
  const unit = channel.kind ? channel.unit : '1';
  const kind = channel.kind ?? 'ratio';
  const temperature = kind === 'temperature';
  const amount = (value: number, u: number) =>
    writeValue(value, u, temperature ? 'K' : unit, temperature ? 'temperature-difference' : kind);
  const rows = pairs.map(({ window, titles, before, after, difference, chanceAmongAll }) => [
    `${window}: ${[...new Set(titles)].join(' and ')}`,
    writeValue(before.mean, before.u, unit, kind),
    writeValue(after.mean, after.u, unit, kind),
    amount(difference.difference, difference.u),
    `${amount(difference.low, difference.u).split(' ±')[0]} to ${amount(difference.high, difference.u).split(' ±')[0]}`,
    writeChance(chanceAmongAll),
    before.settled && after.settled ? '' : 'not settled',
  ]);
  const table = writeTable(
    [
      { heading: 'window' },
      { heading: one, align: 'right' },
      { heading: other, align: 'right' },
      { heading: 'difference', align: 'right' },
      { heading: `${Number((100 * confidence).toPrecision(6))} %`, align: 'right' },
      { heading: 'by chance', align: 'right' },
      { heading: '' },
    ],
    rows,
    '  ',
  );
  const shownIn = pairs.filter(({ chanceAmongAll }) => chanceAmongAll < 0.05).map(({ window }) => window);
  const verdict =
    shownIn.length === 0
      ? `verdict: no difference of ${channel.name} is shown`
      : `verdict: ${channel.name} differs in ${shownIn.join(', ')}`;
  return [
    `${channel.name} in runs ${one} and ${other}; ± is one standard uncertainty of the readings, without the sensor's own error; by chance: adjusted by Holm for ${pairs.length} windows`,
    table,
    ...(over.birgeRatio === null ? [] : [overText(over, amount)]),
    verdict,
  ].join('\n\n');
}

function overText({ mean, uAgreed, birgeRatio }: WeightedMean, amount: (value: number, u: number) => string): string {
  const agree =
    birgeRatio! > 1.5
      ? 'the difference is not the same in all windows'
      : 'the windows agree within their uncertainties';
  return `over all windows ${amount(mean, uAgreed)}; Birge ratio ${birgeRatio!.toFixed(2)}: ${agree}`;
}
