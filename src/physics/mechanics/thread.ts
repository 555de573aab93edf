/** Height of the sharp triangle of a metric or unified thread [m], for a pitch [m]: H = (√3/2)·P. Source: ISO 68-1. */
function sharpHeight(pitch: number): number {
  return (Math.sqrt(3) / 2) * pitch;
}

/**
 * Pitch diameter of a metric or unified thread [m].
 *
 * d2 = d − (3/4)·H, H = (√3/2)·P
 *
 * d  nominal diameter [m]
 * P  pitch [m]
 * Valid for the basic profile; a real thread is smaller by its tolerance.
 * Source: ISO 68-1 and ISO 724.
 */
export function pitchDiameter(diameter: number, pitch: number): number {
  return diameter - (3 / 4) * sharpHeight(pitch);
}

/**
 * Stress area of a metric screw [m²].
 *
 * A = (π/4)·(d − (13/12)·H)², H = (√3/2)·P
 *
 * d  nominal diameter [m]
 * P  pitch [m]
 * Valid for the basic profile; d − (13/12)·H = d − 0.9382·P is the mean of pitch and minor diameter.
 * Unified threads take d − 0.9743·P instead (ASME B1.1), which is 0.6 % less area for 3/4-16.
 * Source: ISO 898-1, nominal stress area.
 */
export function stressArea(diameter: number, pitch: number): number {
  return (Math.PI / 4) * (diameter - (13 / 12) * sharpHeight(pitch)) ** 2;
}
