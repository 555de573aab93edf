import type { BoardModel } from '../board/assemble.ts';
import type { Failure } from './failures.ts';
import { solveWith } from './working-point.ts';

/** The check at a small load before anything else: what must be read, and what it would tell. */
export interface LowLoadCheck {
  /** Real power past the limiter, set by a person with a meter of their own [W]. */
  readonly real: number;
  /** What the limiter must read then [W]. */
  readonly reads: number;
  /** Half the width of the pass band: two standard uncertainties of reading and meter together [W]. */
  readonly band: number;
  /** What it would read as the step began, at the same load [W]. */
  readonly before: number;
  /** Failures whose reading lies outside of the band. */
  readonly tells: readonly Failure[];
  /** Failures that this check can't tell from a good joint. */
  readonly misses: readonly Failure[];
}

/** Loads that are tried, as shares of what flows at the limit now; the first that tells the most is taken. */
const shares = [0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6];

/**
 * The lowest of some loads at which as many failures as possible show outside of the pass band; null when the board doesn't go so low.
 * `dialled` and `original` are boards with a `dial`; `uReading` is relative; `meter`: standard uncertainty of the real power, given the power.
 */
export function checkAtLowLoad(
  boards: { readonly dialled: BoardModel; readonly original: BoardModel },
  limiter: string,
  present: number,
  failures: readonly Failure[],
  uReading: (real: number, reads: number) => number,
  meter: (real: number) => number,
  lifted: ReadonlyMap<string, number>,
): LowLoadCheck | null {
  const reading = (board: BoardModel, real: number, changed: ReadonlyMap<string, number> = new Map()) => {
    const solved = solveWith(board, new Map([...lifted, ...changed, ['dial', real]]));
    // A load below idle has no solution, and one beyond the demand isn't reached.
    const reached = solved.ending === 'solved' && Math.abs(solved.of(`limiters.${limiter}.real`) / real - 1) < 1e-6;
    return reached ? solved.of(`limiters.${limiter}.reads`) : null;
  };
  let best: LowLoadCheck | null = null;
  for (const share of shares) {
    const real = wholeLoad(share * present);
    const reads = reading(boards.dialled, real);
    const before = reading(boards.original, real);
    if (reads === null || before === null) continue;
    const band = 2 * Math.hypot(uReading(real, reads), (reads / real) * meter(real));
    const shows = (failure: Failure) => {
      if (failure.changed === null) return true;
      const wrong = reading(boards.dialled, real, failure.changed);
      return wrong === null || Math.abs(wrong - reads) > band;
    };
    const tells = failures.filter(shows);
    const misses = failures.filter((failure) => !tells.includes(failure));
    if (!best || tells.length > best.tells.length) best = { real, reads, band, before, tells, misses };
    if (misses.length === 0) break;
  }
  return best;
}

/** A load that a person can set: two digits. */
function wholeLoad(watts: number): number {
  return Number(watts.toPrecision(2));
}
