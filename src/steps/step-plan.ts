import type { Fault } from '../fault/fault.ts';
import type { Method } from '../metrology/margin.ts';
import type { Ending } from '../metrology/model.ts';

/** A number for people and programs: SI value, SI unit, and the text with the unit and digits a person would use. */
export interface Figure {
  /** NaN or infinite where there is none (null in JSON); `text` then says why. */
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty, same unit; null when none is known. */
  readonly u: number | null;
  /** "54.3 W ± 0.8 W"; ± is one standard uncertainty. */
  readonly text: string;
}

/** A limit held against the board at one step. */
export interface Margin {
  readonly id: string;
  readonly title: string;
  /** Output id of the value that is held. */
  readonly of: string;
  readonly side: 'under' | 'over';
  readonly limit: Figure;
  readonly value: Figure;
  /** Distance to the limit, negative when it is exceeded. */
  readonly margin: Figure;
  /** Margin as a share of the limit; null where that has no meaning: temperatures in °C, or a limit of 0. */
  readonly share: number | null;
  readonly u: Figure;
  /** 95 % interval of the margin. */
  readonly interval: { readonly low: Figure; readonly high: Figure; readonly level: number };
  /** The shortest 95 % interval of the margin, which lies nearer to where the values crowd. */
  readonly shortest: { readonly low: Figure; readonly high: Figure };
  /**
   * Probability that the limit is exceeded, with the half width of its own sampling interval; where too few draws exceed it to be counted, by
   * importance sampling. It is 0 only where nothing is uncertain.
   */
  readonly exceed: { readonly value: number; readonly error: number; readonly text: string };
  /** kept: the whole interval is on the safe side; close: the interval touches the limit; exceeded: the best value is beyond it. */
  readonly state: 'kept' | 'close' | 'exceeded';
  readonly method: Method;
  /** Why this method is used, in words. */
  readonly why: string;
  /** First order and Monte Carlo disagree; second order is shown where that agrees, else Monte Carlo. */
  readonly disagree: boolean;
  /** Effective degrees of freedom of u; null where it is known as well as a normal distribution wants. */
  readonly degreesOfFreedom: number | null;
  /** What happens when it is exceeded: a trip of this limiter, or a rating of this part. */
  readonly consequence: string;
}

/** A limit that exists but has no data: it is unknown, and unknown is not safe. */
export interface OpenLimit {
  readonly id: string;
  readonly title: string;
  readonly of: string;
  /** Present value of what it would hold. */
  readonly value: Figure | null;
  /** Field of the study that would close it. */
  readonly field: string;
}

export interface LimiterState {
  readonly id: string;
  readonly title: string;
  readonly acts: 'regulate' | 'trip' | 'warn';
  /** What really flows through its sense points; a temperature for a limiter on a node. */
  readonly real: Figure;
  readonly reads: Figure;
  readonly allowed: Figure;
  /** Real over read; NaN (null in JSON) without a solution, or where it reads nothing. */
  readonly ratio: number;
  /** True for the limiter that sets the operating point. */
  readonly holds: boolean;
}

export interface BudgetRow {
  readonly input: string;
  readonly value: Figure;
  readonly source: string;
  /** Output per input, SI. */
  readonly sensitivity: number;
  readonly contribution: Figure;
  readonly share: number;
  /** Degrees of freedom of the input's uncertainty; null where it isn't in doubt itself. */
  readonly degreesOfFreedom: number | null;
}

/** What the terms of second order add to a margin's variance. */
export interface BendBudget {
  /** Standard uncertainty of the margin with these terms. */
  readonly u: Figure;
  /** Mean of the margin with them. */
  readonly mean: Figure;
  /** Parts of the variance that straight lines don't have, largest first: one input bends, or two count together. */
  readonly terms: readonly { readonly inputs: readonly string[]; readonly share: number }[];
}

/** How the inputs of a budget are grouped. */
export type Grouping = 'part' | 'source';

/** A budget by groups of inputs. */
export interface BudgetGroups {
  readonly by: Grouping;
  /** Largest share first; the contribution is what the group alone would do. */
  readonly groups: readonly {
    readonly group: string;
    readonly inputs: readonly string[];
    readonly contribution: Figure;
    readonly share: number;
  }[];
  /** Part of the variance that belongs to no group: covariances between inputs of different groups. */
  readonly between: number;
}

/** A part of the variance, and its own standard uncertainty from the number of draws. */
export interface SampledShare {
  readonly share: number;
  readonly u: number;
}

/** Sobol indices of a margin: parts of its variance over the inputs' whole distributions. */
export interface GlobalBudget {
  /** Largest total first. */
  readonly rows: readonly {
    readonly group: string;
    readonly inputs: readonly string[];
    /** What the group accounts for by itself. */
    readonly first: SampledShare;
    /** What it accounts for alone or together with others. */
    readonly total: SampledShare;
  }[];
  /** What no group accounts for by itself. */
  readonly interaction: SampledShare;
  /** Standard uncertainty of the margin. */
  readonly u: Figure;
  readonly evaluations: number;
  /** Evaluations without a solution, which are left out. */
  readonly lost: number;
  readonly seed: number;
}

/** What the study says about one step. */
export interface StepPlan {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly changed: readonly string[];
  readonly ending: Ending;
  readonly operating: {
    readonly scale: Figure;
    /** Limiter id, or `demand` when nothing holds the processor. */
    readonly holder: string;
    readonly holderTitle: string;
    /** Power the following loads take. */
    readonly processorPower: Figure;
    readonly wallPower: Figure;
  } | null;
  /** Without a solution they still say what they allow. */
  readonly limiters: readonly LimiterState[];
  /** Sorted by probability of exceeding, then by margin in standard uncertainties: the first one binds. */
  readonly margins: readonly Margin[];
  readonly binding: string | null;
  readonly open: readonly OpenLimit[];
  readonly solution: {
    readonly residual: number;
    readonly passes: number;
    readonly wallPower: Figure;
    readonly heat: Figure;
    /** |wall power − heat leaving| / wall power; 0 where there's neither. */
    readonly imbalance: number;
  } | null;
  readonly sampling: {
    readonly samples: number;
    readonly seed: number;
    readonly failed: number;
    /** How drawing ended that went on until the near margins were accurate; null for a number of draws that was given. */
    readonly adaptive: {
      readonly ended: 'accurate' | 'most' | 'cancelled';
      readonly blocks: number;
      /** Limits whose margins had to be accurate, and those of them that are not. */
      readonly asked: readonly string[];
      readonly inaccurate: readonly string[];
    } | null;
  } | null;
  /** Why there is no operating point; empty when there is one. */
  readonly faults: readonly Fault[];
  /** What to know before trusting the figures: data that ends before them, draws that can't be. */
  readonly notes: readonly Fault[];
}

/** Sets the real power at one limiter instead of what its reading would allow. */
export interface Dial {
  readonly limiter: string;
  /** [W] */
  readonly realPower: number;
}

export interface PlanOptions {
  /** Monte Carlo samples; 0 gives first order only (fast enough to follow a dragged dial); `auto` goes on until the near margins are accurate. */
  readonly samples: number | 'auto';
  readonly seed: number;
  readonly dial?: Dial;
  readonly cancelled?: () => boolean;
  readonly progress?: (done: number, total: number) => void;
}
