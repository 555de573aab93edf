import { planPadCurve } from '../physics/mechanics/pad-curve.ts';
import type { Plate } from '../physics/mechanics/plate.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { PlateSection } from './schema/plate.ts';

/**
 * The plate that a study describes, with each number as `read` gives it [SI]; parts in the order of the file. Null: the numbers can't be a plate's,
 * such as a pad's curve that falls.
 */
export function plateOf(section: PlateSection, read: (quantity: Quantity) => number): Plate | null {
  const { screws, pads = {}, dies = {}, stops = {} } = section;
  const maybe = (quantity: Quantity | undefined) => (quantity === undefined ? 0 : read(quantity));
  const curves = Object.values(pads).map(({ curve, share }) => {
    const part = read(share);
    return planPadCurve(
      curve.map(({ strain }) => read(strain)),
      curve.map(({ pressure }) => part * read(pressure)),
    );
  });
  if (curves.includes(null)) return null;
  const rectangle = ({ x, y, width, depth }: { x: Quantity; y: Quantity; width: Quantity; depth: Quantity }) => ({
    x: read(x),
    y: read(y),
    width: read(width),
    depth: read(depth),
  });
  const plate: Plate = {
    screws: Object.values(screws).map(({ x, y, force, spring }) => ({
      x: read(x),
      y: read(y),
      force: read(force),
      stiffness: maybe(spring?.rate),
      height: maybe(spring?.at),
    })),
    pads: Object.values(pads).map((pad, index) => ({
      ...rectangle(pad),
      height: read(pad.height) + maybe(pad.step),
      thickness: read(pad.thickness),
      curve: curves[index]!,
    })),
    dies: Object.values(dies).map((die) => ({
      ...rectangle(die),
      height: read(die.height) + maybe(die.step) + read(die.layer.thickness),
      bedding: read(die.layer.modulus) / read(die.layer.thickness),
    })),
    stops: Object.values(stops).map(({ x, y, height, stiffness }) => ({
      x: read(x),
      y: read(y),
      height: read(height),
      stiffness: read(stiffness),
    })),
  };
  return isPossible(plate) ? plate : null;
}

/** Draws from a wide uncertainty may reach what no plate has. */
function isPossible({ screws, pads, dies, stops }: Plate): boolean {
  return (
    screws.every(({ force, stiffness }) => force >= 0 && stiffness >= 0) &&
    [...pads, ...dies].every(({ width, depth }) => width > 0 && depth > 0) &&
    pads.every(({ thickness }) => thickness > 0) &&
    dies.every(({ bedding }) => bedding > 0 && Number.isFinite(bedding)) &&
    stops.every(({ stiffness }) => stiffness > 0)
  );
}
