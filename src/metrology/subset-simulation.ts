import { randomStream } from '../numeric/random.ts';
import type { SampledProbability } from './importance-sampling.ts';
import type { LimitState } from './normal-space.ts';

export interface SubsetOptions {
  readonly seed: number;
  /** Draws a level; 1000 by default. */
  readonly draws?: number;
  /** Probabilities below this are not followed any further; 1e-10 by default. */
  readonly least?: number;
}

/** What subset simulation found. */
export interface Subset extends SampledProbability {
  /** Draws beyond the limit; none where it was not reached. */
  readonly exceeding: readonly Float64Array[];
}

/** Part of a level's draws that begins the chains of the next. */
const SHARE = 0.1;
const MOST_LEVELS = 40;

/**
 * Probability of a negative margin as a product of larger ones: of the first level's draws the lowest tenth is kept, chains of draws go on from
 * each of them below its threshold, and so on until the threshold is 0. A chain's next candidate is ρ·z + √(1−ρ²)·ξ, refused above the threshold;
 * ρ is adapted to an acceptance near 0.44. Needs neither slopes nor a single design point, but many more draws than importance sampling.
 *
 * The coefficient of variation counts the correlation along the chains: δᵢ² = (1−pᵢ)/(pᵢN)·(1+γᵢ), γᵢ = 2·Σₖ (1−k·Nc/N)·ρᵢ(k), δ² = Σ δᵢ².
 * Sources: S.-K. Au, J. L. Beck, Prob. Eng. Mech. 16 (2001) 263–277; candidates and adaptation: I. Papaioannou, W. Betz,
 * K. Zwirglmaier, D. Straub, Prob. Eng. Mech. 41 (2015) 89–103.
 */
export function subsetSimulation(state: LimitState, options: SubsetOptions): Subset {
  const { seed, draws: n = 1000, least = 1e-10 } = options;
  const stream = randomStream(seed);
  const dimensions = state.dimensions;
  const chains = Math.round(SHARE * n);
  const length = n / chains;
  let points: Float64Array[] = Array.from({ length: n }, () =>
    Float64Array.from({ length: dimensions }, () => stream.normal()),
  );
  let margins = points.map((z) => state.at(z));
  let probability = 1;
  let variation = 0;
  let spread = 0.6;

  for (let level = 0; ; level++) {
    const order = margins.map((_, s) => s).sort((a, b) => margins[a] - margins[b] || a - b);
    const between = (margins[order[chains - 1]] + margins[order[chains]]) / 2;
    const threshold = margins[order[chains - 1]] < 0 ? 0 : between;
    const last = threshold <= 0;
    const inside = margins.map((margin) => (last ? margin < 0 : margin <= threshold));
    const share = inside.filter(Boolean).length / n;
    if (share > 0) {
      probability *= share;
      variation += ((1 - share) / (share * n)) * (1 + (level === 0 ? 0 : correlation(inside, chains, length, share)));
    }
    const stuck = !last && (level === MOST_LEVELS || margins[order[0]] === margins[order[n - 1]]);
    if (last || stuck || probability < least) {
      const found = last ? probability : 0;
      const width = Math.exp(1.96 * Math.sqrt(Math.log1p(variation)));
      return {
        probability: found,
        u: last ? probability * Math.sqrt(variation) : probability,
        low: found / width,
        high: Math.min(1, probability * width),
        exceeding: points.filter((_, s) => margins[s] < 0),
      };
    }

    const seeds = order.slice(0, chains);
    const next: Float64Array[] = [];
    const nextMargins: number[] = [];
    let accepted = 0;
    let tried = 0;
    let factor = 1;
    // Chain after chain, so that a chain's draws stand side by side; the candidates' distance is adapted every tenth of the chains.
    seeds.forEach((s, chain) => {
      let z = points[s];
      let margin = margins[s];
      for (let k = 0; k < length; k++) {
        const distance = Math.min(1, factor * spread);
        const keep = Math.sqrt(1 - distance * distance);
        const candidate = z.map((each) => keep * each + distance * stream.normal());
        const candidateMargin = state.at(candidate);
        tried++;
        if (candidateMargin <= threshold) {
          z = candidate;
          margin = candidateMargin;
          accepted++;
        }
        next.push(z);
        nextMargins.push(margin);
      }
      if ((chain + 1) % Math.max(1, Math.round(chains / 10)) === 0) {
        const round = (chain + 1) / Math.max(1, Math.round(chains / 10));
        factor = Math.exp(Math.log(factor) + (accepted / tried - 0.44) / Math.sqrt(round));
        accepted = 0;
        tried = 0;
      }
    });
    spread = Math.min(1, factor * spread);
    points = next;
    margins = nextMargins;
  }
}

/** γ of a level: what the correlation of the indicator along the chains adds to its variance [1]. */
function correlation(inside: readonly boolean[], chains: number, length: number, share: number): number {
  let gamma = 0;
  for (let lag = 1; lag < length; lag++) {
    let together = 0;
    for (let chain = 0; chain < chains; chain++)
      for (let k = 0; k + lag < length; k++)
        if (inside[chain * length + k] && inside[chain * length + k + lag]) together++;
    const covariance = together / (chains * (length - lag)) - share * share;
    gamma += 2 * (1 - lag / length) * (covariance / (share * (1 - share) || 1));
  }
  return Math.max(0, gamma);
}
