import { besselJ } from './bessel.ts';
import type { Spreading } from './spreading-rectangle.ts';

/**
 * Spreading resistance of a round source in the middle of a round plate, by the exact series [K/W].
 *
 * mean    R = 4/(π·k·b·ε²)·Σ J1(λ·ε)²·Φ(λ)/(λ³·J0(λ)²)
 * centre  R = 2/(π·k·b·ε)·Σ J1(λ·ε)·Φ(λ)/(λ²·J0(λ)²)
 * Φ = (λ + Bi·tanh(λ·τ))/(λ·tanh(λ·τ) + Bi), ε = a/b, τ = t/b, Bi = h·b/k, λ the positive zeros of J1
 *
 * a  radius of the source [m]
 * b  radius of the plate [m], more than a
 * t  thickness of the plate [m]
 * k  its thermal conductivity [W/(m·K)]
 * h  film coefficient on its far side [W/(m²·K)]
 * It comes on top of (t/k + 1/h)/(π·b²). Valid for uniform flux over the source and an insulated edge.
 * Source: M. M. Yovanovich, J. R. Culham, P. Teertstra, IEEE Trans. Components, Packaging and Manufacturing Technology A 21 (1998) 168–176 (equations from memory, derived again).
 */
export function discSpreading(
  sourceRadius: number,
  plateRadius: number,
  thickness: number,
  conductivity: number,
  film: number,
): Spreading {
  const epsilon = sourceRadius / plateRadius;
  const tau = thickness / plateRadius;
  const biot = (film * plateRadius) / conductivity;
  let [mean, centre] = [0, 0];
  for (let n = 1; n <= Math.ceil(wavesAcrossSource / epsilon); n++) {
    zeros[n] ??= zeroOfJ1(n);
    const { zero, crest } = zeros[n];
    const tanh = Math.tanh(zero * tau);
    const through = (zero + biot * tanh) / (zero * tanh + biot) / crest ** 2;
    const share = besselJ(1, zero * epsilon) / zero;
    mean += (share * share * through) / zero;
    centre += (share * through) / zero;
  }
  const unit = Math.PI * conductivity * plateRadius * epsilon;
  return { mean: (4 * mean) / (unit * epsilon), centre: (2 * centre) / unit };
}

/** The series is cut where a wave is this many times shorter than the source's radius; what is left is below 0.1 %. */
const wavesAcrossSource = 200;

/** Found once: they are the same for every disc, and most of the work. */
const zeros: { readonly zero: number; readonly crest: number }[] = [];

/** Positive zero of J1 with its number from 1, and J0 there: McMahon's expansion (Abramowitz and Stegun 9.5.12), then Newton's method. */
function zeroOfJ1(n: number): { zero: number; crest: number } {
  const beta = (n + 0.25) * Math.PI;
  let zero = beta - 3 / (8 * beta);
  for (let i = 0; i < 3; i++) {
    // The slope of J1 at its zeros is J0.
    zero -= besselJ(1, zero) / besselJ(0, zero);
  }
  return { zero, crest: besselJ(0, zero) };
}
