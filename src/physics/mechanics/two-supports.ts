/**
 * Force on the second of two supports of a rigid plate [N]; the first carries the rest.
 *
 * F2 = F·(x − x1)/(x2 − x1)
 *
 * F       force on the plate [N]
 * x       where it acts [m]
 * x1, x2  where the supports are [m]
 * Negative: the plate would lift off there. Valid for a plate that is stiff against its supports.
 * Source: law of the lever; R. C. Hibbeler, Engineering Mechanics: Statics, chapter 5.
 */
export function forceOnSecond(force: number, position: number, first: number, second: number): number {
  return (force * (position - first)) / (second - first);
}

/**
 * Tilt of a rigid plate on two springs [rad]; positive: the second support sinks more.
 *
 * θ = (F2/k2 − F1/k1)/(x2 − x1), F2 = F·(x − x1)/(x2 − x1), F1 = F − F2
 *
 * k1, k2  stiffness of the supports [N/m]
 * Other symbols, range and source as for the force on the second support; small angles.
 */
export function tiltOnTwo(
  force: number,
  position: number,
  first: number,
  second: number,
  stiffness1: number,
  stiffness2: number,
): number {
  const force2 = forceOnSecond(force, position, first, second);
  return (force2 / stiffness2 - (force - force2) / stiffness1) / (second - first);
}
