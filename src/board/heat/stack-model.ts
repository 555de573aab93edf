import type { Ending, Model, Output } from '../../metrology/model.ts';
import { airHeatCapacityRate } from '../../physics/thermal/air-heating.ts';
import { tiesOfStep } from '../../study/ties.ts';
import type { BoardModel } from '../assemble.ts';
import { PlateOnBoard } from '../plate/plate-on-board.ts';
import { Slots } from '../slots.ts';
import { elementResistance } from './elements.ts';

/** Where a link's or a stretch of air's results stand among the outputs. */
export interface LinkPlaces {
  readonly id: string;
  readonly heat: number;
  readonly drop: number;
  readonly resistance: number;
  /** Of each element: its drop and its resistance. */
  readonly elements: readonly { readonly drop: number; readonly resistance: number }[];
}

export interface StretchPlaces {
  readonly stream: string;
  readonly node: string;
  /** Node that the air comes from; `ambient` for the first. */
  readonly from: string;
  /** Heat that the air takes up on its way to the node, and by how much that warms it. */
  readonly heat: number;
  readonly rise: number;
}

/** The heat path of a board in full: what flows through each link, and the temperature that it loses over each element. */
export interface StackModel extends Model {
  readonly links: readonly LinkPlaces[];
  readonly stretches: readonly StretchPlaces[];
  /** Outputs of the temperatures, by node; ambient among them. */
  readonly nodes: ReadonlyMap<string, number>;
}

/**
 * The stack of a board: its inputs are the board's. Heat through a link is the difference of its ends over its resistance, positive from its first end
 * to its second; the drop over an element is that heat times the element's resistance. Air takes up its capacity rate times its rise.
 */
export function stackModel(board: BoardModel): StackModel {
  const { heat, plate: section } = board.step.board;
  const slots = new Slots(board.step.quantities);
  const plate = section ? new PlateOnBoard(section, slots) : null;
  const outputs: Output[] = [];
  const add = (id: string, kind: Output['kind'], unit: string, title: string) =>
    outputs.push({ id, kind, unit, title }) - 1;
  const nodes = new Map(
    [...Object.keys(heat.nodes), 'ambient'].map((id) => [
      id,
      add(`heat.nodes.${id}.temperature`, 'temperature', '°C', heat.nodes[id]?.title ?? id),
    ]),
  );
  const resistances = Object.values(heat.links).map(({ through }) =>
    through.map((element) => elementResistance(element, slots, plate)),
  );
  const links = Object.entries(heat.links).map(([id, link]): LinkPlaces => {
    const title = link.title ?? id;
    const at = `heat.links.${id}`;
    return {
      id,
      heat: add(`${at}.heat`, 'power', 'W', `heat through ${title}`),
      drop: add(`${at}.drop`, 'temperature-difference', 'K', `temperature drop over ${title}`),
      resistance: add(`${at}.resistance`, 'thermal-resistance', 'K/W', `resistance of ${title}`),
      elements: link.through.map((_, k) => ({
        drop: add(
          `${at}.through.${k}.drop`,
          'temperature-difference',
          'K',
          `temperature drop over part ${k} of ${title}`,
        ),
        resistance: add(
          `${at}.through.${k}.resistance`,
          'thermal-resistance',
          'K/W',
          `resistance of part ${k} of ${title}`,
        ),
      })),
    };
  });
  const stretches = Object.entries(heat.streams ?? {}).flatMap(([stream, { title = stream, through }]) =>
    through.map((node, k): StretchPlaces => {
      const at = `heat.streams.${stream}.${node}`;
      return {
        stream,
        node,
        from: k === 0 ? 'ambient' : through[k - 1],
        heat: add(`${at}.heat`, 'power', 'W', `heat that ${title} takes up before ${node}`),
        rise: add(`${at}.rise`, 'temperature-difference', 'K', `warming of ${title} before ${node}`),
      };
    }),
  );
  const temperatureAt = new Map(
    [...nodes.keys()].map((id) => [id, board.indexOfOutput(`heat.nodes.${id}.temperature`)]),
  );
  const ties = tiesOfStep(board.step, board.inputs);
  const boardY = new Float64Array(board.outputs.length);
  const state: { ending: Ending[] } = { ending: ['solved'] };
  return {
    inputs: board.inputs,
    outputs,
    links,
    stretches,
    nodes,
    evaluate(given, y) {
      const status = board.evaluate(given, boardY);
      if (status.ending !== 'solved') {
        y.fill(Number.NaN);
        return status;
      }
      const x = ties ? ties.apply(given) : given;
      // A board's own inputs, such as a dial, stand behind those of the study.
      for (let i = 0; i < slots.columns.length; i++) slots.columns[i][0] = x[i];
      state.ending[0] = 'solved';
      plate?.load(state, 0, 1);
      const temperature = (node: string) => boardY[temperatureAt.get(node)!];
      for (const [node, place] of nodes) y[place] = temperature(node);
      Object.values(heat.links).forEach(({ between: [a, b] }, i) => {
        const { elements, ...link } = links[i];
        const parts = resistances[i].map((resistance) => resistance(0));
        const resistance = parts.reduce((sum, part) => sum + part, 0);
        y[link.resistance] = resistance;
        y[link.drop] = temperature(a) - temperature(b);
        y[link.heat] = y[link.drop] / resistance;
        elements.forEach((element, k) => {
          y[element.resistance] = parts[k];
          y[element.drop] = y[link.heat] * parts[k];
        });
      });
      for (const { stream, node, from, heat: taken, rise } of stretches) {
        const flow = slots.column(heat.streams![stream].flow)[0];
        y[rise] = temperature(node) - temperature(from);
        y[taken] = airHeatCapacityRate(flow, temperature('ambient')) * y[rise];
      }
      return status;
    },
  };
}
