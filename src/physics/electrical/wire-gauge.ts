/**
 * Diameter of a solid round wire from its American wire gauge [m].
 *
 * d = 0.127 mm · 92^((36 − n)/39)
 *
 * n  gauge [1]; 0000 is −3, 000 is −2, 00 is −1
 * Valid for n from −3 to 40.
 * Source: ASTM B258, Standard Specification for Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes.
 */
export function wireDiameter(gauge: number): number {
  return 0.127e-3 * 92 ** ((36 - gauge) / 39);
}
