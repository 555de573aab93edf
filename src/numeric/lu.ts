/**
 * Where a network's matrix has entries, and in which order it is eliminated. Made once; the values change. Several matrices of the same
 * pattern can be worked on together, one a lane: every number then stands as `lanes` numbers in a row.
 */
export interface LuPlan {
  readonly size: number;
  readonly lanes: number;
  /** Place in the working array of each given entry. */
  readonly place: Int32Array;
  /** Working array: the entries of L and U, fill included. */
  readonly work: Float64Array;
  /** Row and column orders: position k holds the original index. */
  readonly order: Int32Array;
  /** Place of each row's sum, which stands where the diagonal would. */
  readonly diagonal: Int32Array;
  /** Divisions by the pivot: for each pivot, the places of the entries below it. `lowerStart[k]..lowerStart[k+1]` */
  readonly lowerStart: Int32Array;
  readonly lowerPlace: Int32Array;
  readonly lowerRow: Int32Array;
  /** Entries right of each pivot, in the same ranges: the pattern is symmetric. */
  readonly upperPlace: Int32Array;
  readonly upperColumn: Int32Array;
  /** Updates target -= left · right, grouped by pivot: `updateStart[k]..updateStart[k+1]`, three places each. */
  readonly updateStart: Int32Array;
  readonly updates: Int32Array;
  readonly inversePivot: Float64Array;
  readonly rhs: Float64Array;
  /** 1 for a lane whose last factors can be used. */
  readonly regular: Uint8Array;
}

/**
 * Plans the LU factors of a sparse M-matrix given by the rows and columns of its entries (each pair once, the whole diagonal present). The value that
 * belongs to a diagonal entry is the sum of its row, for a network of conductances what leads to ambient: a diagonal is then worked out by adding, nothing
 * is lost to cancellation, and every unknown keeps its digits however far apart the conductances are. No pivoting is needed.
 * Order: minimum degree on the symmetric closure of the pattern.
 * Source: A. George and J. W. H. Liu, "The evolution of the minimum degree ordering algorithm", SIAM Review 31 (1989) 1–19;
 * M-matrices without pivoting: R. E. Funderlic and R. J. Plemmons, Linear Algebra Appl. 41 (1981) 99–110;
 * with row sums: W. K. Grassmann, M. I. Taksar, D. P. Heyman, Oper. Res. 33 (1985) 1107–1116; A. S. Alfa, J. Xue, Q. Ye, Math. Comp. 71 (2002) 217–236.
 */
export function planLu(size: number, rows: ArrayLike<number>, columns: ArrayLike<number>, lanes = 1): LuPlan {
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (let e = 0; e < rows.length; e++) {
    if (rows[e] === columns[e]) continue;
    neighbours[rows[e]].add(columns[e]);
    neighbours[columns[e]].add(rows[e]);
  }
  const order = new Int32Array(size);
  const position = new Int32Array(size).fill(-1);
  const later: number[][] = [];
  for (let k = 0; k < size; k++) {
    let best = -1;
    for (let i = 0; i < size; i++)
      if (position[i] < 0 && (best < 0 || neighbours[i].size < neighbours[best].size)) best = i;
    order[k] = best;
    position[best] = k;
    const around = [...neighbours[best]];
    later.push(around);
    for (const a of around) {
      neighbours[a].delete(best);
      for (const b of around) if (b !== a) neighbours[a].add(b);
    }
  }
  const places = new Map<number, number>();
  const placeOf = (row: number, column: number): number => {
    const key = row * size + column;
    if (!places.has(key)) places.set(key, places.size);
    return places.get(key)!;
  };
  const diagonal = Int32Array.from({ length: size }, (_, k) => placeOf(k, k));
  const lowerStart = new Int32Array(size + 1);
  const lowerPlace: number[] = [];
  const lowerRow: number[] = [];
  const upperPlace: number[] = [];
  const upperColumn: number[] = [];
  const updateStart = new Int32Array(size + 1);
  const updates: number[] = [];
  for (let k = 0; k < size; k++) {
    const rest = later[k].map((i) => position[i]).sort((a, b) => a - b);
    for (const i of rest) {
      lowerPlace.push(placeOf(i, k));
      lowerRow.push(i);
      upperPlace.push(placeOf(k, i));
      upperColumn.push(i);
    }
    for (const i of rest)
      for (const j of rest) updates.push(placeOf(i, j), placeOf(i, k), i === j ? placeOf(k, k) : placeOf(k, j));
    lowerStart[k + 1] = lowerPlace.length;
    updateStart[k + 1] = updates.length;
  }
  const place = Int32Array.from(rows, (row, e) => placeOf(position[row], position[columns[e]]));
  return {
    size,
    lanes,
    place,
    work: new Float64Array(places.size * lanes),
    order,
    diagonal,
    lowerStart,
    lowerPlace: Int32Array.from(lowerPlace),
    lowerRow: Int32Array.from(lowerRow),
    upperPlace: Int32Array.from(upperPlace),
    upperColumn: Int32Array.from(upperColumn),
    updateStart,
    updates: Int32Array.from(updates),
    inversePivot: new Float64Array(size * lanes),
    rhs: new Float64Array(size * lanes),
    regular: new Uint8Array(lanes),
  };
}

