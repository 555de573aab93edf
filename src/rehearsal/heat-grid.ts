import { factor, type LuPlan, planLu, solve } from '../numeric/lu.ts';
import type { RandomStream } from '../numeric/random.ts';
import { solvePlate } from '../physics/mechanics/solve-plate.ts';
import { airHeatCapacityRate } from '../physics/thermal/air-heating.ts';
import { bondLineThickness } from '../physics/thermal/bond-line.ts';
import { finEfficiency } from '../physics/thermal/fin-efficiency.ts';
import { peakSpreadingResistance } from '../physics/thermal/spreading-resistance.ts';
import { plateOf } from '../study/plate-of.ts';
import type { HeatElement, HeatPath } from '../study/schema/heat.ts';
import type { PlateSection } from '../study/schema/plate.ts';
import type { Departures } from './departures.ts';
import type { Truth } from './hidden.ts';
import type { Planted } from './planted.ts';

/** Cells that a link is cut into between its two nodes. */
const cellsPerLink = 2;
/** Rise at which a film coefficient is what the study states [K]. */
const statedRise = 25;

interface Run {
  readonly id: string;
  /** Cells from one end to the other, nodes included; ambient is −1. */
  readonly cells: readonly number[];
  /** Resistance between two neighbours at the stated rise [K/W]. */
  readonly resistance: number;
  /** Part of the resistance that is a film and shrinks as it heats [1]. */
  readonly filmShare: number;
}

/**
 * Heat path of a virtual board: every link cut into cells with heat capacities of their own, films that carry more the hotter they get,
 * and moving air. Rises over ambient [K]; implicit in time (backward Euler), so that a long step ends in the steady state.
 */
export class HeatGrid {
  /** Rises of nodes, then of the cells inside the links [K]. */
  readonly rises: Float64Array;
  readonly nodes: readonly string[];
  readonly #runs: readonly Run[];
  readonly #streams: readonly { readonly rate: number; readonly nodes: readonly number[] }[];
  readonly #capacity: Float64Array;
  readonly #plan: LuPlan;
  readonly #places: ReadonlyMap<number, number>;
  readonly #values: Float64Array;
  readonly #load: Float64Array;
  readonly #exponent: number;

