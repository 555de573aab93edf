import type { RandomStream } from '../numeric/random.ts';

/** What a virtual board does that the tool's own board leaves out. None: the two agree in steady state. */
export interface Departures {
  /** Exponent with which a film coefficient grows with its rise, from its stated value at 25 K [1]. */
  readonly filmExponent: number;
  /** How much less efficient the supply is at half load than at full load [1]. */
  readonly partLoadLoss: number;
  /** Standard deviation of the phases' shares beside the stated imbalance [1]. */
  readonly phaseScatter: number;
  /** Thermal resistance that interface material gains while it is hot, relative [1]. */
  readonly ageing: number;
  /** Whether a regulator's loss curve runs between its points as overlapping parabolas, not as the tool joins them. */
  readonly parabolas: boolean;
  /** What instruments' offsets gain in an hour, in units of their stated uncertainty [1]. */
  readonly drift: number;
}

export const noDepartures: Departures = {
  filmExponent: 0,
  partLoadLoss: 0,
  phaseScatter: 0,
  ageing: 0,
  parabolas: false,
  drift: 0,
};

/** Departures of an ordinary board; their sizes are our own estimate, no source. */
export function drawDepartures(random: RandomStream): Departures {
  return {
    filmExponent: 0.1 * random.uniform(),
    partLoadLoss: 0.02 * random.uniform(),
    phaseScatter: 0.01 * random.uniform(),
    ageing: 0.02 * random.uniform(),
    parabolas: true,
    drift: 0.05 * random.uniform(),
  };
}
