import type { BoardModel } from '../board/assemble.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Input } from '../metrology/model.ts';
import { readQuantity } from '../quantity/read.ts';
import type { Study } from '../study/study.ts';

/** An instrument of the study, understood: what it shows and how far its readings may be off together. */
export interface Instrument {
  readonly id: string;
  readonly title: string;
  readonly channel: string;
  /** Board output it shows. */
  readonly shows: string;
  /** Standard uncertainty that all its readings share [SI]. */
  readonly u: number;
  /** Standard uncertainty that each steady value has for itself, from one steady state to the next [SI]. */
  readonly repeatability: number;
}

/** An instrument as the study states it. Throws a Refusal when it shows nothing that the board has, or its uncertainty can't be read. */
export function readInstrument(board: BoardModel, id: string, entry: Study['instruments'][string]): Instrument {
  const place = board.indexOfOutput(entry.shows);
  if (place < 0) {
    const known = board.outputs.map((output) => output.id);
    const near = nearest(entry.shows, known) || known[0];
    throw new Refusal(refuse('board/no-such-output', { limit: `instruments.${id}`, of: entry.shows, near }));
  }
  const { kind } = board.outputs[place];
  const sizeOf = (text: string) => {
    const read = readQuantity(text, kind === 'temperature' ? 'temperature-difference' : kind);
    if (!read.ok) throw new Refusal(read.fault);
    return read.quantity.value;
  };
  const { title = id, channel, shows } = entry;
  const repeatability = entry.repeatability === undefined ? 0 : sizeOf(entry.repeatability);
  return { id, title, channel, shows, u: sizeOf(entry.uncertainty), repeatability };
}

/** What an instrument's readings are off by, all alike, as an input. */
export function errorInput({ id, shows, u, title }: Instrument, board: BoardModel): Input {
  const { kind, unit } = board.outputs[board.indexOfOutput(shows)];
  return {
    id: `instruments.${id}.error`,
    kind: kind === 'temperature' ? 'temperature-difference' : kind,
    unit: kind === 'temperature' ? 'K' : unit,
    value: 0,
    spread: { shape: 'normal', u },
    source: `stated uncertainty of ${title}`,
  };
}
