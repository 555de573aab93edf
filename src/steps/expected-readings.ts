import type { BoardModel } from '../board/assemble.ts';
import type { BoardLimit } from '../board/limits.ts';
import { budget } from '../metrology/budget.ts';
import type { MonteCarlo } from '../metrology/monte-carlo.ts';
import type { Sensitivities } from '../metrology/sensitivity.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { type Instrument, readInstrument } from './instrument.ts';
import type { Figure } from './step-plan.ts';

/** Where a run is broken off: the limit, and what the instrument then reads. */
export interface Abort {
  /** Limit nearest to what is expected, by its id. */
  readonly limit: string;
  readonly title: string;
  readonly side: 'under' | 'over';
  readonly at: Figure;
  /** The expected interval reaches beyond it: the run may have to be broken off before it is steady. */
  readonly near: boolean;
}

/** What an instrument is expected to read, and from where on something is wrong. */
export interface ExpectedReading {
  readonly id: string;
  readonly title: string;
  readonly channel: string;
  /** ± is the standard uncertainty of prediction and instrument together. */
  readonly expected: Figure;
  /** 95 % interval of the reading: two combined standard uncertainties to either side. */
  readonly low: Figure;
  readonly high: Figure;
  /** Three combined standard uncertainties above what is expected: stop and think; null where the run is broken off before. */
  readonly think: Figure | null;
  /** Two standard uncertainties of the instrument on this side of the limit; null where nothing known limits what it shows. */
  readonly abort: Abort | null;
}

/**
 * What every instrument of the study is expected to read at one operating point, whose sensitivities are given; with a run of draws there, its standard
 * uncertainties are taken, because another limiter may hold in some of them.
 */
export function expectedReadings(
  study: Study,
  board: BoardModel,
  sens: Sensitivities,
  run?: MonteCarlo,
): readonly ExpectedReading[] {
  return Object.entries(study.instruments).map(([id, entry]) => {
    const instrument = readInstrument(board, id, entry);
    const place = board.indexOfOutput(instrument.shows);
    const { kind, unit } = board.outputs[place];
    const own = Math.hypot(instrument.u, instrument.repeatability);
    const u = Math.hypot(
      run?.outputs.get(instrument.shows)?.u ?? budget(board, instrument.shows, sens)?.u ?? Number.NaN,
      own,
    );
    const value = sens.y0[place];
    const rounded = (at: number) => atDigitsOf(figure(at, u, kind, unit));
    const { title, channel } = instrument;
    const abort = nearestAbort(board, sens, instrument, u);
    const think = value + 3 * u;
    const thinks = abort === null || abort.side === 'over' || abort.at.value > think;
    return {
      id,
      title,
      channel,
      expected: figure(value, u, kind, unit),
      low: rounded(value - 2 * u),
      high: rounded(value + 2 * u),
      think: thinks ? rounded(think) : null,
      abort,
    };
  });
}

/** The same number without its uncertainty, with the digits which that allows. */
export function atDigitsOf(shown: Figure): Figure {
  return { ...shown, u: null, text: shown.text.split(' ± ')[0] };
}

function nearestAbort(board: BoardModel, sens: Sensitivities, instrument: Instrument, u: number): Abort | null {
  const place = board.indexOfOutput(instrument.shows);
  const { kind, unit } = board.outputs[place];
  const value = sens.y0[place];
  const found = board.limits.flatMap((limit) => {
    const at = thresholdAt(board, sens, limit, instrument);
    if (at === null) return [];
    const room = limit.side === 'under' ? at - value : value - at;
    return [{ limit, at, room }];
  });
  found.sort((a, b) => a.room - b.room);
  const [first] = found;
  if (!first) return null;
  const { limit, at, room } = first;
  const { u: own } = instrument;
  const text = atDigitsOf(figure(at, own > 0 ? own : null, kind, unit));
  return { limit: limit.id, title: limit.title, side: limit.side, at: text, near: room < 2 * u };
}

/**
 * What the instrument reads when the limit is reached for certain enough: limit ∓ 2·u of the instrument. A trip is held by what the firmware reads: an
 * instrument that shows the real power reaches it at limit·(real/read), and that ratio's uncertainty counts as well. Null: another quantity.
 */
function thresholdAt(
  board: BoardModel,
  sens: Sensitivities,
  { of, side, thresholdOutput }: BoardLimit,
  { shows, u }: Instrument,
): number | null {
  const away = side === 'under' ? -2 : 2;
  const threshold = sens.y0[thresholdOutput];
  if (of === shows) return threshold + away * u;
  if (!of.endsWith('.reads') || shows !== of.replace(/\.reads$/, '.real')) return null;
  const real = board.indexOfOutput(shows);
  const reads = board.indexOfOutput(of);
  const ratio = sens.y0[real] / sens.y0[reads];
  let variance = 0;
  for (let i = 0; i < sens.u.length; i++)
    variance += ((sens.c[real][i] / sens.y0[real] - sens.c[reads][i] / sens.y0[reads]) * sens.u[i]) ** 2;
  return threshold * ratio + away * Math.hypot(u, threshold * ratio * Math.sqrt(variance));
}
