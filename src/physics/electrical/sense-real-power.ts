/**
 * Real power when a limiter that reads one sense resistor holds at what it allows [W].
 *
 * P = P_allowed·R_assumed/R
 *
 * P_allowed  power the limiter allows, by its own reading [W]
 * R_assumed  resistance the firmware believes in [Ω]
 * R          resistance that is really there [Ω], more than zero
 * Valid for one sense point without divider and offset.
 * Source: Ohm's law.
 */
export function realPower(allowed: number, assumedResistance: number, resistance: number): number {
  return (allowed * assumedResistance) / resistance;
}
