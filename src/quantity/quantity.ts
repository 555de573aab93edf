import type { KindName } from './kind.ts';
import type { Spread } from './spread.ts';

/** A number with its unit, its uncertainty and the way it was written. */
export interface Quantity {
  readonly kind: KindName;
  /** Best value [SI]. */
  readonly value: number;
  /** Unit as written, for display ("mΩ", "degC"). */
  readonly unit: string;
  /** null: written without an uncertainty. */
  readonly spread: Spread | null;
  /** The text it was read from, trimmed; writing it back unchanged gives this text. */
  readonly text: string;
  /** Where the number comes from, when its field says so. */
  readonly source?: string;
  /** What was stated before a fit replaced it [SI]; the next fit starts from this. */
  readonly before?: { readonly value: number; readonly spread: Spread | null };
}
