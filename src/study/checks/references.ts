import { type Fault, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';
import type { CheckInput } from './check.ts';

/** Every name that refers to a part, a sense point or a heat node refers to one that exists. */
export function checkReferences({ outline, place }: CheckInput): Fault[] {
  const { parts, nodes, references } = outline;
  const known = {
    part: parts.map((part) => part.name),
    sense: parts.filter((part) => part.kind === 'sense').map((part) => part.name),
    node: [...nodes, 'ambient'],
  };
  return references.flatMap(({ path, name, to }) => {
    // A limiter's node and an air node are places with a temperature of their own.
    const names =
      path[0] === 'limiters' || path.at(-2) === 'through' ? known[to].filter((node) => node !== 'ambient') : known[to];
    if (names.includes(name)) return [];
    const isPart = to === 'sense' && known.part.includes(name) ? 1 : 0;
    const field = path.join('.');
    return [
      refuse('study/unknown-name', { name, to, field, nearest: nearest(name, names), names, isPart }, place(path)),
    ];
  });
}
