import { type KindName, kinds } from './kind.ts';
import { type QuantityReading, readQuantity } from './read.ts';

const unitFaults = ['quantity/wrong-dimension', 'quantity/unknown-unit', 'quantity/missing-unit'];

/** Reads a number in the first kind that has such a unit; a difference where it is in kelvins. null: no kind has it. */
export function readAnyKind(text: string): QuantityReading | null {
  const order = ['temperature-difference', ...Object.keys(kinds)] as KindName[];
  for (const kind of order) {
    const read = readQuantity(text, kind);
    if (read.ok || ![...unitFaults, 'quantity/scale-for-difference'].includes(read.fault.code)) return read;
  }
  return null;
}
