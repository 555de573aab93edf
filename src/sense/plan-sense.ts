import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { PowerLimiter } from '../study/schema/limiters.ts';
import type { SensePart } from '../study/schema/parts.ts';
import type { Step } from '../study/study.ts';
import type { Kind, PointFit } from './fit.ts';
import { describeStep, found, type OptionStep, type Setting } from './option.ts';
import { leastShown, searchPoints, searchTarget } from './options.ts';
import { branchesOf, shownBy } from './reading.ts';
import { searchLadders, within } from './search.ts';
import type { Stock, StockPart } from './stock.ts';
import { pointsAtPower, type Solved, solveAtLimit, solveAtPower } from './working-point.ts';

export interface SenseRequest {
  readonly limiter: string;
  /** Real powers at the limit, the first step's first [W]. */
  readonly targets: readonly number[];
  readonly kinds: readonly Kind[];
  readonly top: number;
  /** Standard uncertainty of the person's meter at a real power [W]. */
  readonly meter: (real: number) => number;
}

/** One way to reach the targets, in as many steps. */
export interface SenseOption {
  /** What the order is by; fewer are better [1]. */
  readonly points: number;
  readonly steps: readonly OptionStep[];
}

export interface SensePlan {
  readonly limiter: string;
  readonly title: string;
  readonly step: string;
  /** Real power past the limiter where it holds now, if nothing else does before [W]. */
  readonly present: number;
  readonly allowed: number;
  readonly options: readonly SenseOption[];
  /** Sense points that the limiter reads, and how many fits of each were looked at. */
  readonly looked: readonly { readonly sense: string; readonly fits: number; readonly divider: boolean }[];
}

export type SensePlanning =
  | { readonly ok: true; readonly plan: SensePlan }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The best ways to bring a limiter to its targets with what is in stock, and everything about each of them. */
export function planSense(step: Step, stock: Stock, request: SenseRequest): SensePlanning {
  const { limiter: id, kinds, top } = request;
  const ready = prepare(step, stock, id, request.meter);
  if (!ready.ok) return ready;
  const { setting, limiter } = ready;
  const targets = [...new Set(request.targets)].sort((a, b) => a - b);
  const points = searchPoints(step, limiter, stock, kinds);
  const senses = [...found(step, id).keys()];
  const hasDivider = (sense: string) => (step.board.parts[sense] as SensePart).divider !== undefined;
  if (kinds.length === 1 && kinds[0] === 'divider' && !senses.some(hasDivider))
    return { ok: false, faults: [refuse('sense/no-divider', { limiter: id })] };

  const faults: Fault[] = [];
  const searched = targets.map((watts) => {
    const beyond = beyondSupplies(step, watts);
    if (beyond) {
      faults.push(beyond);
      return null;
    }
    const solved = solveAtPower(step, id, watts);
    const refused = refuseTarget(step, id, watts, solved, setting.present);
    if (refused) faults.push(refused);
    return refused ? null : searchTarget(step, limiter, stock, points, pointsAtPower(step, limiter, solved));
  });
  if (faults.length > 0) return { ok: false, faults };
  const reachable = searched.flatMap((each) => (each ? [each] : []));
  const usable = reachable.some(({ reading }) =>
    reading.some((fits) => fits.some((r, k) => k > 0 && !Number.isNaN(r))),
  );
  if (!usable) {
    const offered = points.some(({ fits }) => fits.length > 1);
    const why = offered
      ? `each leaves less than ${percent(leastShown)} of a reading, or a part at the point would dissipate more than its derated rating`
      : 'the stock has none of the kinds asked for';
    return { ok: false, faults: [refuse('sense/no-usable-stock', { limiter: id, why })] };
  }
  const ladders = searchLadders(points, reachable, top);
  if (ladders.length === 0) {
    const missed = reachable.findIndex((target) => searchLadders(points, [target], 1).length === 0);
    const target = `${targets[Math.max(0, missed)]} W`;
    return { ok: false, faults: [refuse('sense/no-option', { limiter: id, target, within: percent(within) })] };
  }
  const options = ladders.map(({ points: counted, steps }): SenseOption => {
    let before = found(step, id);
    return {
      points: counted,
      steps: steps.map(({ fits }, t) => {
        const chosen = new Map(senses.map((sense, i) => [sense, points[i].fits[fits[i]]]));
        const { described, points: after } = describeStep(setting, targets[t], before, chosen, nameOf(targets[t]));
        before = after;
        return described;
      }),
    };
  });
  const looked = senses.map((sense, i) => ({ sense, fits: points[i].fits.length, divider: hasDivider(sense) }));
  const { title = id, allowed } = limiter;
  return {
    ok: true,
    plan: { limiter: id, title, step: step.id, present: setting.present, allowed: allowed.value, options, looked },
  };
}

/** What a person would solder, put in by hand. */
export interface ByHand {
  readonly sense: string;
  readonly kind: Kind;
  readonly part: StockPart;
}

