import type { Pad, Plate } from './plate.ts';
import { type Contact, touch } from './rectangle-contact.ts';

/**
 * The plate's three freedoms are scaled: u = (height over `z`, tiltX·size, tiltY·size), all in metres, about the centre (x, y).
 * That keeps digits where compressions are small against heights, and makes the equations alike in size.
 */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly size: number;
}

/** Forces on a plate at a position: what pulls, what is unbalanced, and how that changes. */
export interface Forces {
  /** Pull of all screws [N]. */
  pull: number;
  /** Gradient of the potential energy: unbalanced force, and moments about the centre over the plate's size [N]. */
  readonly gradient: Float64Array;
  /** Its derivative, symmetric 3 × 3; the lower half is filled [N/m]. */
  readonly stiffness: Float64Array;
}

/** Two points along each side of a pad stand for all of it: exact for a straight pressure curve under a tilted plate (Gauss–Legendre). */
export const padPoint = 1 / (2 * Math.sqrt(3));

/** Height of the plate's underside over a place [m]. */
export function heightAt(frame: Frame, u: Float64Array, x: number, y: number): number {
  return frame.z + u[0] + (u[1] * (x - frame.x)) / frame.size + (u[2] * (y - frame.y)) / frame.size;
}

/** Compression of a pad at a place on it [m], negative where it doesn't touch. */
export function padCompression(pad: Pad, frame: Frame, u: Float64Array, x: number, y: number): number {
  return pad.height - heightAt(frame, u, x, y) + pad.thickness;
}

/** Pull of a screw with the plate at a height [N]. */
export function screwForce(force: number, stiffness: number, rise: number): number {
  return Math.max(0, force + stiffness * rise);
}

const contact: Contact = { g: new Float64Array(3), area: new Float64Array(6) };

/** Works out the forces on a plate at position u. */
export function forcesAt(plate: Plate, frame: Frame, u: Float64Array, forces: Forces): void {
  const { gradient, stiffness } = forces;
  forces.pull = 0;
  gradient.fill(0);
  stiffness.fill(0);
  for (const screw of plate.screws) {
    const force = screwForce(screw.force, screw.stiffness, heightAt(frame, u, screw.x, screw.y) - screw.height);
    forces.pull += force;
    addPoint(forces, frame, screw.x, screw.y, force, force > 0 ? screw.stiffness : 0);
  }
  for (const stop of plate.stops) {
    const depth = stop.height - heightAt(frame, u, stop.x, stop.y);
    if (depth > 0) addPoint(forces, frame, stop.x, stop.y, -stop.stiffness * depth, stop.stiffness);
  }
  for (const pad of plate.pads) {
    const area = (pad.width * pad.depth) / 4;
    for (let i = 0; i < 4; i++) {
      const x = pad.x + (i % 2 === 0 ? -padPoint : padPoint) * pad.width;
      const y = pad.y + (i < 2 ? -padPoint : padPoint) * pad.depth;
      const strain = padCompression(pad, frame, u, x, y) / pad.thickness;
      if (strain > 0) {
        const slope = (area * pad.curve.slopeAt(strain)) / pad.thickness;
        addPoint(forces, frame, x, y, -area * pad.curve.pressureAt(strain), slope);
      }
    }
  }
  for (const die of plate.dies) {
    touchDie(die, frame, u, contact);
    addDie(forces, frame, die.bedding, contact);
  }
}

/** Contact of the plate with a die: how deep it presses in, and over which part. */
export function touchDie(die: Plate['dies'][number], frame: Frame, u: Float64Array, found: Contact): void {
  const b = -u[1] / frame.size;
  const c = -u[2] / frame.size;
  touch(die, die.height - heightAt(frame, u, 0, 0), b, c, found);
}

/** A force at a point, positive towards the board, and how it grows with the plate's height. */
function addPoint(forces: Forces, frame: Frame, x: number, y: number, force: number, slope: number): void {
  const { gradient, stiffness } = forces;
  const p = (x - frame.x) / frame.size;
  const q = (y - frame.y) / frame.size;
  gradient[0] += force;
  gradient[1] += force * p;
  gradient[2] += force * q;
  addSymmetric(stiffness, slope, slope * p, slope * q, slope * p * p, slope * p * q, slope * q * q);
}

function addDie(forces: Forces, frame: Frame, bedding: number, { g, area }: Contact): void {
  const { gradient, stiffness } = forces;
  const { x, y, size } = frame;
  gradient[0] -= bedding * g[0];
  gradient[1] -= (bedding * (g[1] - x * g[0])) / size;
  gradient[2] -= (bedding * (g[2] - y * g[0])) / size;
  const [one, ax, ay, axx, axy, ayy] = area;
  const scale = bedding / (size * size);
  addSymmetric(
    stiffness,
    bedding * one,
    (bedding * (ax - x * one)) / size,
    (bedding * (ay - y * one)) / size,
    scale * (axx - 2 * x * ax + x * x * one),
    scale * (axy - x * ay - y * ax + x * y * one),
    scale * (ayy - 2 * y * ay + y * y * one),
  );
}

function addSymmetric(m: Float64Array, zz: number, zx: number, zy: number, xx: number, xy: number, yy: number): void {
  m[0] += zz;
  m[3] += zx;
  m[4] += xx;
  m[6] += zy;
  m[7] += xy;
  m[8] += yy;
}