/**
 * Factors the matrices of some lanes with these values (off the diagonal none above zero; row sums on it), in the order the entries were planned.
 * False: in some lane a pivot is zero, not a number or beyond a double's reach; `regular` says in which.
 */
export function factor(plan: LuPlan, values: Float64Array, from = 0, to = plan.lanes): boolean {
  const { size, lanes, place, work, diagonal, lowerStart, lowerPlace, upperPlace, updateStart, updates } = plan;
  const { inversePivot, regular } = plan;
  for (let w = 0; w < work.length; w += lanes) for (let s = from; s < to; s++) work[w + s] = 0;
  for (let e = 0; e < place.length; e++) {
    const w = place[e] * lanes;
    const v = e * lanes;
    for (let s = from; s < to; s++) work[w + s] += values[v + s];
  }
  for (let s = from; s < to; s++) regular[s] = 1;
  let all = true;
  for (let k = 0; k < size; k++) {
    const pivot = k * lanes;
    const d = diagonal[k] * lanes;
    for (let s = from; s < to; s++) inversePivot[pivot + s] = work[d + s];
    for (let u = lowerStart[k]; u < lowerStart[k + 1]; u++) {
      const w = upperPlace[u] * lanes;
      for (let s = from; s < to; s++) inversePivot[pivot + s] -= work[w + s];
    }
    for (let s = from; s < to; s++) {
      const inverse = 1 / inversePivot[pivot + s];
      inversePivot[pivot + s] = inverse;
      if (!(Math.abs(inverse) > 0 && Math.abs(inverse) < Infinity)) {
        regular[s] = 0;
        all = false;
      }
    }
    for (let l = lowerStart[k]; l < lowerStart[k + 1]; l++) {
      const w = lowerPlace[l] * lanes;
      for (let s = from; s < to; s++) work[w + s] *= inversePivot[pivot + s];
    }
    for (let u = updateStart[k]; u < updateStart[k + 1]; u += 3) {
      const target = updates[u] * lanes;
      const left = updates[u + 1] * lanes;
      const right = updates[u + 2] * lanes;
      for (let s = from; s < to; s++) work[target + s] -= work[left + s] * work[right + s];
    }
  }
  return all;
}

/**
 * Solves for one right-hand side in each of some lanes with the factors at hand; only the first `size` rows of `b` and `x` are used.
 * They may be the same array.
 */
export function solve(plan: LuPlan, b: Float64Array, x: Float64Array, from = 0, to = plan.lanes): void {
  const { size, lanes, order, work, lowerStart, lowerPlace, lowerRow, upperPlace, upperColumn, inversePivot, rhs } =
    plan;
  for (let k = 0; k < size; k++) {
    const row = k * lanes;
    const given = order[k] * lanes;
    for (let s = from; s < to; s++) rhs[row + s] = b[given + s];
  }
  for (let k = 0; k < size; k++) {
    const row = k * lanes;
    for (let l = lowerStart[k]; l < lowerStart[k + 1]; l++) {
      const w = lowerPlace[l] * lanes;
      const below = lowerRow[l] * lanes;
      for (let s = from; s < to; s++) rhs[below + s] -= work[w + s] * rhs[row + s];
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    const row = k * lanes;
    for (let u = lowerStart[k]; u < lowerStart[k + 1]; u++) {
      const w = upperPlace[u] * lanes;
      const right = upperColumn[u] * lanes;
      for (let s = from; s < to; s++) rhs[row + s] -= work[w + s] * rhs[right + s];
    }
    const wanted = order[k] * lanes;
    for (let s = from; s < to; s++) {
      rhs[row + s] *= inversePivot[row + s];
      x[wanted + s] = rhs[row + s];
    }
  }
}
