import { deratedRating } from '../physics/electrical/derating.ts';
import type { PowerLimiter } from '../study/schema/limiters.ts';
import type { SensePart } from '../study/schema/parts.ts';
import type { Step } from '../study/study.ts';
import { type Kind, loadPoints, type PointFit, untouched } from './fit.ts';
import { branchesOf, shownBy, uOf } from './reading.ts';
import type { SearchPoint, SearchTarget } from './search.ts';
import type { Stock } from './stock.ts';
import type { PointAtPower } from './working-point.ts';

/** Less than this of what a point should show is nearly a short: never proposed [1]; own rule, no source. */
export const leastShown = 0.1;

/** Everything that may be at a sense point, first what is there. */
export function fitsOf(part: SensePart, stock: Stock, kinds: readonly Kind[]): PointFit[] {
  const fits: PointFit[] = [untouched];
  const { resistors, chips } = stock;
  if (kinds.includes('replace'))
    for (const added of resistors) fits.push({ original: false, added: [added], across: null });
  if (kinds.includes('stack')) {
    for (const added of resistors) fits.push({ original: true, added: [added], across: null });
    resistors.forEach((first, i) => {
      for (const second of resistors.slice(i)) fits.push({ original: true, added: [first, second], across: null });
    });
  }
  if (kinds.includes('divider') && part.divider)
    for (const across of chips) fits.push({ original: true, added: [], across });
  return fits;
}

/** What a limiter makes of one ohm that a point shows: Σ gain/assumed over its reads of that point, and its relative variance. */
export function readsOf(limiter: PowerLimiter, sense: string): { perOhm: number; variance: number; assumed: number } {
  const reads = limiter.reads.filter((read) => read.sense === sense);
  let perOhm = 0;
  let ofGain = 0;
  for (const { assumed, gain } of reads) {
    perOhm += (gain?.value ?? 1) / assumed.value;
    ofGain += (uOf(gain) / assumed.value) ** 2;
  }
  return { perOhm, variance: ofGain / perOhm ** 2, assumed: reads[0].assumed.value };
}

/** Sum and variance of what the offsets add to the reading [W, W²]. */
export function offsetsOf(limiter: PowerLimiter, crest: number, points: readonly PointAtPower[]) {
  let sum = 0;
  let variance = 0;
  for (const { sense, offset, assumed } of limiter.reads) {
    const { voltage } = points.find(({ id }) => id === sense)!;
    const watts = (crest * voltage) / assumed.value;
    sum += watts * (offset?.value ?? 0);
    variance += (watts * uOf(offset)) ** 2;
  }
  return { sum, variance };
}

/** The points of a search. */
export function searchPoints(step: Step, limiter: PowerLimiter, stock: Stock, kinds: readonly Kind[]): SearchPoint[] {
  return [...new Set(limiter.reads.map(({ sense }) => sense))].map((id) => {
    const part = step.board.parts[id] as SensePart;
    return { fits: fitsOf(part, stock, kinds), originals: part.fitted.length };
  });
}

/** What every fit does while a target flows. */
export function searchTarget(
  step: Step,
  limiter: PowerLimiter,
  stock: Stock,
  points: readonly SearchPoint[],
  atTarget: readonly PointAtPower[],
): SearchTarget {
  const crest = limiter.takes === 'peak' ? step.board.demand.crest.value : 1;
  const offsets = offsetsOf(limiter, crest, atTarget);
  const columns = points.map(({ fits }, i) => {
    const { id, power, current, temperature } = atTarget[i];
    const part = step.board.parts[id] as SensePart;
    const { perOhm, variance: ofGain, assumed } = readsOf(limiter, id);
    const reading = new Float64Array(fits.length);
    const variance = new Float64Array(fits.length);
    const load = new Float64Array(fits.length);
    fits.forEach((fit, k) => {
      const branches = branchesOf(part, fit, stock, temperature);
      const shown = shownBy(branches, part.divider, fit.across);
      let usable = shown.resistance * shown.gain >= leastShown * assumed;
      for (const { resistance, body, rating } of branches) {
        if (!rating) continue;
        const { derating, power: full } = rating;
        const allowed = derating ? deratedRating(full, temperature, derating.from, derating.end) : full;
        const share = (((current * shown.resistance) / resistance) ** 2 * body) / allowed;
        load[k] += loadPoints(share);
        usable = usable && share <= 1;
      }
      reading[k] = usable ? power * shown.resistance * shown.gain * perOhm : Number.NaN;
      variance[k] = reading[k] ** 2 * (shown.variance + ofGain);
    });
    return { reading, variance, load };
  });
  return {
    needed: limiter.allowed.value - offsets.sum,
    offsetVariance: offsets.variance,
    reading: columns.map(({ reading }) => reading),
    variance: columns.map(({ variance }) => variance),
    load: columns.map(({ load }) => load),
  };
}
