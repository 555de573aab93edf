import { exactly, quotient } from './exact.ts';
import type { FosterStage } from './foster.ts';
import type { LadderStage } from './ladder.ts';

/**
 * The Foster network with the same impedance as a Cauer ladder, slowest stage last [K/W and s].
 *
 * Z(s) = N/M by Z_i = 1/(s·C_i + 1/(R_i + Z_(i+1))); τ_i = −1/pole, R_i = Ñ(τ_i)/D'(τ_i), D(τ) = τ^n·M(−1/τ), Ñ(τ) = τ^(n−1)·N(−1/τ)
 *
 * R_i, C_i  rungs of the ladder [K/W], [J/K], more than zero
 * N and M have exact whole coefficients. The poles are bracketed by counting negative pivots, then refined on the exact D by Newton's
 * method to 64 binary places beyond the inputs' own.
 * Throws RangeError for a rung that isn't positive.
 * Source: partial fractions; counting of eigenvalues by pivots, J. H. Wilkinson, The Algebraic Eigenvalue Problem, 1965, chapter 5.
 */
export function fosterFromLadder(stages: readonly LadderStage[]): FosterStage[] {
  if (stages.some(({ resistance, capacity }) => !(resistance > 0 && capacity > 0)))
    throw new RangeError('a rung has a resistance and a heat capacity above zero');
  const resistances = exactly(stages.map(({ resistance }) => resistance));
  const capacities = exactly(stages.map(({ capacity }) => capacity));
  const { numerator, denominator } = impedance(resistances.whole, capacities.whole);
  const unit = resistances.bits + capacities.bits;
  return stages.map((_, i) => {
    const rough = 1 / poleNumber(stages, stages.length - i);
    let time = scaled(rough, unit + extraBits);
    for (let pass = 0; pass < 8; pass++) {
      const { value, slope } = alternate(denominator, time);
      time -= value / slope;
    }
    const { slope } = alternate(denominator, time);
    return {
      resistance: quotient(alternate(numerator, time).value, slope, -resistances.bits),
      timeConstant: quotient(time, 1n, -(unit + extraBits)),
    };
  });
}

const extraBits = 64;

function scaled(value: number, bits: number): bigint {
  const exact = exactly([value]);
  return exact.whole[0] << BigInt(bits - exact.bits);
}

/** Numerator and denominator of the impedance by rising powers of s. */
function impedance(resistances: readonly bigint[], capacities: readonly bigint[]) {
  let numerator: bigint[] = [];
  let denominator: bigint[] = [1n];
  for (let i = resistances.length - 1; i >= 0; i--) {
    const onward = denominator.map((coefficient, power) => resistances[i] * coefficient + (numerator[power] ?? 0n));
    denominator = [...denominator, 0n].map(
      (coefficient, power) => coefficient + (power > 0 ? capacities[i] * onward[power - 1] : 0n),
    );
    numerator = onward;
  }
  return { numerator, denominator };
}

/** Σ (−1)^k·a_k·τ^(n−k) and its slope, for τ in units of 2^−extraBits. */
function alternate(coefficients: readonly bigint[], time: bigint): { value: bigint; slope: bigint } {
  let [value, slope] = [0n, 0n];
  for (const [k, coefficient] of coefficients.entries()) {
    slope = slope * time + value;
    const term = coefficient << BigInt(extraBits * k);
    value = value * time + (k % 2 === 0 ? term : -term);
  }
  return { value, slope };
}

/** The pole with its number from 1, the slowest first [1/s]. */
function poleNumber(stages: readonly LadderStage[], number: number): number {
  // Slower than all heat through all resistance, faster than twice what two least resistances make of the least capacity (Gershgorin).
  const resistances = stages.map((stage) => stage.resistance);
  const capacities = stages.map((stage) => stage.capacity);
  let low = 0.5 / (sumOf(resistances) * sumOf(capacities));
  let high = 5 / (Math.min(...resistances) * Math.min(...capacities));
  while (high / low > 1 + 1e-14) {
    const middle = Math.sqrt(low) * Math.sqrt(high);
    if (polesBelow(stages, middle) < number) low = middle;
    else high = middle;
  }
  return Math.sqrt(low) * Math.sqrt(high);
}

function polesBelow(stages: readonly LadderStage[], rate: number): number {
  let count = 0;
  let onward = 1 / stages[stages.length - 1].resistance;
  for (let i = stages.length - 1; i >= 0; i--) {
    const self = onward - rate * stages[i].capacity;
    const inward = i === 0 ? 0 : 1 / stages[i - 1].resistance;
    const pivot = self + inward;
    if (pivot < 0) count++;
    onward = (inward * self) / (pivot === 0 ? Number.MIN_VALUE : pivot);
  }
  return count;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
