/** Where a path of a board leads, by the titles on the way: `sense resistor of the core, R2`, and the keys behind the last title. */
export function placeOnBoard(
  board: unknown,
  path: string,
): { readonly title: string; readonly rest: readonly string[] } {
  let at: unknown = board;
  const titles: string[] = [];
  let rest: string[] = [];
  for (const key of path.split('.')) {
    at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined;
    rest.push(key);
    const title = typeof at === 'object' && at !== null && 'title' in at ? at.title : undefined;
    if (typeof title !== 'string') continue;
    titles.push(title);
    rest = [];
  }
  return { title: titles.join(', '), rest };
}
