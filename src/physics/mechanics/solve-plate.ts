import { cholesky, choleskySolve } from '../../numeric/dense.ts';
import type { Die, DieLoad, Pad, PadLoad, Plate, PlateAtRest, PlateResult } from './plate.ts';
import {
  type Forces,
  type Frame,
  forcesAt,
  heightAt,
  padCompression,
  padPoint,
  screwForce,
  touchDie,
} from './plate-forces.ts';
import type { Contact, Rectangle } from './rectangle-contact.ts';

const tolerance = 1e-10;
const mostPasses = 100;
/** Beyond this slope a plate has tipped over; small angles no longer hold. */
const tipped = 0.2;

/**
 * Where a rigid plate comes to rest on a die, gap pads and stops, and what each of them carries.
 *
 * Force and moment balance Σ Fᵢ = 0, Σ Fᵢ·xᵢ = 0, Σ Fᵢ·yᵢ = 0 in its height and two tilts. Contacts push and never pull, and push more the more they
 * are compressed: the potential energy is convex, so there is one place of rest at most. Newton's method on it, each step as long as the energy
 * falls along it.
 *
 * Valid for a plate that is stiff against pads and board, for small tilts, without friction.
 * Source: statics; S. Boyd, L. Vandenberghe, Convex Optimization, 2004, section 9.5, for the method.
 */
export function solvePlate(plate: Plate): PlateResult {
  const frame = frameOf(plate);
  if (frame === null) return { ending: 'unsupported', residual: 1, passes: 0 };
  const forces: Forces = { pull: 0, gradient: new Float64Array(3), stiffness: new Float64Array(9) };
  const u = new Float64Array([startOf(plate) - frame.z, 0, 0]);
  const trial = new Float64Array(3);
  forcesAt(plate, frame, u, forces);
  for (let passes = 0; ; passes++) {
    const residual = residualOf(forces);
    const factor = cholesky(forces.stiffness, 3);
    if (Math.hypot(u[1], u[2]) > tipped * frame.size) return { ending: 'unsupported', residual, passes };
    if (residual <= tolerance) {
      if (factor === null) return { ending: 'unsupported', residual, passes };
      return describe(plate, frame, u, residual, passes);
    }
    if (passes === mostPasses) return { ending: 'unsettled', residual, passes };
    const step = choleskySolve(factor ?? softened(forces, frame), forces.gradient, 3).map((value) => -value);
    if (!advance(plate, frame, u, step, trial, forces)) return { ending: 'unsupported', residual, passes };
  }
}

/**
 * Moves u along the step until the energy has nearly stopped falling: its slope is between 9/10 of what it was at the start and 1/10 of that upwards.
 * False when it falls for ever.
 */
function advance(
  plate: Plate,
  frame: Frame,
  u: Float64Array,
  step: Float64Array,
  trial: Float64Array,
  forces: Forces,
): boolean {
  const start = slopeAlong(step, forces);
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let length = 1;
  for (let tries = 0; tries < 100; tries++) {
    for (let i = 0; i < 3; i++) trial[i] = u[i] + length * step[i];
    forcesAt(plate, frame, trial, forces);
    const slope = slopeAlong(step, forces);
    if (slope > -0.1 * start) high = length;
    else if (slope < 0.9 * start) low = length;
    else break;
    if (low > 2 ** 60) return false;
    const next = high === Number.POSITIVE_INFINITY ? 2 * length : (low + high) / 2;
    if (next === length) break;
    length = next;
  }
  u.set(trial);
  return true;
}

function slopeAlong(step: Float64Array, { gradient }: Forces): number {
  return gradient[0] * step[0] + gradient[1] * step[1] + gradient[2] * step[2];
}

function residualOf({ gradient, pull }: Forces): number {
  return Math.max(Math.abs(gradient[0]), Math.abs(gradient[1]), Math.abs(gradient[2])) / (pull > 0 ? pull : 1);
}

/** Where nothing holds the plate in some direction, a weak spring does: the step goes far there, and the search along it finds how far. */
function softened({ stiffness, pull }: Forces, frame: Frame): Float64Array {
  const soft = stiffness.slice();
  const weak = 1e-6 * stiffness[0] || (pull || 1) / frame.size;
  for (let i = 0; i < 9; i += 4) soft[i] += weak;
  const factor = cholesky(soft, 3);
  if (factor === null) throw new Error('a plate has stiffnesses that are negative or not finite');
  return factor;
}

