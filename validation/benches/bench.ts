import { assembleBoard, type BoardModel } from '../../src/board/assemble.ts';
import { randomStream } from '../../src/numeric/random.ts';
import { drawDepartures, noDepartures } from '../../src/rehearsal/departures.ts';
import { drawHidden } from '../../src/rehearsal/hidden.ts';
import type { Planted } from '../../src/rehearsal/planted.ts';
import { type BenchInstrument, type BenchWindow, VirtualBench } from '../../src/rehearsal/virtual-bench.ts';
import { readInstrument } from '../../src/steps/instrument.ts';
import type { Step, Study } from '../../src/study/study.ts';
import { randomStudy } from './random-study.ts';

/** Loads of a baseline, as shares of the full demand: two below the limiter, one that it holds. */
const baselineLoads = [0.12, 0.25, 1];
/** Loads at a later step. */
const stepLoads = [0.25, 1];

/** One virtual bench of a campaign: a random study, and a hidden board that is drawn from what the study says. */
export interface CampaignBench {
  readonly study: Study;
  readonly bench: VirtualBench;
  readonly instruments: readonly BenchInstrument[];
}

/** `added`: nodes that get a thermocouple beside the instruments that the study begins with. */
export function makeBench(
  seed: number,
  departing: boolean,
  plant?: (study: Study, pick: number) => Planted,
  added: readonly string[] = [],
): CampaignBench {
  const study = randomStudy(seed, added);
  const random = randomStream(7919 * seed + 3);
  const hidden = drawHidden(study, random);
  const departures = departing ? drawDepartures(random) : noDepartures;
  const instruments = instrumentsOf(study);
  const faults = plant ? [plant(study, random.uniform())] : [];
  return { study, instruments, bench: new VirtualBench(instruments, { hidden, departures, faults, seed }) };
}

export function assembled(step: Step): BoardModel {
  const assembly = assembleBoard(step);
  if (!assembly.ok) throw new Error('a board that cannot be assembled');
  return assembly.board;
}

function instrumentsOf(study: Study): BenchInstrument[] {
  const board = assembled(study.steps[0]);
  return Object.entries(study.instruments).map(([id, entry]) => {
    const { kind } = board.outputs[board.indexOfOutput(entry.shows)];
    return { ...readInstrument(board, id, entry), temperature: kind === 'temperature' };
  });
}

/** Windows at every load of a step; null where the virtual board has no steady state at one of them. */
export function windowsAt({ study, bench }: CampaignBench, k: number, run = study.steps[k].id): BenchWindow[] | null {
  const step = study.steps[k];
  const windows = (k === 0 ? baselineLoads : stepLoads).map((load) => bench.window(step, run, load));
  return windows.includes(null) ? null : (windows as BenchWindow[]);
}
