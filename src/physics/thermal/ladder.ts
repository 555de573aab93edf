/** One rung of a Cauer ladder, from the junction outward: a heat capacity [J/K] to ambient, then a thermal resistance [K/W] onward. */
export interface LadderStage {
  readonly resistance: number;
  readonly capacity: number;
}

/**
 * Thermal impedance of a Cauer ladder at an angular frequency, real and imaginary part [K/W].
 *
 * Z_i = 1/(j·ω·C_i + 1/(R_i + Z_(i+1))), Z = 0 behind the last
 *
 * R_i, C_i  rungs of the ladder [K/W], [J/K]
 * ω         angular frequency [rad/s]
 * Source: IEC 60747-15; Infineon, AN2008-03, Thermal equivalent circuit models.
 */
export function ladderImpedance(stages: readonly LadderStage[], angularFrequency: number): [number, number] {
  let [real, imaginary] = [0, 0];
  for (const { resistance, capacity } of [...stages].reverse()) {
    const onward = reciprocal(real + resistance, imaginary);
    [real, imaginary] = reciprocal(onward[0], onward[1] + angularFrequency * capacity);
  }
  return [real, imaginary];
}

function reciprocal(real: number, imaginary: number): [number, number] {
  const square = real * real + imaginary * imaginary;
  return [real / square, -imaginary / square];
}

/** A point of the cumulative structure function: heat capacity [J/K] reached at a thermal resistance [K/W], both from the junction. */
export interface StructurePoint {
  readonly resistance: number;
  readonly capacity: number;
}

/**
 * Cumulative structure function of a ladder: along the heat path, how much capacity lies before how much resistance.
 *
 * C_Σ(R_Σ) = Σ C_i against Σ R_i
 *
 * Symbols as for the impedance. Two curves part where the changed layer lies.
 * Source: V. Székely, T. Van Bien, Solid-State Electronics 31 (1988) 1363–1368; JEDEC JESD51-14.
 */
export function structureFunction(stages: readonly LadderStage[]): StructurePoint[] {
  let [resistance, capacity] = [0, 0];
  return stages.map((stage) => {
    resistance += stage.resistance;
    capacity += stage.capacity;
    return { resistance, capacity };
  });
}
