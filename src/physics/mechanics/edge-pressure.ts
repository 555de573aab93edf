/**
 * Highest pressure under a rectangle that is pressed off its centre [Pa].
 *
 * |e| ≤ w/6: p = (F/(w·d))·(1 + 6·|e|/w); beyond: p = 2·F/(3·d·(w/2 − |e|)), with a part of it lifted off
 *
 * F  force [N]
 * w  width of the rectangle along the offset [m]
 * d  its other side [m]
 * e  offset of the force from the centre [m], |e| < w/2
 * Valid for rigid bodies with a thin elastic layer between them that can't pull, and for an offset along one side.
 * Source: theory of rigid footings; K. Terzaghi, R. B. Peck, Soil Mechanics in Engineering Practice (from memory); Roark's Formulas for Stress and Strain, section 12.4 (from memory).
 */
export function highestPressure(force: number, width: number, depth: number, offset: number): number {
  const off = Math.abs(offset);
  if (off <= width / 6) return (force / (width * depth)) * (1 + (6 * off) / width);
  return (2 * force) / (3 * depth * (width / 2 - off));
}

/**
 * Lowest pressure under that rectangle [Pa]: (F/(w·d))·(1 − 6·|e|/w), and 0 where a part has lifted off; symbols, range and source as for the highest.
 */
export function lowestPressure(force: number, width: number, depth: number, offset: number): number {
  return Math.max(0, (force / (width * depth)) * (1 - (6 * Math.abs(offset)) / width));
}

/** Share of that rectangle that still touches [1]: 3·(1/2 − |e|/w), at most 1; symbols, range and source as for the highest pressure. */
export function contactShare(width: number, offset: number): number {
  return Math.min(1, 3 * (1 / 2 - Math.abs(offset) / width));
}
