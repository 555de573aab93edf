import { exactly, quotient } from './exact.ts';
import type { FosterStage } from './foster.ts';
import type { LadderStage } from './ladder.ts';

/**
 * The Cauer ladder with the same impedance as a Foster network, in exact arithmetic [K/W and J/K].
 *
 * Z(s) = N/M, M = Π (1 + s·τ_i), N = Σ R_i·Π_(j≠i) (1 + s·τ_j); over and over: M ← M − s·C·N with C = lead(M)/lead(N), N ← N − R·M with R = lead(N)/lead(M)
 *
 * R_i, τ_i  Foster stages [K/W], [s], more than zero, no two time constants alike
 * All polynomials keep whole coefficients: each step multiplies by leading coefficients h_k and divides by the common factor h_(k−2), so
 * that quotients of the true polynomials are h_(k−1)²/(h_(k−2)·h_k). Only the results are rounded, to the last place.
 * Throws RangeError for a stage that isn't positive and for equal time constants.
 * Source: continued fraction expansion about infinity, W. Cauer, Archiv für Elektrotechnik 17 (1926) 355–388; fraction-free elimination,
 * E. H. Bareiss, Mathematics of Computation 22 (1968) 565–578.
 */
export function ladderFromFoster(stages: readonly FosterStage[]): LadderStage[] {
  checkStages(stages);
  const times = exactly(stages.map(({ timeConstant }) => timeConstant));
  const resistances = exactly(stages.map(({ resistance }) => resistance));

  let upper = times.whole.reduce(multiplyByPole, [1n]);
  let lower = sumOfResidues(times.whole, resistances.whole);
  const leads = [leadOf(upper), leadOf(lower)];
  const common = (k: number) => (k < 1 ? 1n : leads[k]);
  for (let k = 1; k < 2 * stages.length; k++) {
    // A capacity comes off with one s, a resistance without.
    const shifted = k % 2 === 1 ? [0n, ...lower] : lower;
    const rest = upper.map(
      (coefficient, power) => (leads[k] * coefficient - leads[k - 1] * shifted[power]) / common(k - 2),
    );
    [upper, lower] = [lower, rest.slice(0, -1)];
    leads.push(leadOf(lower));
  }
  const element = (k: number, bits: number) =>
    k === 1 ? quotient(leads[0], leads[1], bits) : quotient(leads[k - 1] ** 2n, common(k - 2) * leads[k], bits);
  return stages.map((_, i) => ({
    capacity: element(2 * i + 1, resistances.bits - times.bits),
    resistance: element(2 * i + 2, -resistances.bits),
  }));
}

function leadOf(polynomial: readonly bigint[]): bigint {
  return polynomial[polynomial.length - 1];
}

function checkStages(stages: readonly FosterStage[]): void {
  const times = stages.map(({ timeConstant }) => timeConstant);
  if (stages.some(({ resistance, timeConstant }) => !(resistance > 0 && timeConstant > 0)))
    throw new RangeError('a Foster stage has a resistance and a time constant above zero');
  if (new Set(times).size < times.length) throw new RangeError('two Foster stages have the same time constant');
}

/** Coefficients by rising power of s: polynomial·(1 + s·time). */
function multiplyByPole(polynomial: readonly bigint[], time: bigint): bigint[] {
  return [...polynomial, 0n].map((coefficient, power) => coefficient + (power > 0 ? polynomial[power - 1] * time : 0n));
}

function sumOfResidues(times: readonly bigint[], resistances: readonly bigint[]): bigint[] {
  const sum = times.map(() => 0n);
  for (const [i, resistance] of resistances.entries()) {
    const others = times.filter((_, j) => j !== i).reduce(multiplyByPole, [1n]);
    for (const [power, coefficient] of others.entries()) sum[power] += resistance * coefficient;
  }
  return sum;
}
