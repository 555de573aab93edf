import { meanOfSeries } from '../metrology/series.ts';
import type { Step } from '../study/study.ts';
import { type Departures, noDepartures } from './departures.ts';
import type { HiddenValues } from './hidden.ts';
import type { Planted } from './planted.ts';
import { type BoardState, VirtualBoard } from './virtual-board.ts';
import { type Fitting, VirtualInstruments } from './virtual-instruments.ts';

/** A window of readings at one load, as the tool's fit takes it: mean and standard uncertainty by channel, SI. */
export interface BenchWindow {
  readonly run: string;
  readonly id: string;
  readonly title: string;
  readonly step: string;
  readonly channels: Readonly<
    Record<string, { readonly mean: number; readonly u: number; readonly settled: boolean; readonly why: string }>
  >;
}

export interface BenchSetup {
  readonly hidden: HiddenValues;
  readonly departures?: Departures;
  readonly faults?: readonly Planted[];
  readonly seed: number;
}

/** An instrument with the channel that its readings are recorded in. */
export type BenchInstrument = Fitting & { readonly channel: string };

/** A virtual board with its instruments on a bench: plays a step at a load, and knows the truth. */
export class VirtualBench {
  readonly #setup: Required<BenchSetup>;
  readonly #instruments: readonly BenchInstrument[];
  readonly #sensors: VirtualInstruments;

  constructor(instruments: readonly BenchInstrument[], setup: BenchSetup) {
    this.#setup = { departures: noDepartures, faults: [], ...setup };
    this.#instruments = instruments;
    const { departures, faults } = this.#setup;
    this.#sensors = new VirtualInstruments(instruments, departures.drift, faults, setup.seed + 1);
  }

  /** What the numbers of the study really are here. */
  get hidden(): HiddenValues {
    return this.#setup.hidden;
  }

  /** The board at a step, cold. */
  board(step: Step): VirtualBoard {
    return new VirtualBoard(step, this.#setup);
  }

  /** The board at a step, cold, with its instruments on it anew. */
  start(step: Step): VirtualBoard {
    this.#sensors.restart();
    return this.board(step);
  }

  /** What the instruments show `dt` seconds after they were last read, by instrument [SI]. */
  read(board: VirtualBoard, dt: number): ReadonlyMap<string, number> {
    return this.#sensors.read(board.outputs, dt);
  }

  /** True outputs in the steady state at full demand, behind any trip; null where there is no steady state. */
  truth(step: Step): ReadonlyMap<string, number> | null {
    const board = this.board(step);
    board.armed = false;
    return board.settle() ? board.outputs : null;
  }

  /**
   * Runs a step at a share of the full demand until it is steady, then reads the instruments once a second.
   * Null where the board doesn't get there: `state` of `ended` says why.
   */
  window(
    step: Step,
    run: string,
    load: number,
    readings = 120,
    ended?: (state: BoardState) => void,
  ): BenchWindow | null {
    const board = this.board(step);
    board.load = load;
    if (!board.settle() || board.state !== 'running') {
      ended?.(board.state);
      return null;
    }
    const series = new Map(this.#instruments.map(({ id }) => [id, new Float64Array(readings)]));
    this.#sensors.restart();
    // An hour of warming up, as the instruments' slow drift sees it.
    this.#sensors.read(board.outputs, 3600);
    for (let k = 0; k < readings; k++) {
      board.advance(1);
      for (const [id, value] of this.#sensors.read(board.outputs, 1)) series.get(id)![k] = value;
    }
    const channels = this.#instruments.map(({ id, channel }) => {
      const { mean, uMean } = meanOfSeries(series.get(id)!, this.#sensors.resolution(id));
      return [channel, { mean, u: uMean!, settled: true, why: 'run until nothing moved' }] as const;
    });
    const percent = `${Math.round(100 * load)} %`;
    return {
      run,
      id: `load-${Math.round(100 * load)}`,
      title: `load ${percent}`,
      step: step.id,
      channels: Object.fromEntries(channels),
    };
  }
}
