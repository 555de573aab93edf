import type { Input } from '../metrology/model.ts';
import type { Grouping } from './step-plan.ts';

/** The group an input of a board belongs to. */
export function groupOf(by: Grouping, { id, source }: Pick<Input, 'id' | 'source'>): string {
  return by === 'part' ? partOf(id) : kindOfSource(source);
}

/** What an input describes: "parts.adapter", "heat.links.die-plate", "limiters.package-limit"; all of the demand is one. */
function partOf(id: string): string {
  const path = id.split('.');
  if (path[0] === 'demand') return 'demand';
  const depth = path[0] === 'heat' && path.length > 3 ? 3 : 2;
  return path.slice(0, depth).join('.');
}

/** Where a number comes from, without the details: any data sheet is a data sheet. A source in other words stands for itself. */
function kindOfSource(source: string): string {
  const words = source.toLowerCase();
  const kind = ['data sheet', 'measured', 'estimated', 'fitted'].find((each) => words.includes(each));
  return kind ?? (source || 'not said');
}
