/**
 * Preload of a screw from its tightening torque, by the nut factor [N].
 *
 * F = T/(K·d)
 *
 * T  tightening torque [N·m]
 * K  nut factor [1]: about 0.20 dry, 0.15 lubricated; it holds all of the friction
 * d  nominal diameter of the thread [m]
 * Valid within about ±25 to ±30 %, which is what friction scatters by; the preload of a screw that bottoms on a shoulder is the spring's, not this.
 * Source: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, section 8-8; NASA TM-106943, Preloaded Joint Analysis Methodology, 1995. Scatter: common practice, no source.
 */
export function preloadFromTorque(torque: number, nutFactor: number, diameter: number): number {
  return torque / (nutFactor * diameter);
}

/** Tightening torque that gives a preload, by the nut factor [N·m]; symbols, range and source as for the preload. */
export function torqueForPreload(preload: number, nutFactor: number, diameter: number): number {
  return nutFactor * diameter * preload;
}
