import { type Fault, refuse } from '../../fault/fault.ts';
import type { CheckInput } from './check.ts';

const kinds: readonly string[] = ['conductor', 'sense', 'regulator', 'load'];

/** The power path: at least one supply, nothing fed by a load, and no part that feeds itself. */
export function checkFeeding({ outline, place }: CheckInput): Fault[] {
  const { parts } = outline;
  const byName = new Map(parts.map((part) => [part.name, part]));
  const faults: Fault[] = [];
  if (parts.length > 0 && parts.every((part) => kinds.includes(part.kind))) {
    faults.push(refuse('study/no-supply', { parts: parts.map((part) => part.name) }, place(['parts'], 'key')));
  }
  const told = new Set<string>();
  for (const part of parts) {
    const feeder = part.feeder === undefined ? undefined : byName.get(part.feeder);
    if (feeder?.kind === 'load') {
      faults.push(refuse('study/fed-by-load', { name: part.name, load: feeder.name }, place([...part.path, 'fed-by'])));
    }
    const way: string[] = [];
    let here: typeof feeder = part;
    while (here && !way.includes(here.name)) {
      way.push(here.name);
      here = here.feeder === undefined || here.kind === 'supply' ? undefined : byName.get(here.feeder);
    }
    // Each cycle is told once, at the part in it that comes first in the file.
    if (!here || here.name !== part.name || told.has(part.name)) continue;
    for (const name of way) told.add(name);
    faults.push(refuse('study/cycle', { way: [...way, part.name] }, place([...part.path, 'fed-by'])));
  }
  return faults;
}
