import { randomStream } from '../numeric/random.ts';
import type { Step, Study } from '../study/study.ts';
import { drawDepartures } from './departures.ts';
import { drawHidden } from './hidden.ts';
import { type BenchInstrument, VirtualBench } from './virtual-bench.ts';
import type { BoardState } from './virtual-board.ts';

/** A stretch of a rehearsal at one load. */
export interface Stretch {
  /** Share of the full demand [1]. */
  readonly load: number;
  /** [s] */
  readonly seconds: number;
}

/** One row of a played recording. */
export interface PlayedRow {
  /** [s] since the start. */
  readonly time: number;
  /** Readings by instrument [SI]. */
  readonly readings: ReadonlyMap<string, number>;
  readonly state: BoardState;
}

/** Seconds that are still recorded after the machine has switched itself off. */
const aftermath = 120;
/** Ambient wanders around its mean by this much [K], in this time [s]. */
const wandering = 0.3;
const wanderingTime = 2400;

/** A virtual bench for a study: the same seed is the same board with the same hidden numbers and the same instruments, at every step. */
export function rehearsalBench(study: Study, instruments: readonly BenchInstrument[], seed: number): VirtualBench {
  const random = randomStream(seed);
  const hidden = drawHidden(study, random);
  return new VirtualBench(instruments, { hidden, departures: drawDepartures(random), seed });
}

/**
 * Plays a step through its stretches, one row a second, from the steady state of the first. Ends two minutes after the machine has switched itself off.
 */
export function* play(bench: VirtualBench, step: Step, stretches: readonly Stretch[]): Generator<PlayedRow> {
  const board = bench.start(step);
  board.load = stretches[0].load;
  if (!board.settle()) return;
  let time = 0;
  let off = 0;
  for (const { load, seconds } of stretches) {
    board.load = load;
    for (let k = 0; k < seconds; k++) {
      board.ambientDrift = wandering * Math.sin((2 * Math.PI * time) / wanderingTime);
      yield { time, readings: bench.read(board, 1), state: board.state };
      board.advance(1);
      time++;
      if (board.state !== 'running' && ++off > aftermath) return;
    }
  }
}
