import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type StackModel, stackModel } from '../board/heat/stack-model.ts';
import { budget } from '../metrology/budget.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { type Sensitivities, sensitivities } from '../metrology/sensitivity.ts';
import type { HeatElement } from '../study/schema/heat.ts';
import type { Step } from '../study/study.ts';
import { figure } from './figure.ts';
import type { Figure } from './step-plan.ts';

/** One layer of a way for heat: an element of a link, or air that warms up. */
export interface Layer {
  /** Path in the study. */
  readonly id: string;
  readonly title: string;
  /** What it is: `bond line (paste)`, `fins`, `air`. */
  readonly what: string;
  readonly resistance: Figure;
  /** Positive in the direction of the way. */
  readonly drop: Figure;
}

/** A link with what flows through it. */
export interface HeatWay {
  readonly id: string;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  readonly heat: Figure;
  readonly drop: Figure;
  readonly resistance: Figure;
  readonly layers: readonly Layer[];
}

/** Air on its way from one node to the next. */
export interface AirStretch {
  readonly stream: string;
  readonly from: string;
  readonly to: string;
  readonly heat: Figure;
  readonly rise: Figure;
}

/** The temperatures of a step from a node to ambient, layer by layer. */
export interface Stack {
  readonly step: string;
  readonly title: string;
  readonly nodes: readonly { readonly id: string; readonly title: string; readonly temperature: Figure }[];
  readonly ways: readonly HeatWay[];
  readonly air: readonly AirStretch[];
  /** From `start` along the way that carries most heat, down to ambient: the drops add up to `rise`. */
  readonly path: {
    readonly start: string;
    readonly rise: Figure;
    readonly layers: readonly (Layer & { readonly from: number; readonly to: number; readonly heat: Figure })[];
  };
}

/** The stack of a board at its operating point; null where it has none. `start`: where the path begins; the hottest node when left out. */
export function stackOf(board: BoardModel, start?: string): Stack | null {
  const model = stackModel(board);
  const nominal = evaluateAt(model, startValues(model));
  if (nominal.status.ending !== 'solved') return null;
  const reader = new Reader(model, nominal.y, sensitivities(model));
  const { heat, parts } = board.step.board;
  const titleOf = (node: string) => heat.nodes[node]?.title ?? node;
  const ways = Object.entries(heat.links).map(([id, link], i): HeatWay => {
    const places = model.links[i];
    const title = link.title ?? id;
    return {
      id,
      title,
      from: link.between[0],
      to: link.between[1],
      heat: reader.figure(places.heat),
      drop: reader.figure(places.drop),
      resistance: reader.figure(places.resistance),
      layers: link.through.map((element, k): Layer => {
        const { drop, resistance } = places.elements[k];
        return {
          id: `heat.links.${id}.through.${k}`,
          title,
          what: whatIs(element),
          resistance: reader.figure(resistance),
          drop: reader.figure(drop),
        };
      }),
    };
  });
  const air = model.stretches.map(
    ({ stream, from, node, heat: taken, rise }): AirStretch => ({
      stream: heat.streams![stream].title ?? stream,
      from,
      to: node,
      heat: reader.figure(taken),
      rise: reader.figure(rise),
    }),
  );
  const heated = new Set(
    Object.values(parts).flatMap(({ heats }) => (typeof heats === 'string' ? heats : Object.values(heats))),
  );
  const temperatureOf = (node: string) => nominal.y[model.nodes.get(node)!];
  const hottest = [...model.nodes.keys()]
    .filter((node) => node !== 'ambient' && heated.has(node))
    .sort((a, b) => temperatureOf(b) - temperatureOf(a))[0];
  const from = start ?? hottest ?? Object.keys(heat.nodes)[0];
  return {
    step: board.step.id,
    title: board.step.title,
    nodes: [...model.nodes].map(([id, place]) => ({ id, title: titleOf(id), temperature: reader.figure(place) })),
    ways,
    air,
    path: {
      start: from,
      rise: reader.difference(model.nodes.get(from)!, model.nodes.get('ambient')!),
      layers: followed(from, ways, air, temperatureOf),
    },
  };
}