/** Centre, middle height and size of what carries and pulls; null where nothing carries. */
function frameOf({ screws, pads, dies, stops }: Plate): Frame | null {
  const carriers = [...pads, ...dies, ...stops];
  if (carriers.length === 0) return null;
  const all = [...carriers, ...screws];
  const x = all.reduce((sum, place) => sum + place.x, 0) / all.length;
  const y = all.reduce((sum, place) => sum + place.y, 0) / all.length;
  const z = carriers.reduce((sum, { height }) => sum + height, 0) / carriers.length;
  const reach = all.map((place) => Math.hypot(place.x - x, place.y - y));
  const own = [...pads, ...dies].map(({ width, depth }) => Math.hypot(width, depth));
  return { x, y, z, size: Math.max(...reach, ...own) || 1e-3 };
}

/** A height at which everything that can carry does, from where the first steps are sure. */
function startOf({ pads, dies, stops }: Plate): number {
  const tops = [...pads.map(({ height, thickness }) => height + 0.9 * thickness), ...dies.map(({ height }) => height)];
  return Math.min(...tops, ...stops.map(({ height }) => height)) - 1e-6;
}

function describe(plate: Plate, frame: Frame, u: Float64Array, residual: number, passes: number): PlateAtRest {
  const found: Contact = { g: new Float64Array(3), area: new Float64Array(6) };
  return {
    ending: 'solved',
    height: heightAt(frame, u, 0, 0),
    tiltX: u[1] / frame.size,
    tiltY: u[2] / frame.size,
    pads: plate.pads.map((pad) => describePad(pad, frame, u)),
    dies: plate.dies.map((die) => {
      touchDie(die, frame, u, found);
      return describeDie(die, frame, u, found);
    }),
    screwForces: plate.screws.map(({ x, y, force, stiffness, height }) =>
      screwForce(force, stiffness, heightAt(frame, u, x, y) - height),
    ),
    stopForces: plate.stops.map(({ x, y, height, stiffness }) =>
      Math.max(0, stiffness * (height - heightAt(frame, u, x, y))),
    ),
    residual,
    passes,
  };
}

function describePad(pad: Pad, frame: Frame, u: Float64Array): PadLoad {
  const area = pad.width * pad.depth;
  let force = 0;
  for (const i of [-padPoint, padPoint]) {
    for (const j of [-padPoint, padPoint]) {
      const compression = padCompression(pad, frame, u, pad.x + i * pad.width, pad.y + j * pad.depth);
      force += (area / 4) * pad.curve.pressureAt(compression / pad.thickness);
    }
  }
  const compression = padCompression(pad, frame, u, pad.x, pad.y);
  const largestStrain = (compression + atCorner(pad, frame, u)) / pad.thickness;
  return {
    compression,
    strain: compression / pad.thickness,
    largestStrain,
    force,
    meanPressure: force / area,
    covered: largestStrain <= 0 || pad.curve.covers(largestStrain),
  };
}

function describeDie(die: Die, frame: Frame, u: Float64Array, { g, area }: Contact): DieLoad {
  const size = die.width * die.depth;
  const depth = die.height - heightAt(frame, u, die.x, die.y);
  const corner = atCorner(die, frame, u);
  const force = die.bedding * g[0];
  const meanPressure = force / size;
  const highestPressure = die.bedding * Math.max(0, depth + corner);
  return {
    force,
    meanPressure,
    highestPressure,
    lowestPressure: die.bedding * Math.max(0, depth - corner),
    unevenness: force > 0 ? highestPressure / meanPressure : null,
    contact: Math.min(1, area[0] / size),
    gap: Math.max(0, -(depth + corner)),
    x: g[0] > 0 ? g[1] / g[0] : die.x,
    y: g[0] > 0 ? g[2] / g[0] : die.y,
  };
}

/** How much lower than at the centre the plate stands over a rectangle's lowest corner [m]. */
function atCorner({ width, depth }: Rectangle, frame: Frame, u: Float64Array): number {
  return (Math.abs(u[1]) * width + Math.abs(u[2]) * depth) / (2 * frame.size);
}
