import type { Part } from '../study/schema/parts.ts';
import type { HeatNetwork } from './heat/network.ts';
import type { Outputs } from './outputs.ts';
import { Conductor } from './path/conductor.ts';
import { Load } from './path/load.ts';
import type { PathPart } from './path/path-part.ts';
import { Regulator } from './path/regulator.ts';
import { Sense } from './path/sense.ts';
import { Supply } from './path/supply.ts';
import type { Slots } from './slots.ts';

export interface PowerPath {
  /** From the supplies downward: a part always stands after its feeder. */
  readonly parts: readonly PathPart[];
  readonly supplies: readonly Supply[];
  readonly followers: readonly Load[];
  readonly senses: ReadonlyMap<string, Sense>;
}

/** Puts the parts of the study in order and makes them. */
export function buildPowerPath(
  parts: Readonly<Record<string, Part>>,
  heat: HeatNetwork,
  slots: Slots,
  outputs: Outputs,
): PowerPath {
  const order = orderFromSupplies(parts);
  const index = new Map(order.map((id, i) => [id, i]));
  const made: PathPart[] = [];
  const supplies: Supply[] = [];
  const followers: Load[] = [];
  const senses = new Map<string, Sense>();
  const node = (name: string) => heat.indexOf(name);
  order.forEach((id, i) => {
    const part = parts[id];
    if (part.kind === 'supply') {
      const supply = new Supply(id, i, node(part.heats), part, slots, outputs);
      supplies.push(supply);
      made.push(supply);
      return;
    }
    const feeder = index.get(part['fed-by'])!;
    if (part.kind === 'conductor') made.push(new Conductor(id, i, feeder, node(part.heats), part, slots));
    else if (part.kind === 'sense') {
      const sense = new Sense(id, i, feeder, node(part.heats), part, slots, outputs);
      senses.set(id, sense);
      made.push(sense);
    } else if (part.kind === 'regulator') {
      const { heats } = part;
      const [stages, inductors] = typeof heats === 'string' ? [heats, heats] : [heats.stages, heats.inductors];
      made.push(new Regulator(id, i, feeder, node(stages), node(inductors), part, slots, outputs));
    } else {
      const load = new Load(id, i, feeder, node(part.heats), part, slots, outputs);
      if (load.follows) followers.push(load);
      made.push(load);
    }
  });
  return { parts: made, supplies, followers, senses };
}

function orderFromSupplies(parts: Readonly<Record<string, Part>>): string[] {
  const ids = Object.keys(parts);
  const order = ids.filter((id) => parts[id].kind === 'supply');
  for (let i = 0; i < order.length; i++)
    for (const id of ids) {
      const part = parts[id];
      if (part.kind !== 'supply' && part['fed-by'] === order[i]) order.push(id);
    }
  return order;
}
