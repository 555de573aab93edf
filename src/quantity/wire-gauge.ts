/**
 * Diameter of a solid round wire of an AWG number [m].
 * d = 0.127 mm · 92^((36 − n)/39); n counts on below zero: 0, 00 (−1), 000 (−2), 0000 (−3).
 * Valid for −3 ≤ n ≤ 56. Source: ASTM B258.
 */
export function wireGaugeDiameter(gauge: number): number {
  return 0.127e-3 * 92 ** ((36 - gauge) / 39);
}

/** Reads `AWG 18`, `18 AWG`, `AWG 00` or `2/0 AWG` as a diameter [m]; null for anything else. */
export function readWireGauge(text: string): number | null {
  const found = /^\s*(?:AWG\s*([1-4]\/0|0{1,4}|\d{1,2})|([1-4]\/0|0{1,4}|\d{1,2})\s*AWG)\s*$/i.exec(text);
  if (!found) return null;
  const written = found[1] ?? found[2];
  if (written.endsWith('/0')) return wireGaugeDiameter(1 - Number(written[0]));
  const gauge = /^0+$/.test(written) ? 1 - written.length : Number(written);
  return gauge > 56 ? null : wireGaugeDiameter(gauge);
}
