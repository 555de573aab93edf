import { dividerGain } from '../physics/electrical/divider.ts';
import { parallelResistance } from '../physics/electrical/parallel-resistance.ts';
import { resistanceAt } from '../physics/electrical/resistance-at-temperature.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { standardUncertainty } from '../quantity/spread.ts';
import type { SensePart } from '../study/schema/parts.ts';
import type { PointFit } from './fit.ts';
import { jointOf } from './new-part.ts';
import type { Stock, StockPart } from './stock.ts';

const reference = 293.15;

/** One way for the current through a sense point, at a temperature. */
export interface Branch {
  /** With its joints [Ω]. */
  readonly resistance: number;
  /** Without its joints: where its dissipation arises [Ω]. */
  readonly body: number;
  /** Standard uncertainty of `resistance` [Ω]. */
  readonly u: number;
  readonly rating: {
    readonly power: number;
    readonly derating: { readonly from: number; readonly end: number } | null;
  } | null;
}

/** The ways for the current through a sense point, first those that were there [Ω at a temperature in K]. */
export function branchesOf(part: SensePart, fit: PointFit, stock: Stock, temperature: number): Branch[] {
  const own = fit.original ? part.fitted.map((resistor) => originalBranch(resistor, temperature)) : [];
  return [...own, ...fit.added.map((added) => stockBranch(added, fit.original, stock, temperature))];
}

function originalBranch(fitted: SensePart['fitted'][number], temperature: number): Branch {
  const rise = temperature - reference;
  const coefficient = fitted['temperature-coefficient'];
  const body = resistanceAt(fitted.resistance.value, coefficient?.value ?? 0, temperature, reference);
  const joint = fitted.joint?.value ?? 0;
  const u = Math.hypot(
    uOf(fitted.resistance) * (body / fitted.resistance.value),
    uOf(fitted.joint),
    fitted.resistance.value * rise * uOf(coefficient),
  );
  const rated = fitted['rated-power'];
  const { derating } = fitted;
  const rating =
    typeof rated === 'object'
      ? { power: rated.value, derating: derating ? { from: derating.from.value, end: derating.end.value } : null }
      : null;
  return { resistance: body + joint, body, u, rating };
}

function stockBranch(part: StockPart, stacked: boolean, stock: Stock, temperature: number): Branch {
  const body = part.resistance.value;
  const joint = jointOf(stock, stacked);
  const u = Math.hypot(
    uOf(part.resistance),
    (joint.high - joint.low) / Math.sqrt(12),
    (body * (temperature - reference) * part.coefficient) / Math.sqrt(3),
  );
  const rating = part.ratedPower === null ? null : { power: part.ratedPower, derating: part.derating };
  return { resistance: body + (joint.low + joint.high) / 2, body, u, rating };
}

export function uOf(quantity: Quantity | undefined): number {
  return quantity?.spread ? standardUncertainty(quantity.spread, quantity.value) : 0;
}

/** What a point shows: its resistance, and the part of its voltage that reaches the amplifier. */
export interface Shown {
  readonly resistance: number;
  readonly gain: number;
  /** Relative variance of resistance times gain [1]. */
  readonly variance: number;
}

/** What the sense lines show of a point with these ways for the current. */
export function shownBy(branches: readonly Branch[], divider: SensePart['divider'], across: StockPart | null): Shown {
  let conductance = 0;
  for (const { resistance } of branches) conductance += 1 / resistance;
  let variance = 0;
  for (const { resistance, u } of branches) variance += (u / (resistance * resistance * conductance)) ** 2;
  const resistance = 1 / conductance;
  if (!divider) return { resistance, gain: 1, variance };
  const { value: parallel, u } = acrossLines(divider.parallel, across);
  const series = divider.series.value;
  const input = divider.input?.value ?? Number.POSITIVE_INFINITY;
  const gain = dividerGain(series, parallel, input);
  const ofGain =
    gain *
    Math.hypot(
      uOf(divider.series) * (1 / parallel + 1 / input),
      (u * series) / parallel ** 2,
      (uOf(divider.input) * series) / input ** 2,
    );
  return { resistance, gain, variance: variance + ofGain ** 2 };
}

/** Resistance across the sense lines with one more across them, and its standard uncertainty [Ω]. */
export function acrossLines(there: Quantity, added: StockPart | null): { value: number; u: number } {
  if (!added) return { value: there.value, u: uOf(there) };
  const value = parallelResistance(there.value, added.resistance.value);
  const u = Math.hypot(
    uOf(there) * (value / there.value) ** 2,
    uOf(added.resistance) * (value / added.resistance.value) ** 2,
  );
  return { value, u };
}
