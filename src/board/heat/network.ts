import { factor, type LuPlan, planLu, solve } from '../../numeric/lu.ts';
import { airHeatCapacityRate } from '../../physics/thermal/air-heating.ts';
import type { HeatPath } from '../../study/schema/heat.ts';
import type { PlateOnBoard } from '../plate/plate-on-board.ts';
import type { Slots } from '../slots.ts';
import { type ElementResistance, elementResistance } from './elements.ts';

interface Link {
  readonly a: number;
  readonly b: number;
  readonly elements: readonly ElementResistance[];
}

interface Stream {
  readonly flow: number;
  readonly nodes: readonly number[];
}

/**
 * The heat path as conductances between nodes: G·rise = heat, with rises over ambient.
 * Moving air carries heat one way, so G isn't symmetric; it stays an M-matrix. Its diagonal is given by the sum of each row: what leads to ambient.
 */
export class HeatNetwork {
  /** Names of the nodes in their order; ambient has the index `nodes.length`. */
  readonly nodes: readonly string[];
  readonly #links: Link[] = [];
  readonly #streams: Stream[] = [];
  readonly #ambientSlot: number;
  readonly #plan: LuPlan;
  /** Index into the matrix values, two a link: ab, ba; the own place of its node and −1 where one end is ambient. */
  readonly #linkPlaces: Int32Array;
  /** Index into the matrix values, one a stream node: the node upstream, or its own place where that is ambient. */
  readonly #streamPlaces: Int32Array;
  readonly #values: Float64Array;
  readonly #conductance: Float64Array;
  readonly #capacityRate: Float64Array;
  ambient = 0;

  constructor(heat: HeatPath, slots: Slots, plate: PlateOnBoard | null) {
    this.nodes = Object.keys(heat.nodes);
    this.#ambientSlot = slots.of(heat.ambient);
    for (const link of Object.values(heat.links)) {
      const [a, b] = link.between.map((name) => this.indexOf(name));
      this.#links.push({ a, b, elements: link.through.map((element) => elementResistance(element, slots, plate)) });
    }
    for (const stream of Object.values(heat.streams ?? {}))
      this.#streams.push({ flow: slots.of(stream.flow), nodes: stream.through.map((name) => this.indexOf(name)) });

    const n = this.nodes.length;
    const rows: number[] = [];
    const columns: number[] = [];
    const places = new Map<number, number>();
    const place = (row: number, column: number): number => {
      const key = row * n + column;
      if (!places.has(key)) {
        places.set(key, rows.length);
        rows.push(row);
        columns.push(column);
      }
      return places.get(key)!;
    };
    for (let i = 0; i < n; i++) place(i, i);
    this.#linkPlaces = Int32Array.from(
      this.#links.flatMap(({ a, b }) =>
        a === n || b === n ? [place(Math.min(a, b), Math.min(a, b)), -1] : [place(a, b), place(b, a)],
      ),
    );
    this.#streamPlaces = Int32Array.from(
      this.#streams.flatMap(({ nodes }) => nodes.map((node, i) => place(node, i === 0 ? node : nodes[i - 1]))),
    );
    this.#values = new Float64Array(rows.length);
    this.#conductance = new Float64Array(this.#links.length);
    this.#capacityRate = new Float64Array(this.#streams.length);
    this.#plan = planLu(n, rows, columns);
  }

  /** Index of a node by its name; ambient is the last. */
  indexOf(name: string): number {
    return name === 'ambient' ? this.nodes.length : this.nodes.indexOf(name);
  }

  /** Takes this evaluation's numbers and factors the network. False: these numbers can't be a heat path. */
  load(x: Float64Array): boolean {
    const values = this.#values;
    values.fill(0);
    this.ambient = x[this.#ambientSlot];
    let sound = this.ambient > 0;
    for (let i = 0; i < this.#links.length; i++) {
      let resistance = 0;
      for (const element of this.#links[i].elements) {
        const part = element(x);
        sound = sound && part >= 0;
        resistance += part;
      }
      const conductance = 1 / resistance;
      sound = sound && resistance > 0;
      this.#conductance[i] = conductance;
      const there = this.#linkPlaces[2 * i];
      const back = this.#linkPlaces[2 * i + 1];
      if (back < 0) values[there] += conductance;
      else {
        values[there] -= conductance;
        values[back] -= conductance;
      }
    }
    let p = 0;
    for (let i = 0; i < this.#streams.length; i++) {
      const rate = airHeatCapacityRate(x[this.#streams[i].flow], this.ambient);
      sound = sound && rate > 0;
      this.#capacityRate[i] = rate;
      for (let k = 0; k < this.#streams[i].nodes.length; k++, p++)
        values[this.#streamPlaces[p]] += k === 0 ? rate : -rate;
    }
    return sound && factor(this.#plan, values);
  }

  /** Rises over ambient from heat into the nodes [K from W]. */
  rise(heat: Float64Array, rises: Float64Array): void {
    solve(this.#plan, heat, rises);
  }

  /** Heat that leaves to ambient through links and streams, worked out from the temperatures [W]. */
  leaving(rises: Float64Array): number {
    const n = this.nodes.length;
    let sum = 0;
    for (let i = 0; i < this.#links.length; i++) {
      const { a, b } = this.#links[i];
      if (a === n && b !== n) sum += this.#conductance[i] * rises[b];
      if (b === n && a !== n) sum += this.#conductance[i] * rises[a];
    }
    for (let i = 0; i < this.#streams.length; i++) {
      const { nodes } = this.#streams[i];
      sum += this.#capacityRate[i] * rises[nodes[nodes.length - 1]];
    }
    return sum;
  }
}
