import type { BoardModel } from '../board/assemble.ts';
import { startValues } from '../metrology/evaluate.ts';
import { findRoot } from '../numeric/root.ts';
import type { KindName } from '../quantity/kind.ts';
import { showValue } from '../quantity/write.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { isOfHeatPath } from './reach-board.ts';
import type { PowerScan } from './reach-scan.ts';
import type { Figure } from './step-plan.ts';

/** One number of the board that would lift a limit if it were another one. */
export interface Lift {
  readonly input: string;
  readonly from: Figure;
  readonly to: Figure;
}

/** What it takes that a limit is kept with the same confidence at a higher power. */
export interface Lifting {
  /** That power: where the next limit binds, or the end of the range. */
  readonly target: Figure;
  /** What the margin lacks there. */
  readonly lacks: Figure;
  /** One of these changes alone would do, the smallest first; none where no single number does it within reason. */
  readonly byOneOf: readonly Lift[];
  /** Later steps of the study, with the numbers of theirs that move this margin. */
  readonly steps: readonly { readonly step: string; readonly inputs: readonly string[] }[];
}

/** A number changed by more than this factor is another design. */
const GREATEST_FACTOR = 4;
const SHOWN = 3;

/**
 * Looks for single numbers that lift a limit from `power` [W] to `target` [W], the others and its uncertainty as they are. null: it is kept at `target` already,
 * or nothing is solved there.
 */
export function liftingOf(
  board: BoardModel,
  scan: PowerScan,
  dial: number,
  limit: number,
  power: number,
  target: number,
  stepsThatChange: (input: string) => readonly string[],
): Lifting | null {
  const { marginOutput, valueOutput, id } = board.limits[limit];
  // What is left at `power` is nothing, by whichever method that was found.
  const left = Number.isFinite(power) ? scan.margin(limit, power) - scan.allowance(limit, power) : 0;
  const allowance = scan.allowance(limit, target) + left;
  const lacks = allowance - scan.margin(limit, target);
  if (!(lacks > 0)) return null;
  const sens = scan.sensitivitiesNear(target);
  const x = startValues(board);
  const y = new Float64Array(board.outputs.length);
  x[dial] = target;
  const candidates = board.inputs.flatMap((input, i) => {
    const slope = sens.c[marginOutput][i];
    // A rating is the maker's word, and what a limiter believes is no part of the board.
    const isStated = sens.c[valueOutput][i] === 0 && !isOfHeatPath(input.id);
    if (!(Math.abs(slope) > 0) || isStated || input.id === id || !/^(parts|heat|plate)\./.test(input.id)) return [];
    // Linear in the logarithm, as a factor is; a temperature has no factors and is told in kelvin, where 1 K counts as 1 %.
    const absolute = input.kind === 'temperature';
    if (!absolute && !(input.value > 0)) return [];
    const size = absolute ? lacks / slope / 100 : lacks / (slope * input.value);
    return Math.abs(size) <= 2 * Math.log(GREATEST_FACTOR) ? [{ i, size, absolute }] : [];
  });
  candidates.sort((a, b) => Math.abs(a.size) - Math.abs(b.size));
  const byOneOf: Lift[] = [];
  for (const { i, size, absolute } of candidates) {
    if (byOneOf.length === SHOWN) break;
    const { value, kind, unit, id: input } = board.inputs[i];
    const at = (share: number) => (absolute ? value + 100 * share : value * Math.exp(share));
    const shortAt = (share: number) => {
      x[i] = at(share);
      const solved = board.evaluate(x, y).ending === 'solved';
      return solved ? y[marginOutput] - allowance : Number.NaN;
    };
    const most = Math.sign(size) * Math.min(Math.log(GREATEST_FACTOR), 3 * Math.abs(size));
    const root = findRoot(shortAt, 0, most, 1e-5);
    x[i] = value;
    if (root.ending !== 'solved') continue;
    const to = at(root.x);
    byOneOf.push({ input, from: figure(value, null, kind, unit), to: withDigitsOf(to, to - value, kind, unit) });
  }
  const steps = new Map<string, string[]>();
  for (const { i } of candidates)
    for (const step of stepsThatChange(board.inputs[i].id))
      steps.set(step, [...(steps.get(step) ?? []), board.inputs[i].id]);
  const { kind, unit } = board.outputs[marginOutput];
  return {
    target: figure(target, null, 'power', 'W'),
    lacks: withDigitsOf(lacks, lacks, kind, unit),
    byOneOf,
    steps: [...steps].map(([step, inputs]) => ({ step, inputs })),
  };
}

/** A number written so that a change of it can be told with two digits. */
function withDigitsOf(value: number, change: number, kind: KindName, unit: string): Figure {
  const shown = showValue(value, Math.abs(change), unit, kind);
  return { ...figure(value, null, kind, unit), text: `${shown.value} ${shown.unit}`.trim() };
}

/** Which steps of a study, after those whose power path and cooling are looked at, change a number. */
export function changedBy(study: Study, step: Step, cooling: Step): (input: string) => readonly string[] {
  const order = study.steps.map(({ id }) => id);
  return (input) => {
    const path = input.replace(/#.*/, '');
    const since = order.indexOf((isOfHeatPath(path) ? cooling : step).id);
    return study.steps
      .slice(since + 1)
      .filter(({ changed }) => changed.some((at) => `${path}.`.startsWith(`${at}.`) || at.startsWith(`${path}.`)))
      .map(({ id }) => id);
  };
}
