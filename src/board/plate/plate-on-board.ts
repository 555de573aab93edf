import type { PlateAtRest, PlateNotAtRest } from '../../physics/mechanics/plate.ts';
import { solvePlate } from '../../physics/mechanics/solve-plate.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { plateOf } from '../../study/plate-of.ts';
import type { PlateSection } from '../../study/schema/plate.ts';
import type { Limits } from '../limits.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';

/** How the plate's balance ended; `impossible`: its numbers can't be a plate's. */
export type PlateEnding = (PlateAtRest | PlateNotAtRest)['ending'] | 'impossible';

/** The plate of a board: solved anew for each vector of inputs. */
export class PlateOnBoard {
  ending: PlateEnding = 'unsettled';
  readonly dies: readonly string[];
  readonly #section: PlateSection;
  readonly #slots: Slots;
  #rest: PlateAtRest | null = null;
  #firstOutput = 0;

  constructor(section: PlateSection, slots: Slots) {
    this.#section = section;
    this.#slots = slots;
    this.dies = Object.keys(section.dies ?? {});
  }

  /** Takes this evaluation's numbers and finds where the plate comes to rest. False: it doesn't. */
  load(x: Float64Array): boolean {
    const slots = this.#slots;
    const plate = plateOf(this.#section, (quantity: Quantity) => x[slots.of(quantity)]);
    const result = plate ? solvePlate(plate) : null;
    this.ending = result?.ending ?? 'impossible';
    this.#rest = result?.ending === 'solved' ? result : null;
    return this.#rest !== null;
  }

  /** Mean pressure on a die [Pa]; 0 where the plate doesn't touch it. */
  pressureOn(die: string): number {
    return this.#rest?.dies[this.dies.indexOf(die)].meanPressure ?? Number.NaN;
  }

  /** Dies that the plate doesn't touch. */
  get lifted(): readonly string[] {
    return this.dies.filter((die) => this.pressureOn(die) === 0);
  }

  /** Adds what comes out: one contiguous stretch, written by `write`. */
  addOutputs(outputs: Outputs): void {
    const { screws, pads = {}, dies = {}, stops = {} } = this.#section;
    const title = (id: string, part: { readonly title?: string }) => part.title ?? id;
    this.#firstOutput = outputs.list.length;
    outputs.add('plate.height', 'length', 'mm', 'height of the plate over the board’s origin');
    outputs.add('plate.tilt-x', 'angle', 'mrad', 'slope of the plate along x');
    outputs.add('plate.tilt-y', 'angle', 'mrad', 'slope of the plate along y');
    for (const [id, screw] of Object.entries(screws))
      outputs.add(`plate.screws.${id}.force`, 'force', 'N', `pull of ${title(id, screw)}`);
    for (const [id, pad] of Object.entries(pads)) {
      const at = `plate.pads.${id}`;
      outputs.add(`${at}.compression`, 'length', 'mm', `compression of ${title(id, pad)}`);
      outputs.add(`${at}.strain`, 'ratio', '%', `strain of ${title(id, pad)}`);
      outputs.add(`${at}.largest-strain`, 'ratio', '%', `strain of ${title(id, pad)} at its worst corner`);
      outputs.add(`${at}.force`, 'force', 'N', `force of ${title(id, pad)}`);
      outputs.add(`${at}.pressure`, 'pressure', 'kPa', `mean pressure of ${title(id, pad)}`);
    }
    for (const [id, die] of Object.entries(dies)) {
      const at = `plate.dies.${id}`;
      outputs.add(`${at}.force`, 'force', 'N', `force on ${title(id, die)}`);
      outputs.add(`${at}.mean-pressure`, 'pressure', 'kPa', `mean pressure on ${title(id, die)}`);
      outputs.add(`${at}.highest-pressure`, 'pressure', 'kPa', `highest pressure on ${title(id, die)}`);
      outputs.add(`${at}.lowest-pressure`, 'pressure', 'kPa', `lowest pressure on ${title(id, die)}`);
      outputs.add(`${at}.contact`, 'ratio', '%', `share of ${title(id, die)} that is touched`);
      outputs.add(`${at}.gap`, 'length', 'mm', `gap over ${title(id, die)}`);
    }
    for (const [id, stop] of Object.entries(stops))
      outputs.add(`plate.stops.${id}.force`, 'force', 'N', `force on ${title(id, stop)}`);
  }

  /** Adds the makers' limits on force and pressure; a limit without data is open. */
  addLimits(limits: Limits): void {
    for (const [id, die] of Object.entries(this.#section.dies ?? {})) {
      const title = die.title ?? id;
      const at = `plate.dies.${id}`;
      limits.add({
        id: `${at}.force-limit`,
        title: `${title}: force of the plate`,
        rating: die['force-limit'],
        of: `${at}.force`,
        kind: 'force',
        unit: 'N',
        consequence: 'the die, its package or the board can crack',
      });
      limits.add({
        id: `${at}.pressure-limit`,
        title: `${title}: pressure at its edge`,
        rating: die['pressure-limit'],
        of: `${at}.highest-pressure`,
        kind: 'pressure',
        unit: 'kPa',
        consequence: 'the die can chip or crack at its edge',
      });
    }
  }

  write(y: Float64Array): void {
    const rest = this.#rest;
    if (!rest) return;
    let at = this.#firstOutput;
    const put = (value: number) => {
      y[at++] = value;
    };
    [rest.height, rest.tiltX, rest.tiltY, ...rest.screwForces].forEach(put);
    for (const { compression, strain, largestStrain, force, meanPressure } of rest.pads)
      [compression, strain, largestStrain, force, meanPressure].forEach(put);
    for (const { force, meanPressure, highestPressure, lowestPressure, contact, gap } of rest.dies)
      [force, meanPressure, highestPressure, lowestPressure, contact, gap].forEach(put);
    rest.stopForces.forEach(put);
  }
}
