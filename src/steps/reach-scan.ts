import type { BoardModel } from '../board/assemble.ts';
import { batchOf } from '../metrology/batch.ts';
import { budget } from '../metrology/budget.ts';
import { type DrawOptions, drawsOf } from '../metrology/draws.ts';
import { effectiveDegreesOfFreedom, statedDegreesOfFreedom } from '../metrology/effective-degrees-of-freedom.ts';
import { startValues } from '../metrology/evaluate.ts';
import type { Ending } from '../metrology/model.ts';
import { type Sensitivities, sensitivities } from '../metrology/sensitivity.ts';
import { studentQuantile } from '../metrology/student-t.ts';

/** The real powers between which a board is looked at [W], and what ends them above. */
export interface PowerRange {
  readonly low: number;
  readonly high: number;
  /** `demand`: the load asks for no more; else why there is no operating point above. */
  readonly end: 'demand' | Exclude<Ending, 'solved'>;
}

/** More than any board takes [W]: whatever ends the range does so below. */
const beyondAll = 1e7;

/** Range of the power that can be dialled; a board with no operating point at any power says why instead. */
export function powerRange(board: BoardModel, dial: number, realOutput: number, allowed: number): PowerRange | Ending {
  const x = startValues(board);
  const y = new Float64Array(board.outputs.length);
  const endingAt = (power: number): Ending => {
    x[dial] = power;
    return board.evaluate(x, y).ending;
  };
  let high: number;
  let end: PowerRange['end'] = 'demand';
  const unbounded = endingAt(beyondAll);
  if (unbounded === 'solved') high = y[realOutput];
  else {
    let tries = 0;
    high = allowed;
    while (endingAt(high) !== 'solved') {
      high *= 0.7;
      if (++tries > 20) return unbounded;
    }
    let above = 2 * high;
    while (endingAt(above) === 'solved') above *= 2;
    while (above - high > 1e-4 * high) {
      const middle = (high + above) / 2;
      const ending = endingAt(middle);
      if (ending === 'solved') high = middle;
      else {
        above = middle;
        end = ending;
      }
    }
    if (end === 'demand') end = unbounded;
  }
  if (!(high > 0)) return 'infeasible';
  // Below the constant loads past its sense points a limiter refuses even an idle processor.
  let refused = 0;
  let low = high / 100;
  if (endingAt(low) !== 'solved') {
    refused = low;
    low = high;
    while (low - refused > 0.01 * high) {
      const middle = (low + refused) / 2;
      if (endingAt(middle) === 'solved') low = middle;
      else refused = middle;
    }
  }
  // Idle loads are uncertain: away from their end every draw has an operating point.
  return { low: low + (high - low) / 10, high, end };
}

/** Powers at which all draws are looked at; between them a margin is taken as straight. */
const NODES = 21;
/** Every so many of them the sensitivities are worked out, for all limits at once; between them an uncertainty is taken as straight. */
const STRIDE = 4;

/** A board at several powers: best values, and what first order subtracts from them for the confidence. */
export interface PowerScan {
  readonly range: PowerRange;
  readonly powers: readonly number[];
  /** Margin of a limit at the best values [SI], exactly solved; NaN without an operating point. */
  margin(limit: number, power: number): number;
  /** Margins by limit, at each of the powers. */
  readonly margins: readonly Float64Array[];
  /** What the confidence takes off a margin at a power, by first order [SI]; NaN without sensitivities. */
  allowance(limit: number, power: number): number;
  /** Standard uncertainty of a margin at a power, by first order [SI]. */
  uncertainty(limit: number, power: number): number;
  /** Sensitivities at the looked-at power nearest to this one. */
  sensitivitiesNear(power: number): Sensitivities;
  /** The highest of the powers below which every limit is further away than `FAR` standard uncertainties; the lowest one where that can't be said. */
  readonly from: number;
}

/** By so many standard uncertainties no distribution has more than 1/(1 + 5²) = 3.8 % of its draws beyond a limit (Cantelli's inequality). */
const FAR = 5;