/** The stack of a step as it stands in the study. */
export function stackOfStep(step: Step, start?: string): Stack | null {
  const assembly = assembleBoard(step);
  return assembly.ok ? stackOf(assembly.board, start) : null;
}

/** Figures of a model's outputs, to first order. */
class Reader {
  constructor(
    readonly model: StackModel,
    readonly y: Float64Array,
    readonly sens: Sensitivities,
  ) {}

  figure(place: number): Figure {
    const { id, kind, unit } = this.model.outputs[place];
    return figure(this.y[place], budget(this.model, id, this.sens)?.u ?? null, kind, unit);
  }

  /** Of two outputs, which depend on the same inputs. */
  difference(a: number, b: number): Figure {
    const { c, u, ending } = this.sens;
    const squares = u.reduce((sum, own, i) => sum + ((c[a][i] - c[b][i]) * own) ** 2, 0);
    return figure(
      this.y[a] - this.y[b],
      ending === 'solved' ? Math.sqrt(squares) : null,
      'temperature-difference',
      'K',
    );
  }
}

/** From a node always along the way that carries most heat away, to ambient. */
function followed(
  start: string,
  ways: readonly HeatWay[],
  air: readonly AirStretch[],
  temperatureOf: (node: string) => number,
): Stack['path']['layers'] {
  const layers: Stack['path']['layers'][number][] = [];
  const passed = new Set<string>();
  for (let node = start; node !== 'ambient' && !passed.has(node); ) {
    passed.add(node);
    const out = [
      ...ways.flatMap((way) => {
        if (way.from === node) return [{ way, next: way.to, heat: way.heat.value, turned: false }];
        return way.to === node ? [{ way, next: way.from, heat: -way.heat.value, turned: true }] : [];
      }),
      // Air carries its heat on; the temperature falls back to where it came from.
      ...air.flatMap((stretch) =>
        stretch.to === node ? [{ stretch, next: stretch.from, heat: stretch.heat.value }] : [],
      ),
    ].filter(({ heat, next }) => heat > 0 && !passed.has(next));
    const best = out.sort((a, b) => b.heat - a.heat)[0];
    if (!best) break;
    let here = temperatureOf(node);
    if ('stretch' in best) {
      const { stream, heat, rise, from, to } = best.stretch;
      const resistance = figure(rise.value / heat.value, null, 'thermal-resistance', 'K/W');
      const what = `air from ${from}`;
      layers.push({
        id: `heat.streams.${to}`,
        title: stream,
        what,
        resistance,
        drop: rise,
        heat,
        from: here,
        to: here - rise.value,
      });
    } else {
      const { way, turned } = best;
      const inOrder = turned ? way.layers.toReversed() : way.layers;
      for (const layer of inOrder) {
        const drop = turned ? negative(layer.drop) : layer.drop;
        layers.push({
          ...layer,
          drop,
          heat: turned ? negative(way.heat) : way.heat,
          from: here,
          to: here - drop.value,
        });
        here -= drop.value;
      }
    }
    node = best.next;
  }
  return layers;
}

function negative({ value, u, unit }: Figure): Figure {
  return unit === 'W' ? figure(-value, u, 'power', 'W') : figure(-value, u, 'temperature-difference', 'K');
}

/** What an element is, for people. */
function whatIs(element: HeatElement): string {
  if ('bond-line' in element) return `bond line${of(element['bond-line'].material)}`;
  if ('contact' in element) return `contact${of(element.contact.material)}`;
  if ('layer' in element) return `layer${of(element.layer.material)}`;
  if ('heat-pipes' in element) return `heat pipes, ${element['heat-pipes'].count}`;
  if ('fins' in element) return `fins, ${element.fins.count}`;
  if ('spreading' in element) return 'spreading';
  return 'film' in element ? 'film' : 'resistance';
}

function of(material: string | undefined): string {
  return material === undefined ? '' : ` (${material})`;
}
