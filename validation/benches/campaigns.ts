import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/** `BENCHES=full`: the whole campaigns, whose figures are kept; else a few benches of each, as a test. */
export const full = process.env.BENCHES === 'full';

const kept = new URL('results.json', import.meta.url);

/** Of several benches, how many. */
export interface Count {
  readonly of: number;
  readonly count: number;
}

/** Figures of the whole campaigns, as they stand in RESULTS.md. */
export interface CampaignResults {
  /** Truth inside the 95 % interval, by quantity; and benches whose fit complains although nothing is wrong. */
  readonly coverage?: Readonly<Record<'as the tool has it' | 'with what the tool leaves out', CoverageResult>>;
  /** Benches whose fit says that model and measurements disagree, by planted fault. */
  readonly planted?: Readonly<Record<string, Count>>;
  readonly ladders?: LadderResult;
  readonly advice?: AdviceResult;
}

export interface CoverageResult {
  readonly benches: number;
  readonly withoutResult: number;
  readonly falseAlarms: number;
  readonly inside: Readonly<Record<string, Count>>;
  /** Root mean square of the error in units of the predicted standard uncertainty [1]. */
  readonly size: Readonly<Record<string, number>>;
}

export interface LadderResult {
  readonly ladders: number;
  readonly rungs: number;
  /** Ladders on which a true limit was exceeded at a step that the gate had let through. */
  readonly exceeded: Count;
  /** Steps that were truly safe with at least so much room, and how many of them were allowed; by room in per cent of the limit. */
  readonly allowed: Readonly<Record<string, Count>>;
  /** The worst cases: what was let through and was exceeded, then what came closest. */
  readonly worst: readonly string[];
}

export interface AdviceResult {
  readonly within: Count;
  readonly worst: readonly string[];
}

export function readCampaigns(): CampaignResults {
  return existsSync(kept) ? JSON.parse(readFileSync(kept, 'utf8')) : {};
}

/** Keeps one campaign's figures beside the others'. Only whole campaigns are kept. */
export function keep(results: CampaignResults): void {
  console.log(JSON.stringify(results, null, 1));
  if (full) writeFileSync(kept, `${JSON.stringify({ ...readCampaigns(), ...results }, null, 2)}\n`);
}

export const share = ({ count, of }: Count): number => count / of;
