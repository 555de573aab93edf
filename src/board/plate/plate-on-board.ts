import type { PlateAtRest, PlateNotAtRest } from '../../physics/mechanics/plate.ts';
import { solvePlate } from '../../physics/mechanics/solve-plate.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { plateOf } from '../../study/plate-of.ts';
import type { PlateSection } from '../../study/schema/plate.ts';
import type { Attachment } from '../batch.ts';
import { column, lanes } from '../lanes.ts';
import type { Limits } from '../limits.ts';
import type { Outputs } from '../outputs.ts';
import { fail, type PathState } from '../path/path-state.ts';
import type { Slots } from '../slots.ts';

/** How the plate's balance ended; `impossible`: its numbers can't be a plate's. */
export type PlateEnding = (PlateAtRest | PlateNotAtRest)['ending'] | 'impossible';

/** The plate of a board: solved anew for each vector of inputs. */
export class PlateOnBoard implements Attachment {
  /** Of the first lane. */
  ending: PlateEnding = 'unsettled';
  readonly dies: readonly string[];
  readonly #section: PlateSection;
  readonly #slots: Slots;
  readonly #rests: (PlateAtRest | null)[] = new Array<PlateAtRest | null>(lanes).fill(null);
  readonly #pressures: ReadonlyMap<string, Float64Array>;
  #firstOutput = 0;

  constructor(section: PlateSection, slots: Slots) {
    this.#section = section;
    this.#slots = slots;
    this.dies = Object.keys(section.dies ?? {});
    this.#pressures = new Map(this.dies.map((die) => [die, column(Number.NaN)]));
  }

  /** Takes each lane's numbers and finds where the plate comes to rest; a lane where it doesn't is marked. */
  load(state: Pick<PathState, 'ending'>, from: number, to: number): void {
    const slots = this.#slots;
    for (let s = from; s < to; s++) {
      const plate = plateOf(this.#section, (quantity: Quantity) => slots.column(quantity)[s]);
      const result = plate ? solvePlate(plate) : null;
      const rest = result?.ending === 'solved' ? result : null;
      if (s === 0) this.ending = result?.ending ?? 'impossible';
      this.#rests[s] = rest;
      this.dies.forEach((die, i) => {
        this.pressureOn(die)[s] = rest?.dies[i].meanPressure ?? Number.NaN;
      });
      if (!rest) fail(state, s, 'infeasible');
    }
  }

  /** Mean pressure on a die [Pa], one number a lane; 0 where the plate doesn't touch it. */
  pressureOn(die: string): Float64Array {
    const pressure = this.#pressures.get(die);
    if (!pressure) throw new Error(`the plate has no die "${die}"`);
    return pressure;
  }

  /** Where the plate of the first lane came to rest; null: it didn't. */
  get rest(): PlateAtRest | null {
    return this.#rests[0];
  }

  /** Dies that the plate doesn't touch, of the first lane. */
  get lifted(): readonly string[] {
    return this.dies.filter((die) => this.pressureOn(die)[0] === 0);
  }

  /** Adds what comes out: one contiguous stretch, written by `write`. */
  addOutputs(outputs: Outputs): void {
    const { screws, pads = {}, dies = {}, stops = {} } = this.#section;
    const title = (id: string, part: { readonly title?: string }) => part.title ?? id;
    this.#firstOutput = outputs.list.length;
    outputs.add('plate.pull', 'force', 'N', 'pull of all screws');
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

  write(y: readonly Float64Array[], from: number, to: number): void {
    for (let s = from; s < to; s++) {
      const rest = this.#rests[s];
      if (rest) this.#writeLane(rest, y, s);
    }
  }

  #writeLane(rest: PlateAtRest, y: readonly Float64Array[], lane: number): void {
    let at = this.#firstOutput;
    const put = (value: number) => {
      y[at++][lane] = value;
    };
    const pull = rest.screwForces.reduce((sum, force) => sum + force, 0);
    [pull, rest.height, rest.tiltX, rest.tiltY, ...rest.screwForces].forEach(put);
    for (const { compression, strain, largestStrain, force, meanPressure } of rest.pads)
      [compression, strain, largestStrain, force, meanPressure].forEach(put);
    for (const { force, meanPressure, highestPressure, lowestPressure, contact, gap } of rest.dies)
      [force, meanPressure, highestPressure, lowestPressure, contact, gap].forEach(put);
    rest.stopForces.forEach(put);
  }
}