/** Everything about what a person would solder themselves. Refused: a plain short, and what leaves next to nothing of a reading. */
export function tryByHand(
  step: Step,
  stock: Stock,
  request: { readonly limiter: string; readonly hand: readonly ByHand[]; readonly meter: (real: number) => number },
): SensePlanning {
  const { limiter: id, hand } = request;
  const ready = prepare(step, stock, id, request.meter);
  if (!ready.ok) return ready;
  const { setting, limiter } = ready;
  const before = found(step, id);
  const fits = new Map<string, PointFit>([...before].map(([sense, { fit }]) => [sense, fit]));
  for (const { sense, kind, part } of hand) {
    const fit = fits.get(sense)!;
    if (kind === 'divider') fits.set(sense, { ...fit, across: part });
    else fits.set(sense, { ...fit, original: kind === 'stack' && fit.original, added: [...fit.added, part] });
  }
  const atLimit = solveAtLimit(step, id);
  const there = pointsAtPower(step, limiter, atLimit);
  const faults = [...fits].flatMap(([sense, fit], i) => {
    const part = step.board.parts[sense] as SensePart;
    const shown = shownBy(branchesOf(part, fit, stock, there[i].temperature), part.divider, fit.across);
    const left = (shown.resistance * shown.gain) / limiter.reads.find((read) => read.sense === sense)!.assumed.value;
    if (left >= leastShown) return [];
    return [refuse('sense/nearly-short', { point: sense, left: percent(left), least: percent(leastShown) })];
  });
  if (faults.length > 0) return { ok: false, faults };
  const { described } = describeStep(setting, setting.present, before, fits, 'by-hand');
  if (Number.isNaN(described.real)) {
    const data = { step: step.id, limiter: id, ending: 'with these parts' };
    return { ok: false, faults: [refuse('sense/no-present', data)] };
  }
  const { title = id, allowed } = limiter;
  return {
    ok: true,
    plan: {
      limiter: id,
      title,
      step: step.id,
      present: setting.present,
      allowed: allowed.value,
      options: [{ points: 0, steps: [described] }],
      looked: [],
    },
  };
}

type Ready =
  | { readonly ok: true; readonly setting: Setting; readonly limiter: PowerLimiter }
  | { readonly ok: false; readonly faults: readonly Fault[] };

function prepare(step: Step, stock: Stock, id: string, meter: Setting['meter']): Ready {
  const limiter = step.board.limiters[id];
  if (!(limiter && 'reads' in limiter)) {
    const known = Object.entries(step.board.limiters).flatMap(([name, each]) => ('reads' in each ? [name] : []));
    return {
      ok: false,
      faults: [refuse('sense/no-such-limiter', { limiter: id, known, nearest: nearest(id, known) })],
    };
  }
  const now = solveAtLimit(step, id);
  if (now.ending !== 'solved') {
    const data = { step: step.id, limiter: id, ending: now.ending };
    return { ok: false, faults: [refuse('sense/no-present', data)] };
  }
  const setting = { step, limiter: id, stock, present: now.of(`limiters.${id}.real`), meter };
  return { ok: true, setting, limiter };
}

/** A target that all supplies together can't give at their ratings, or at any voltage: a source gives at most U²/(4·R). */
function beyondSupplies({ board }: Step, watts: number): Fault | null {
  let most = 0;
  for (const part of Object.values(board.parts)) {
    if (part.kind !== 'supply') continue;
    const rated = part['rated-power'];
    const { voltage, resistance } = part;
    most += typeof rated === 'object' ? rated.value : voltage.value ** 2 / (4 * resistance.value);
  }
  if (watts <= most) return null;
  const why = `all supplies together give ${Number(most.toPrecision(4))} W at most`;
  return refuse('sense/beyond-supply', { target: `${Number(watts.toPrecision(6))} W`, why });
}

/** Why a target can't be had; null: it can. */
function refuseTarget(step: Step, limiter: string, watts: number, solved: Solved, present: number): Fault | null {
  const target = `${Number(watts.toPrecision(6))} W`;
  if (solved.ending === 'runaway') return refuse('sense/runaway', { target });
  if (solved.ending !== 'solved')
    return watts < present
      ? refuse('sense/below-idle', { target, limiter })
      : refuse('sense/beyond-supply', {
          target,
          why: 'its voltage gives in, or a regulator behind it has no headroom',
        });
  const real = solved.of(`limiters.${limiter}.real`);
  if (Math.abs(real / watts - 1) > 1e-6) return refuse('sense/not-reached', { target, limiter });
  for (const limit of solved.board.limits) {
    const part = step.board.parts[limit.id.split('.')[1]];
    if (!limit.id.startsWith('parts.') || part?.kind !== 'supply') continue;
    const { outputs } = solved.board;
    if (solved.of(outputs[limit.marginOutput].id) >= 0) continue;
    const unit = outputs[limit.valueOutput].kind === 'power' ? 'W' : 'A';
    const shown = (output: number) => `${Number(solved.of(outputs[output].id).toPrecision(4))} ${unit}`;
    const why = `${limit.title} would be ${shown(limit.valueOutput)}, and ${shown(limit.thresholdOutput)} is its limit`;
    return refuse('sense/beyond-supply', { target, why });
  }
  return null;
}

/** Name of the step that reaches a target. */
function nameOf(watts: number): string {
  return `sense-${String(Number(watts.toPrecision(4))).replace('.', '-')}w`;
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(2))} %`;
}
