import { z } from 'zod';
import { type Fault, refuse } from '../fault/fault.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { endsOf, standardUncertainty } from '../quantity/spread.ts';
import { writeForFile } from '../quantity/write.ts';
import { plainOf, spanAt } from '../study/raw.ts';
import { definition, quantity } from '../study/schema/leaf.ts';
import { derating } from '../study/schema/parts.ts';
import { schemaFaults } from '../study/schema-faults.ts';
import { readText } from '../study/yaml-text.ts';
import { seriesValues } from './e-series.ts';

const entryFields = {
  values: z
    .array(definition('resistance', 'a nominal value', 'not-negative'))
    .min(1)
    .optional(),
  series: z.literal(['E24', 'E96']).optional().describe('all values of this series instead'),
  from: definition('resistance', 'lowest value of the series').optional(),
  to: definition('resistance', 'highest value of the series').optional(),
  tolerance: definition('ratio', 'of the value, either side'),
  'temperature-coefficient': definition('temperature-coefficient', 'largest, either side'),
  'rated-power': definition('power', 'rated dissipation'),
  derating: derating.optional(),
  size: z.string().optional().describe('its package'),
  source: z.string().optional().describe('where these figures come from'),
};

const entry = z.strictObject(entryFields);

const stockSchema = z.strictObject({
  stock: z.literal(1).describe('version of this file’s format'),
  about: z.string().optional(),
  joint: quantity('resistance', 'both joints of a part that is soldered by hand', 'not-negative').optional(),
  kelvin: quantity(
    'resistance',
    'pad metal between a new part and where the sense lines are tapped',
    'not-negative',
  ).optional(),
  resistors: z.array(entry).min(1).describe('low values, to be soldered where the current flows'),
  chips: z.array(entry).optional().describe('resistors for the sense lines'),
});

/** One part that can be bought. */
export interface StockPart {
  /** Nominal value with its tolerance [Ω]. */
  readonly resistance: Quantity;
  /** What it is called: `22 mΩ 1 %, 2512`. */
  readonly name: string;
  /** Largest temperature coefficient, of either sign [1/K]. */
  readonly coefficient: number;
  /** Rated dissipation [W]; null: not known. */
  readonly ratedPower: number | null;
  /** Derating line [K]; null: none is stated, and the rating holds only to 70 °C. */
  readonly derating: { readonly from: number; readonly end: number } | null;
  readonly source: string;
}

/** What can be soldered, and how well. */
export interface Stock {
  readonly resistors: readonly StockPart[];
  readonly chips: readonly StockPart[];
  /** Ends of the resistance of both joints of one part [Ω]. */
  readonly joint: { readonly low: number; readonly high: number };
  /** Ends of the pad metal between a new part and the taps of the sense lines [Ω]. */
  readonly kelvin: { readonly low: number; readonly high: number };
}

export type StockReading =
  | { readonly ok: true; readonly stock: Stock }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A part of less than this is told from a short only by its joints [Ω]; common practice, no source. */
export const shortBelow = 0.1e-3;

/** Reads a stock list. Faults: what a study refuses, a value that is a plain short, a series without ends, nothing to choose from. */
export function readStock(text: string, file: string): StockReading {
  const reading = readText(text, file);
  if (!reading.ok) return reading;
  const { raw, lines, faults: found } = reading;
  if (raw.shape !== 'map')
    return { ok: false, faults: [refuse('sense/not-a-stock', {}, lines.place({ from: 0, to: 1 }))] };
  const plain = plainOf(raw);
  const parsed = stockSchema.safeParse(plain);
  const faults = [...found];
  if (!parsed.success) faults.push(...schemaFaults(parsed.error.issues, stockSchema, plain, raw, lines));
  if (faults.length > 0 || !parsed.success) return { ok: false, faults };
  const { data } = parsed;
  const list = (entries: readonly Entry[], field: 'resistors' | 'chips') =>
    entries.flatMap((each, index) => {
      const place = (...path: (string | number)[]) => lines.place(spanAt(raw, [field, index, ...path]));
      const { values, series, from, to } = each;
      if ((values === undefined) === (series === undefined) || (series && !(from && to && from.value <= to.value))) {
        faults.push(refuse('sense/no-values', { field: `${field}.${index}` }, place()));
        return [];
      }
      if (values)
        return values.flatMap((value, k) => {
          if (value.value >= shortBelow) return [partOf(each, value.value)];
          faults.push(refuse('sense/plain-short', { value: value.text }, place('values', k)));
          return [];
        });
      return seriesValues(series!, from!.value, to!.value).map((value) => partOf(each, value));
    });
  const resistors = list(data.resistors, 'resistors');
  const chips = list(data.chips ?? [], 'chips');
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    stock: {
      resistors: inOrder(resistors),
      chips: inOrder(chips),
      joint: endsOr(data.joint, 20e-6, 200e-6),
      kelvin: endsOr(data.kelvin, 0, 20e-6),
    },
  };
}

type Entry = z.output<typeof entry>;

function partOf(given: Entry, value: number): StockPart {
  const tolerance = given.tolerance.value;
  const ends = { low: value * (1 - tolerance), high: value * (1 + tolerance) };
  const unit = value < 1 ? 'mohm' : value < 1e3 ? 'ohm' : 'kohm';
  const spread = tolerance > 0 ? ({ shape: 'rectangular', ...ends } as const) : null;
  const nominal = writeForFile(value, null, unit, 'resistance');
  const text = tolerance > 0 ? `${nominal} ± ${Number((100 * tolerance).toPrecision(6))} %` : nominal;
  const { size = '', derating } = given;
  return {
    resistance: { kind: 'resistance', value, unit, spread, text },
    name: `${text.replace('± ', '').replace(/ohm/, 'Ω')}${size && `, ${size}`}`,
    coefficient: given['temperature-coefficient'].value,
    ratedPower: given['rated-power'].value,
    derating: derating ? { from: derating.from.value, end: derating.end.value } : null,
    source: given.source ?? 'stock list',
  };
}

/** By value, and each value with the same figures once. */
function inOrder(parts: readonly StockPart[]): StockPart[] {
  const named = new Map(parts.map((part) => [part.name, part]));
  return [...named.values()].sort((a, b) => a.resistance.value - b.resistance.value);
}

function endsOr(quantity: Quantity | undefined, low: number, high: number) {
  if (!quantity) return { low, high };
  const { value, spread } = quantity;
  if (!spread) return { low: value, high: value };
  const twice = 2 * standardUncertainty(spread, value);
  return endsOf(spread) ?? { low: Math.max(0, value - twice), high: value + twice };
}

/** A part that a person names by its value alone: nothing else is known of it, so it is taken as an ordinary one of 1 %, and its rating as open. */
export function partByHand(resistance: Quantity): StockPart {
  const spread = resistance.spread ?? {
    shape: 'rectangular' as const,
    low: 0.99 * resistance.value,
    high: 1.01 * resistance.value,
  };
  const text = resistance.spread ? resistance.text : `${resistance.text} ± 1 %`;
  return {
    resistance: { ...resistance, spread, text },
    name: `${resistance.text} by hand`,
    coefficient: 100e-6,
    ratedPower: null,
    derating: null,
    source: 'named by hand',
  };
}
