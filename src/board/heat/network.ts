import { factor, type LuPlan, planLu, solve } from '../../numeric/lu.ts';
import { airHeatCapacityRate } from '../../physics/thermal/air-heating.ts';
import type { HeatPath } from '../../study/schema/heat.ts';
import { column, fill, lanes, type Table, table } from '../lanes.ts';
import { fail, type PathState } from '../path/path-state.ts';
import type { PlateOnBoard } from '../plate/plate-on-board.ts';
import type { Slots } from '../slots.ts';
import { type ElementResistance, elementResistance } from './elements.ts';

interface Link {
  readonly a: number;
  readonly b: number;
  readonly elements: readonly ElementResistance[];
}

interface Stream {
  readonly flow: Float64Array;
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
  readonly #plan: LuPlan;
  /** Index into the matrix values, two a link: ab, ba; the own place of its node and −1 where one end is ambient. */
  readonly #linkPlaces: Int32Array;
  /** Index into the matrix values, one a stream node: the node upstream, or its own place where that is ambient. */
  readonly #streamPlaces: Int32Array;
  readonly #values: Table;
  readonly #conductance: readonly Float64Array[];
  readonly #capacityRate: readonly Float64Array[];
  readonly ambient: Float64Array;

  constructor(heat: HeatPath, slots: Slots, plate: PlateOnBoard | null) {
    this.nodes = Object.keys(heat.nodes);
    this.ambient = slots.column(heat.ambient);
    for (const link of Object.values(heat.links)) {
      const [a, b] = link.between.map((name) => this.indexOf(name));
      this.#links.push({ a, b, elements: link.through.map((element) => elementResistance(element, slots, plate)) });
    }
    for (const stream of Object.values(heat.streams ?? {}))
      this.#streams.push({ flow: slots.column(stream.flow), nodes: stream.through.map((name) => this.indexOf(name)) });

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
    this.#values = table(rows.length);
    this.#conductance = this.#links.map(() => column());
    this.#capacityRate = this.#streams.map(() => column());
    this.#plan = planLu(n, rows, columns, lanes);
  }

  /** Index of a node by its name; ambient is the last. */
  indexOf(name: string): number {
    return name === 'ambient' ? this.nodes.length : this.nodes.indexOf(name);
  }

  /** Factors the network. A lane whose numbers can't be a heat path is marked. */
  load(state: PathState, from: number, to: number): void {
    const { ambient } = this;
    const values = this.#values.columns;
    for (let e = 0; e < values.length; e++) fill(values[e], 0, from, to);
    for (let s = from; s < to; s++) if (!(ambient[s] > 0)) fail(state, s, 'infeasible');
    for (let i = 0; i < this.#links.length; i++) {
      const { elements } = this.#links[i];
      const conductance = this.#conductance[i];
      fill(conductance, 0, from, to);
      for (let k = 0; k < elements.length; k++) {
        const element = elements[k];
        for (let s = from; s < to; s++) {
          const resistance = element(s);
          conductance[s] += resistance;
          if (!(resistance >= 0)) fail(state, s, 'infeasible');
        }
      }
      for (let s = from; s < to; s++) {
        if (!(conductance[s] > 0)) fail(state, s, 'infeasible');
        conductance[s] = 1 / conductance[s];
      }
      const there = values[this.#linkPlaces[2 * i]];
      if (this.#linkPlaces[2 * i + 1] < 0) for (let s = from; s < to; s++) there[s] += conductance[s];
      else {
        const back = values[this.#linkPlaces[2 * i + 1]];
        for (let s = from; s < to; s++) {
          there[s] -= conductance[s];
          back[s] -= conductance[s];
        }
      }
    }
    let p = 0;
    for (let i = 0; i < this.#streams.length; i++) {
      const { flow, nodes } = this.#streams[i];
      const rate = this.#capacityRate[i];
      for (let s = from; s < to; s++) {
        rate[s] = airHeatCapacityRate(flow[s], ambient[s]);
        if (!(rate[s] > 0)) fail(state, s, 'infeasible');
      }
      for (let k = 0; k < nodes.length; k++, p++) {
        const there = values[this.#streamPlaces[p]];
        for (let s = from; s < to; s++) there[s] += k === 0 ? rate[s] : -rate[s];
      }
    }
    if (factor(this.#plan, this.#values.all, from, to)) return;
    for (let s = from; s < to; s++) if (this.#plan.regular[s] === 0) fail(state, s, 'infeasible');
  }

  /** Rises over ambient from heat into the nodes [K from W]. */
  rise(heat: Table, rises: Table, from: number, to: number): void {
    solve(this.#plan, heat.all, rises.all, from, to);
  }

  /** Heat that leaves to ambient through links and streams, worked out from the temperatures [W]. */
  leaving({ columns }: Table, lane: number): number {
    const n = this.nodes.length;
    let sum = 0;
    for (let i = 0; i < this.#links.length; i++) {
      const { a, b } = this.#links[i];
      if (a === n && b !== n) sum += this.#conductance[i][lane] * columns[b][lane];
      if (b === n && a !== n) sum += this.#conductance[i][lane] * columns[a][lane];
    }
    for (let i = 0; i < this.#streams.length; i++) {
      const { nodes } = this.#streams[i];
      sum += this.#capacityRate[i][lane] * columns[nodes[nodes.length - 1]][lane];
    }
    return sum;
  }
}