  constructor(
    heat: HeatPath,
    truth: Truth,
    { filmExponent, ageing }: Departures,
    faults: readonly Planted[],
    random: RandomStream,
    plate?: PlateSection,
  ) {
    this.nodes = Object.keys(heat.nodes);
    const pressureOn = plate ? pressuresUnder(plate, truth) : () => Number.NaN;
    this.#exponent = filmExponent;
    const index = (name: string) => (name === 'ambient' ? -1 : this.nodes.indexOf(name));
    let size = this.nodes.length;
    this.#runs = Object.entries(heat.links).map(([id, link]): Run => {
      const parts = link.through.map((element) => resistanceOf(element, truth, ageing, pressureOn));
      const whole = parts.reduce((sum, { resistance }) => sum + resistance, 0);
      const films = parts.reduce((sum, { resistance, film }) => sum + (film ? resistance : 0), 0);
      const detached = faults.some((fault) => fault.kind === 'detached-pad' && fault.link === id);
      const inner = Array.from({ length: cellsPerLink }, () => size++);
      const [from, to] = link.between;
      return {
        id,
        cells: [index(from), ...inner, index(to)],
        resistance: ((detached ? 10 : 1) * whole) / (cellsPerLink + 1),
        filmShare: films / whole,
      };
    });
    const ambient = truth(heat.ambient);
    this.#streams = Object.values(heat.streams ?? {}).map(({ flow, through }) => ({
      rate: airHeatCapacityRate(truth(flow), ambient),
      nodes: through.map(index),
    }));
    this.rises = new Float64Array(size);
    this.#load = new Float64Array(size);

    const places = new Map<number, number>();
    const rows: number[] = [];
    const columns: number[] = [];
    const place = (row: number, column: number) => {
      if (row < 0 || column < 0 || places.has(row * size + column)) return;
      places.set(row * size + column, rows.length);
      rows.push(row);
      columns.push(column);
    };
    for (let i = 0; i < size; i++) place(i, i);
    for (const { cells } of this.#runs)
      for (let k = 1; k < cells.length; k++) {
        place(cells[k - 1], cells[k]);
        place(cells[k], cells[k - 1]);
      }
    for (const { nodes } of this.#streams) for (let k = 1; k < nodes.length; k++) place(nodes[k], nodes[k - 1]);
    this.#places = places;
    this.#plan = planLu(size, rows, columns);
    this.#values = new Float64Array(rows.length);
    this.#capacity = this.#capacities(random);
  }

  index(node: string): number {
    return this.nodes.indexOf(node);
  }

  /** One step of `dt` seconds under heat into the nodes [W]; infinite: to the steady state under the films as they are now. */
  step(heat: ArrayLike<number>, dt: number): void {
    const size = this.rises.length;
    const values = this.#values;
    values.fill(0);
    const add = (row: number, column: number, conductance: number) => {
      if (row < 0) return;
      // The place of the diagonal takes what leads to ambient.
      values[this.#places.get(row * size + (column < 0 ? row : column))!] += column < 0 ? conductance : -conductance;
    };
    for (const run of this.#runs) {
      const conductance = 1 / this.#resistanceNow(run);
      for (let k = 1; k < run.cells.length; k++) {
        add(run.cells[k - 1], run.cells[k], conductance);
        add(run.cells[k], run.cells[k - 1], conductance);
      }
    }
    for (const { rate, nodes } of this.#streams)
      for (let k = 0; k < nodes.length; k++) add(nodes[k], k === 0 ? -1 : nodes[k - 1], rate);
    for (let i = 0; i < size; i++) {
      const inertia = this.#capacity[i] / dt;
      values[this.#places.get(i * size + i)!] += inertia;
      this.#load[i] = inertia * this.rises[i] + (i < this.nodes.length ? heat[i] : 0);
    }
    if (!factor(this.#plan, values)) throw new Error('a virtual heat path without a way to ambient');
    solve(this.#plan, this.#load, this.rises);
  }

  #resistanceNow({ cells, resistance, filmShare }: Run): number {
    if (filmShare === 0 || this.#exponent === 0) return resistance;
    const [a, b] = [cells[0], cells[cells.length - 1]];
    const rise = Math.abs((a < 0 ? 0 : this.rises[a]) - (b < 0 ? 0 : this.rises[b]));
    return resistance * (1 - filmShare + filmShare * (Math.max(rise, 1) / statedRise) ** -this.#exponent);
  }

  /** A study says nothing of heat capacities: each node gets one that makes its own time constant 20 to 200 s (air: 1 s), each cell a tenth of it. */
  #capacities(random: RandomStream): Float64Array {
    const conductance = new Float64Array(this.rises.length);
    for (const { cells, resistance } of this.#runs)
      for (const cell of cells) if (cell >= 0) conductance[cell] += 1 / resistance;
    const airy = new Set(this.#streams.flatMap(({ nodes }) => nodes));
    return conductance.map((sum, i) => {
      const time = 20 * 10 ** random.uniform();
      if (airy.has(i)) return sum;
      return i < this.nodes.length ? (time * sum) / (cellsPerLink + 1) : (0.1 * time * sum) / (cellsPerLink + 1);
    });
  }
}

interface ElementTruth {
  readonly resistance: number;
  readonly film: boolean;
}

/** Mean pressure on each die of the plate [Pa]; NaN where the plate finds no rest. */
function pressuresUnder(section: PlateSection, truth: Truth): (die: string) => number {
  const plate = plateOf(section, truth);
  const rest = plate && solvePlate(plate);
  const names = Object.keys(section.dies ?? {});
  return (die) => (rest?.ending === 'solved' ? rest.dies[names.indexOf(die)].meanPressure : Number.NaN);
}

/** Resistance of one element [K/W]. */
function resistanceOf(
  element: HeatElement,
  truth: Truth,
  ageing: number,
  pressureOn: (die: string) => number,
): ElementTruth {
  const solid = (resistance: number): ElementTruth => ({ resistance, film: false });
  if ('resistance' in element) return solid(truth(element.resistance));
  if ('layer' in element) {
    const { thickness, conductivity, area } = element.layer;
    return solid(truth(thickness) / (truth(conductivity) * truth(area)));
  }
  if ('contact' in element) return solid(truth(element.contact.resistance) / truth(element.contact.area));
  if ('bond-line' in element) {
    const line = element['bond-line'];
    const pressure = line.pressure ? truth(line.pressure) : pressureOn(line['pressed-by']!);
    const thickness = bondLineThickness(truth(line['yield-stress']), pressure);
    return solid(((1 + ageing) * thickness) / (truth(line.conductivity) * truth(line.area)));
  }
  if ('spreading' in element) {
    const { spreading } = element;
    return solid(
      peakSpreadingResistance(
        truth(spreading['source-area']),
        truth(spreading['plate-area']),
        truth(spreading.thickness),
        truth(spreading.conductivity),
        truth(spreading.film),
      ),
    );
  }
  if ('heat-pipes' in element) return solid(truth(element['heat-pipes'].each) / element['heat-pipes'].count);
  if ('fins' in element) {
    const { count, height, width, thickness, conductivity, film } = element.fins;
    const efficiency = finEfficiency(truth(film), truth(conductivity), truth(thickness), truth(height));
    return { resistance: 1 / (count * 2 * truth(height) * truth(width) * truth(film) * efficiency), film: true };
  }
  return { resistance: 1 / (truth(element.film.coefficient) * truth(element.film.area)), film: true };
}
