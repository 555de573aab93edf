import type { FosterStage } from './foster.ts';

/**
 * Foster stages of a uniform rod or slab, heated at one end and held at the other [K/W and s].
 *
 * R_n = 8·R/((2n − 1)²·π²), τ_n = 4·R·C/((2n − 1)²·π²)
 *
 * R  thermal resistance from end to end [K/W]
 * C  heat capacity [J/K]
 * n  from 1 to the number of stages; what is left out adds up to about 2·R/(π²·stages)
 * Source: partial fractions of √(R/(s·C))·tanh √(s·R·C); H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., section 3.4.
 */
export function rodStages(resistance: number, capacity: number, stages: number): FosterStage[] {
  return Array.from({ length: stages }, (_, i) => {
    const wave = ((2 * i + 1) * Math.PI) ** 2;
    return { resistance: (8 * resistance) / wave, timeConstant: (4 * resistance * capacity) / wave };
  });
}
