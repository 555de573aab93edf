import type { Quantity } from '../quantity/quantity.ts';
import { writeForFile } from '../quantity/write.ts';
import { isQuantity } from '../study/quantities.ts';
import { fittedResistor, type SensePart } from '../study/schema/parts.ts';
import type { Step } from '../study/study.ts';
import type { PointFit } from './fit.ts';
import { jointOf } from './new-part.ts';
import { acrossLines } from './reading.ts';
import type { Stock, StockPart } from './stock.ts';

/** What is soldered at a sense point, in the order of the study's list: resistors the step began with by their place, and parts of the stock. */
export interface Soldered {
  readonly entries: readonly (number | StockPart)[];
  readonly across: StockPart | null;
}

/** A change of the study, as it stands under a step's `changes`. */
export interface Change {
  readonly at: string;
  /** undefined: removed. */
  readonly becomes?: Content;
  readonly why: string;
}

/** Fields and their texts, in the order they are written. */
export type Content = { readonly [field: string]: string | Content };

export function asFound(part: SensePart): Soldered {
  return { entries: part.fitted.map((_, place) => place), across: null };
}

/** What has to be changed so that a point becomes as a fit says, in the words of the study, and what is there afterwards. */
export function solder(
  sense: string,
  part: SensePart,
  before: Soldered,
  fit: PointFit,
  stock: Stock,
): { after: Soldered; changes: Change[] } {
  const entries = [...before.entries];
  const missing: (number | StockPart)[] = [...(fit.original ? part.fitted.map((_, place) => place) : []), ...fit.added];
  // What stays in another place than on top of the original ones is joined anew.
  const hadOriginal = before.entries.some((entry) => typeof entry === 'number');
  const odd: number[] = [];
  entries.forEach((entry, place) => {
    const wanted = missing.indexOf(entry);
    if (wanted >= 0 && (typeof entry === 'number' || hadOriginal === fit.original)) missing.splice(wanted, 1);
    else odd.push(place);
  });
  const changes: Change[] = [];
  const content = (entry: number | StockPart) =>
    typeof entry === 'number' ? originalContent(part, entry) : stockContent(entry, fit.original, stock);
  const list = `parts.${sense}.fitted`;
  for (const entry of missing) {
    const place = odd.shift() ?? entries.length;
    const why = place < entries.length ? 'in its place' : fit.original ? 'soldered on top' : 'beside it';
    changes.push({ at: `${list}.${place}`, becomes: content(entry), why });
    entries[place] = entry;
  }
  for (const place of odd.reverse()) {
    changes.push({ at: `${list}.${place}`, why: 'taken off' });
    entries.splice(place, 1);
  }
  if (before.across !== fit.across && part.divider) {
    const { value, u } = acrossLines(part.divider.parallel, fit.across);
    const { text, source = 'as delivered' } = part.divider.parallel;
    changes.push({
      at: `parts.${sense}.divider.parallel`,
      becomes: fit.across
        ? { value: withU(value, u), source: `${fit.across.name} across ${text}` }
        : { value: text, source },
      why: fit.across ? 'soldered across the sense lines' : 'taken off the sense lines',
    });
  }
  return { after: { entries, across: fit.across }, changes };
}

function originalContent({ fitted }: SensePart, place: number): Content {
  const {
    title,
    resistance,
    joint,
    'temperature-coefficient': coefficient,
    'rated-power': rated,
    derating,
  } = fitted[place];
  return {
    ...(title && { title }),
    source: resistance.source ?? 'as delivered',
    resistance: resistance.text,
    ...(joint && { joint: joint.text }),
    ...(coefficient && { 'temperature-coefficient': coefficient.text }),
    ...(rated && { 'rated-power': typeof rated === 'object' ? rated.text : rated }),
    ...(derating && { derating: { from: derating.from.text, end: derating.end.text } }),
  };
}

function stockContent(part: StockPart, stacked: boolean, stock: Stock): Content {
  const { low, high } = jointOf(stock, stacked);
  const ppm = Number((1e6 * part.coefficient).toPrecision(6));
  const celsius = (kelvin: number) => `${Number((kelvin - 273.15).toPrecision(6))} degC`;
  return {
    title: `${part.name}, ${stacked ? 'stacked' : 'in place'}`,
    source: part.source,
    resistance: part.resistance.text,
    joint: low === high ? milliohms(low, true) : `${milliohms(low)}..${milliohms(high, true)}`,
    'temperature-coefficient': `0 ppm/K ± ${ppm} ppm/K`,
    'rated-power': part.ratedPower === null ? 'open' : writeForFile(part.ratedPower, null, 'W', 'power'),
    ...(part.derating && { derating: { from: celsius(part.derating.from), end: celsius(part.derating.end) } }),
  };
}

function milliohms(ohms: number, unit = false): string {
  return `${Number((1e3 * ohms).toPrecision(6))}${unit ? ' mohm' : ''}`;
}

function withU(ohms: number, u: number): string {
  const digits = (value: number) => String(Number(value.toPrecision(9)));
  return `${digits(ohms)} ohm ± ${digits(u)} ohm (k=1)`;
}

/** The board of a step with other things soldered at its sense points; new numbers carry the new step's name. */
export function resolder(
  step: Step,
  points: ReadonlyMap<string, { readonly fit: PointFit; readonly soldered: Soldered }>,
  stock: Stock,
  name: string,
): Step {
  const parts = { ...step.board.parts };
  const quantities = new Map(step.quantities);
  for (const [sense, { fit, soldered }] of points) {
    const part = step.board.parts[sense] as SensePart;
    const fitted = soldered.entries.map((entry, place) => {
      if (typeof entry === 'number') return part.fitted[entry];
      const resistor = fittedResistor.parse(stockContent(entry, fit.original, stock));
      for (const [path, quantity] of quantitiesIn(resistor, `parts.${sense}.fitted.${place}`))
        quantities.set(quantity, `${path}#${name}`);
      return resistor;
    });
    part.fitted.forEach((resistor, place) => {
      if (soldered.entries.includes(place)) return;
      for (const [, quantity] of quantitiesIn(resistor, '')) quantities.delete(quantity);
    });
    let { divider } = part;
    if (divider && fit.across) {
      const { value, u } = acrossLines(divider.parallel, fit.across);
      quantities.delete(divider.parallel);
      const parallel = { ...divider.parallel, value, spread: { shape: 'normal', u } as const };
      quantities.set(parallel, `parts.${sense}.divider.parallel#${name}`);
      divider = { ...divider, parallel };
    }
    parts[sense] = { ...part, fitted, divider };
  }
  return { ...step, id: name, title: name, about: '', board: { ...step.board, parts }, quantities };
}

function quantitiesIn(holder: object, path: string): [path: string, quantity: Quantity][] {
  return Object.entries(holder).flatMap(([field, value]): [string, Quantity][] => {
    if (typeof value !== 'object' || value === null) return [];
    const here = `${path}.${field}`;
    return isQuantity(value) ? [[here, value]] : quantitiesIn(value, here);
  });
}
