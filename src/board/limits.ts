import type { KindName } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Rating } from '../study/schema/leaf.ts';
import type { Outputs } from './outputs.ts';
import type { Slots } from './slots.ts';

/** A threshold as it is at this point: a plain rating, or one that falls with temperature. */
type Threshold = (x: Float64Array, y: Float64Array) => number;

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
    readonly rule: (rating: number, temperature: number, x: Float64Array) => number;
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
  readonly threshold: Threshold;
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
  readonly known: BoardLimit[] = [];
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
    const slot = this.slots.of(rating);
    const valueOutput = this.outputs.find(of);
    const thresholdOutput = this.outputs.add(`${id}.limit`, kind, unit, `limit: ${title}`);
    const temperature = derated ? this.outputs.find(derated.temperature) : -1;
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
    const threshold: Threshold = derated ? (x, y) => derated.rule(x[slot], y[temperature], x) : (x) => x[slot];
    this.known.push({ id, title, of, side, consequence, valueOutput, thresholdOutput, marginOutput, threshold });
  }

  write(x: Float64Array, y: Float64Array): void {
    for (let i = 0; i < this.known.length; i++) {
      const limit = this.known[i];
      const threshold = limit.threshold(x, y);
      y[limit.thresholdOutput] = threshold;
      const room = threshold - y[limit.valueOutput];
      y[limit.marginOutput] = limit.side === 'under' ? room : -room;
    }
  }
}
