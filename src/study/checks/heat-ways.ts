import { type Fault, refuse } from '../../fault/fault.ts';
import type { CheckInput } from './check.ts';

/** The heat path: each node has a way to ambient, no link joins a node to itself, air passes a node once, and `ambient` stays reserved. */
export function checkHeatWays({ outline, place }: CheckInput): Fault[] {
  const { nodes, links, streams } = outline;
  const faults: Fault[] = [];
  if (nodes.includes('ambient'))
    faults.push(refuse('study/reserved-name', { name: 'ambient' }, place(['heat', 'nodes', 'ambient'], 'key')));
  for (const { path, ends } of links) {
    if (ends.length === 2 && ends[0] === ends[1])
      faults.push(refuse('study/self-link', { node: ends[0] }, place([...path, 1])));
  }
  const passed = new Map<string, string>();
  for (const { path, through } of streams) {
    through.forEach((node, index) => {
      const before = passed.get(node);
      if (before !== undefined)
        faults.push(refuse('study/passed-twice', { node, stream: before }, place([...path, index])));
      else passed.set(node, String(path.at(-2)));
    });
  }

  // A link whose ends are in doubt may be the way that is missing.
  const known = new Set([...nodes, 'ambient']);
  if (links.some(({ ends }) => ends.length !== 2 || ends[0] === ends[1] || !ends.every((end) => known.has(end))))
    return faults;
  const reached = new Set(['ambient', ...passed.keys()]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const { ends } of links) {
      const [a, b] = ends;
      if (ends.length !== 2 || reached.has(a) === reached.has(b)) continue;
      reached.add(a).add(b);
      grown = true;
    }
  }
  for (const node of nodes) {
    if (!reached.has(node)) faults.push(refuse('study/no-way-out', { node }, place(['heat', 'nodes', node], 'key')));
  }
  return faults;
}
