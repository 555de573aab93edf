/** An interval without a lower end has no number for programs, and its text says why; anything else that is no number stays and is refused. */
export function jsonSafe(value: unknown): unknown {
  if (value === Number.NEGATIVE_INFINITY || value === Number.POSITIVE_INFINITY) return null;
  if (Array.isArray(value)) return value.map(jsonSafe);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, jsonSafe(inner)]));
}
