/**
 * Effective (rms) ripple current of the input capacitors of a multiphase buck converter [A].
 *
 * I = √(K1²·I_out² + K2²·ΔI²), with m = ⌈N·D⌉
 * K1² = (N·D − m + 1)·(m − N·D)/N²
 * K2² = [m²·(N·D − m + 1)³ + (m − 1)²·(m − N·D)³]/(12·N²·D²)
 *
 * N      phases, evenly interleaved [1]
 * D      duty [1], above 0, up to 1
 * I_out  output current of all phases together [A]
 * ΔI     peak-to-peak ripple of one phase [A]
 * Valid in continuous conduction, phases sharing evenly, where the capacitors carry all of the alternating current.
 * Source: Intersil, ISL6366 data sheet, equations 49–51.
 */
export function inputCapacitorCurrent(phases: number, duty: number, outputCurrent: number, ripple: number): number {
  const overlap = phases * duty;
  const m = Math.ceil(overlap);
  const above = overlap - m + 1;
  const below = m - overlap;
  const direct = (above * below) / (phases * phases);
  const cubes = m * m * above * above * above + (m - 1) * (m - 1) * below * below * below;
  const alternating = cubes / (12 * overlap * overlap);
  return Math.sqrt(direct * outputCurrent * outputCurrent + alternating * ripple * ripple);
}
