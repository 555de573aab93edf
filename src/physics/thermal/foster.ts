/** One pair of a Foster network: a thermal resistance [K/W] with its time constant [s]. It is no layer of the part. */
export interface FosterStage {
  readonly resistance: number;
  readonly timeConstant: number;
}

/**
 * Rise for each watt a time after a step of power [K/W].
 *
 * Zth(t) = Σ R_i·(1 − exp(−t/τ_i))
 *
 * R_i, τ_i  stages of the Foster network [K/W], [s]
 * t         time since the step [s]
 * Source: IEC 60747-15; Infineon, AN2008-03, Thermal equivalent circuit models.
 */
export function stepImpedance(stages: readonly FosterStage[], time: number): number {
  return stages.reduce((sum, { resistance, timeConstant }) => sum - resistance * Math.expm1(-time / timeConstant), 0);
}

/**
 * Highest rise for each watt in a long train of equal pulses, at a pulse's end [K/W].
 *
 * Z = Σ R_i·(1 − exp(−t/τ_i))/(1 − exp(−T/τ_i))
 *
 * R_i, τ_i  stages of the Foster network [K/W], [s]
 * t         length of a pulse [s]
 * T         period [s], at least t
 * Source: superposition of steps; geometric series.
 */
export function pulseTrainImpedance(stages: readonly FosterStage[], pulse: number, period: number): number {
  return stages.reduce(
    (sum, { resistance, timeConstant }) =>
      sum + (resistance * Math.expm1(-pulse / timeConstant)) / Math.expm1(-period / timeConstant),
    0,
  );
}

/**
 * Thermal impedance of a Foster network at an angular frequency, real and imaginary part [K/W].
 *
 * Z(jω) = Σ R_i/(1 + j·ω·τ_i)
 *
 * Symbols as for the step. Source: as for the step, by Laplace transform.
 */
export function fosterImpedance(stages: readonly FosterStage[], angularFrequency: number): [number, number] {
  let [real, imaginary] = [0, 0];
  for (const { resistance, timeConstant } of stages) {
    const turn = angularFrequency * timeConstant;
    real += resistance / (1 + turn * turn);
    imaginary -= (resistance * turn) / (1 + turn * turn);
  }
  return [real, imaginary];
}