export function scanPowers(board: BoardModel, dial: number, range: PowerRange, confidence: number): PowerScan {
  const x = startValues(board);
  const y = new Float64Array(board.outputs.length);
  const powers = Array.from({ length: NODES }, (_, k) => range.low + ((range.high - range.low) * k) / (NODES - 1));
  const outputOf = board.limits.map(({ marginOutput }) => marginOutput);
  const margins = outputOf.map(() => new Float64Array(NODES));
  powers.forEach((power, k) => {
    x[dial] = power;
    const solved = board.evaluate(x, y).ending === 'solved';
    outputOf.forEach((output, l) => {
      margins[l][k] = solved ? y[output] : Number.NaN;
    });
  });
  const known = powers.filter((_, k) => k % STRIDE === 0);
  const sens = known.map((power) => {
    x[dial] = power;
    return sensitivities(board, x.slice());
  });
  const degreesOf = statedDegreesOfFreedom(board);
  const spreads = outputOf.map((output) =>
    sens.map((each) => {
      const parts = budget(board, board.outputs[output].id, each);
      if (!parts) return { u: Number.NaN, allowance: Number.NaN };
      const degrees = effectiveDegreesOfFreedom(parts, degreesOf);
      return { u: parts.u, allowance: parts.u > 0 ? studentQuantile(confidence, degrees) * parts.u : 0 };
    }),
  );
  const place = (power: number) =>
    Math.min(known.length - 1, Math.max(0, (power - known[0]) / (known[1] - known[0] || 1)));
  const between = (limit: number, power: number, of: 'u' | 'allowance') => {
    const at = place(power);
    const k = Math.min(known.length - 2, Math.floor(at));
    const [a, b] = [spreads[limit][k][of], spreads[limit][k + 1][of]];
    return a + (b - a) * (at - k);
  };
  const isFar = (k: number) => margins.every((each, l) => each[k] > FAR * between(l, powers[k], 'u'));
  const near = powers.findIndex((_, k) => !isFar(k));
  return {
    range,
    powers,
    margins,
    from: near < 0 ? NODES - 1 : Math.max(0, near - 1),
    margin(limit, power) {
      x[dial] = power;
      return board.evaluate(x, y).ending === 'solved' ? y[outputOf[limit]] : Number.NaN;
    },
    allowance: (limit, power) => between(limit, power, 'allowance'),
    uncertainty: (limit, power) => between(limit, power, 'u'),
    sensitivitiesNear: (power) => sens[Math.round(place(power))],
  };
}

/** Draws made between two fillings of the columns. */
const BLOCK = 512;

/**
 * Draws boards and follows each of them up through the powers: for each limit, and last for the operating point itself, the powers at which the draws first
 * pass it, sorted [W]. −∞: at the lowest power already; ∞: never.
 * A draw that has no operating point any more passes every limit there.
 */
export function drawPowers(
  board: BoardModel,
  dial: number,
  powers: readonly number[],
  samples: number,
  options: DrawOptions,
): readonly Float64Array[] {
  const draws = drawsOf(board, options, BLOCK);
  const batch = batchOf(board);
  const outputs = board.limits.map(({ marginOutput }) => batch.outputs[marginOutput]);
  const passed = Array.from({ length: outputs.length + 1 }, () => new Float64Array(samples).fill(Infinity));
  const unsolved = passed[outputs.length];
  const before = outputs.map(() => new Float64Array(batch.lanes));
  for (let from = 0; from < samples; from += BLOCK) {
    draws.fill(from);
    const end = Math.min(BLOCK, samples - from);
    for (let first = 0; first < end; first += batch.lanes) {
      const count = Math.min(batch.lanes, end - first);
      board.inputs.forEach(({ value }, i) => {
        batch.inputs[i].fill(value);
      });
      draws.inputs.forEach((input, k) => {
        for (let s = 0; s < count; s++) batch.inputs[input][s] = draws.columns[k][first + s];
      });
      powers.forEach((power, k) => {
        batch.inputs[dial].fill(power);
        batch.evaluate(count);
        for (let s = 0; s < count; s++) {
          const lost = batch.endings[s] !== 'solved';
          const draw = from + first + s;
          for (let l = 0; l < outputs.length; l++) {
            const margin = lost ? Number.NaN : outputs[l][s];
            if (passed[l][draw] === Infinity && !(margin >= 0)) {
              const share = lost ? 0 : before[l][s] / (before[l][s] - margin);
              passed[l][draw] = k === 0 ? -Infinity : powers[k - 1] + share * (power - powers[k - 1]);
            }
            before[l][s] = margin;
          }
          if (lost && unsolved[draw] === Infinity) {
            unsolved[draw] = k === 0 ? -Infinity : powers[k - 1];
            // Nothing more is learnt from it, and looking for what isn't there takes long.
            for (let i = 0; i < board.inputs.length; i++) batch.inputs[i][s] = board.inputs[i].value;
          }
        }
      });
    }
  }
  for (const column of passed) column.sort();
  return passed;
}
