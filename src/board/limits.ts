import type { KindName } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Rating } from '../study/schema/leaf.ts';
import type { Outputs } from './outputs.ts';
import type { Slots } from './slots.ts';

export interface LimitRequest {
  /** Path of the rating in the study; the limit's id. */
  readonly id: string;
  readonly title: string;
  readonly rating: Rating;
  /** Output that is held. */
  readonly of: string;
  readonly kind: KindName;
  readonly unit: string;
  readonly side?: 'under' | 'over';
  readonly consequence: string;
  /** Falls with the temperature of an output. */
  readonly derated?: {
    readonly temperature: string;
    readonly rule: (rating: number, temperature: number, lane: number) => number;
  };
}

export interface BoardLimit {
  readonly id: string;
  readonly title: string;
  readonly of: string;
  readonly side: 'under' | 'over';
  readonly consequence: string;
  readonly valueOutput: number;
  readonly thresholdOutput: number;
  readonly marginOutput: number;
  /** Threshold beside outputs that came about otherwise, with the inputs of the board's last evaluation [SI]. */
  thresholdBeside(y: ArrayLike<number>): number;
}

/** A limit and how its threshold comes about: a plain rating, or one that falls with temperature. */
interface KnownLimit extends BoardLimit {
  readonly rating: Float64Array;
  readonly derated: LimitRequest['derated'];
  /** Output the rating falls with; −1 for a plain one. */
  readonly temperatureOutput: number;
}

/** A limit that exists and has no data. */
export interface OpenBoardLimit {
  readonly id: string;
  readonly title: string;
  readonly of: string;
  readonly valueOutput: number;
}

/** Temperatures subtract to differences. */
const marginKind = (kind: KindName): KindName => (kind === 'temperature' ? 'temperature-difference' : kind);
const marginUnit = (kind: KindName, unit: string): string => (kind === 'temperature' ? 'K' : unit);

/** Collects what the board is held against: known limits with their outputs, and open ones. */
export class Limits {
  readonly known: KnownLimit[] = [];
  readonly open: OpenBoardLimit[] = [];

  constructor(
    readonly slots: Slots,
    readonly outputs: Outputs,
  ) {}

  add(request: LimitRequest): void {
    const { id, title, of, rating } = request;
    const valueOutput = this.outputs.find(of);
    if (valueOutput < 0) throw new Error(`limit "${id}" holds "${of}", which is no output`);
    if (rating === 'none') return;
    if (rating === undefined || rating === 'open') {
      this.open.push({ id, title, of, valueOutput });
      return;
    }
    this.hold(request, rating);
  }

  hold(request: LimitRequest, rating: Quantity): void {
    const { id, title, of, kind, unit, side = 'under', consequence, derated } = request;
    const valueOutput = this.outputs.find(of);
    const thresholdOutput = this.outputs.add(`${id}.limit`, kind, unit, `limit: ${title}`);
    const temperatureOutput = derated ? this.outputs.find(derated.temperature) : -1;
    const marginOutput = this.outputs.add(
      `${id}.margin`,
      marginKind(kind),
      marginUnit(kind, unit),
      `margin: ${title}`,
      {
        side,
        thresholdOutput: `${id}.limit`,
        valueOutput: of,
        reason: title,
      },
    );
    const column = this.slots.column(rating);
    this.known.push({
      id,
      title,
      of,
      side,
      consequence,
      valueOutput,
      thresholdOutput,
      marginOutput,
      rating: column,
      derated,
      temperatureOutput,
      thresholdBeside: (y) => (derated ? derated.rule(column[0], y[temperatureOutput], 0) : column[0]),
    });
  }

  write(y: readonly Float64Array[], from: number, to: number): void {
    for (let i = 0; i < this.known.length; i++) {
      const { rating, derated, temperatureOutput, valueOutput, thresholdOutput, marginOutput, side } = this.known[i];
      const threshold = y[thresholdOutput];
      if (derated) for (let s = from; s < to; s++) threshold[s] = derated.rule(rating[s], y[temperatureOutput][s], s);
      else for (let s = from; s < to; s++) threshold[s] = rating[s];
      const value = y[valueOutput];
      const margin = y[marginOutput];
      const sign = side === 'under' ? 1 : -1;
      for (let s = from; s < to; s++) margin[s] = sign * (threshold[s] - value[s]);
    }
  }
}
