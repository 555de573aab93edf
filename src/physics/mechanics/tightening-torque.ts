/**
 * Tightening torque of a screw for each newton of preload, from pitch and friction [m].
 *
 * T/F = (d2/2)·(l + π·μ·d2/cos α)/(π·d2 − μ·l/cos α) + μh·dh/2
 *
 * l   lead: the pitch of a single thread [m]
 * d2  pitch diameter [m]
 * μ   friction in the thread [1]
 * α   half the angle between the flanks [rad]: 30° for metric and unified threads, 0 for square ones
 * μh  friction under the head [1]
 * dh  mean diameter of the surface under the head [m]
 * Valid for μ·l/cos α < π·d2, that is for every real thread; friction itself is known to ±20 % at best.
 * Source: Shigley's Mechanical Engineering Design, equation 8-26. VDI 2230-1, 2001, writes the same as F·(0.16·P + 0.58·d2·μ + μh·dh/2), without the small product.
 */
export function tighteningArm(
  lead: number,
  pitchDiameter: number,
  threadFriction: number,
  flankAngle: number,
  headFriction: number,
  headDiameter: number,
): number {
  const friction = threadFriction / Math.cos(flankAngle);
  const climb = lead + Math.PI * friction * pitchDiameter;
  return (
    ((pitchDiameter / 2) * climb) / (Math.PI * pitchDiameter - friction * lead) + (headFriction * headDiameter) / 2
  );
}

/**
 * Torque that loosens a screw for each newton of preload [m]; negative where the screw turns back by itself.
 *
 * T/F = (d2/2)·(π·μ·d2/cos α − l)/(π·d2 + μ·l/cos α) + μh·dh/2
 *
 * Symbols, range and source as for tightening (Shigley, equations 8-2 and 8-5).
 */
export function looseningArm(
  lead: number,
  pitchDiameter: number,
  threadFriction: number,
  flankAngle: number,
  headFriction: number,
  headDiameter: number,
): number {
  return tighteningArm(-lead, pitchDiameter, threadFriction, flankAngle, headFriction, headDiameter);
}
