/** A rectangle with its sides along x and y: centre and sides [m]. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
}

/** Integrals over the part of a rectangle where a plane lies above zero; g is the plane's height there. */
export interface Contact {
  /** ∫ g, ∫ g·x, ∫ g·y. */
  readonly g: Float64Array;
  /** ∫ 1, ∫ x, ∫ y, ∫ x², ∫ x·y, ∫ y². */
  readonly area: Float64Array;
}

// A rectangle cut by one line has at most five corners: x, y and g of each.
const corners = new Float64Array(4 * 3);
const cut = new Float64Array(5 * 3);

/**
 * Integrals over the part of a rectangle where the plane g = a + b·x + c·y is above zero, exact.
 *
 * The rectangle is cut along g = 0 and what remains is split into triangles; over a triangle of area A with values u, v at its corners
 * ∫ u = (A/3)·Σu, ∫ u·v = (A/12)·(Σ uᵢ·vᵢ + Σu·Σv).
 *
 * Source: I. E. Sutherland, G. W. Hodgman, Commun. ACM 17 (1974) 32–42, for the cut; the integrals are those of linear finite elements.
 */
export function touch(rectangle: Rectangle, a: number, b: number, c: number, contact: Contact): void {
  const { g, area } = contact;
  g.fill(0);
  area.fill(0);
  for (let i = 0; i < 4; i++) {
    const x = rectangle.x + (i === 0 || i === 3 ? -0.5 : 0.5) * rectangle.width;
    const y = rectangle.y + (i < 2 ? -0.5 : 0.5) * rectangle.depth;
    setCorner(corners, i, x, y, a + b * x + c * y);
  }
  const count = cutBelow();
  for (let i = 2; i < count; i++) addTriangle(3 * (i - 1), 3 * i, g, area);
}

/** Keeps what is above zero, in `cut`; the number of its corners. */
function cutBelow(): number {
  let count = 0;
  for (let i = 0; i < 4; i++) {
    const from = 3 * i;
    const to = 3 * ((i + 1) % 4);
    const here = corners[from + 2];
    const next = corners[to + 2];
    if (here > 0) setCorner(cut, count++, corners[from], corners[from + 1], here);
    if (here > 0 !== next > 0) {
      const t = here / (here - next);
      const x = corners[from] + t * (corners[to] - corners[from]);
      setCorner(cut, count++, x, corners[from + 1] + t * (corners[to + 1] - corners[from + 1]), 0);
    }
  }
  return count;
}

function setCorner(list: Float64Array, index: number, x: number, y: number, g: number): void {
  list[3 * index] = x;
  list[3 * index + 1] = y;
  list[3 * index + 2] = g;
}

function addTriangle(q: number, r: number, g: Float64Array, area: Float64Array): void {
  const [x1, y1, g1] = cut;
  const x2 = cut[q];
  const y2 = cut[q + 1];
  const g2 = cut[q + 2];
  const x3 = cut[r];
  const y3 = cut[r + 1];
  const g3 = cut[r + 2];
  const size = ((x2 - x1) * (y3 - y1) - (x3 - x1) * (y2 - y1)) / 2;
  const x = x1 + x2 + x3;
  const y = y1 + y2 + y3;
  const sum = g1 + g2 + g3;
  g[0] += (size / 3) * sum;
  g[1] += (size / 12) * (g1 * x1 + g2 * x2 + g3 * x3 + sum * x);
  g[2] += (size / 12) * (g1 * y1 + g2 * y2 + g3 * y3 + sum * y);
  area[0] += size;
  area[1] += (size / 3) * x;
  area[2] += (size / 3) * y;
  area[3] += (size / 12) * (x1 * x1 + x2 * x2 + x3 * x3 + x * x);
  area[4] += (size / 12) * (x1 * y1 + x2 * y2 + x3 * y3 + x * y);
  area[5] += (size / 12) * (y1 * y1 + y2 * y2 + y3 * y3 + y * y);
}
