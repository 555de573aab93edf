import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveDense } from './elimination.test-data.ts';
import { factor, planLu, solve } from './lu.ts';

const seed = 20_261_125;

interface Network {
  readonly size: number;
  readonly rows: number[];
  readonly columns: number[];
  readonly values: Float64Array;
  readonly dense: Float64Array;
}

/** A conductance network: links between nodes, each with a conductance, and a small one to ambient at every node; `flow` carries one way. */
function network(size: number, links: readonly [number, number, number][], ambient: number, flow = 0): Network {
  const dense = new Float64Array(size * size);
  for (let i = 0; i < size; i++) dense[i * size + i] += ambient;
  for (const [a, b, conductance] of links) {
    if (a === b) continue;
    dense[a * size + a] += conductance;
    dense[b * size + b] += conductance + flow * conductance;
    dense[a * size + b] -= conductance;
    dense[b * size + a] -= conductance + flow * conductance;
  }
  const rows: number[] = [];
  const columns: number[] = [];
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      if (dense[i * size + j] !== 0) {
        rows.push(i);
        columns.push(j);
      }
  // Links and flow add nothing to a row's sum: what is left is the way to ambient.
  const values = Float64Array.from(rows, (row, e) => (row === columns[e] ? ambient : dense[row * size + columns[e]]));
  return { size, rows, columns, values, dense };
}

function solved({ size, rows, columns, values }: Network, b: Float64Array): Float64Array {
  const plan = planLu(size, rows, columns);
  expect(factor(plan, values)).toBe(true);
  const x = new Float64Array(size);
  solve(plan, b, x);
  return x;
}

// Two resistors to ambient in series: 1 W into the far end, 2 K/W and 3 K/W, gives 5 K and 3 K (series resistances, worked by hand).
test('a chain of resistances by hand', () => {
  const chain = network(2, [[0, 1, 1 / 2]], 0);
  chain.values[chain.rows.findIndex((row, e) => row === 1 && chain.columns[e] === 1)] += 1 / 3;
  const x = solved(chain, Float64Array.of(1, 0));
  expect(x[0]).toBeCloseTo(5, 13);
  expect(x[1]).toBeCloseTo(3, 13);
});

// By hand: all of the heat passes every link on its way to ambient, so that each rise is a sum of resistances, which adding alone gives to the last digits.
test('a chain keeps its digits with conductances 24 decades apart', () => {
  const conductances = [1e12, 1e-12, 1, 1e12, 1e-6];
  const links = conductances.map((conductance, i): [number, number, number] => [i, i + 1, conductance]);
  const outside = 1e-12;
  const chain = network(6, links, 0);
  chain.values[chain.rows.findIndex((row, e) => row === 5 && chain.columns[e] === 5)] = outside;
  const x = solved(chain, Float64Array.of(1, 0, 0, 0, 0, 0));
  for (let i = 0; i < 6; i++) {
    const expected = conductances.slice(i).reduce((sum, conductance) => sum + 1 / conductance, 1 / outside);
    expect(Math.abs(x[i] / expected - 1)).toBeLessThan(1e-14);
  }
});

describe(`against dense elimination with pivoting (seed ${seed})`, () => {
  const nets = fc.integer({ min: 1, max: 30 }).chain((size) =>
    fc.tuple(
      fc.constant(size),
      fc.array(
        fc.tuple(
          fc.nat(size - 1),
          fc.nat(size - 1),
          fc.double({ min: -6, max: 6, noNaN: true }).map((power) => 10 ** power),
        ),
        { maxLength: 3 * size },
      ),
      fc.constantFrom(0, 0.5, 100),
      fc.constantFrom(1e-12, 1, 1e12),
    ),
  );

  test('random networks, conductances over twelve decades, any scale, with one-way flow', () => {
    fc.assert(
      fc.property(nets, ([size, links, flow, scale]) => {
        const net = network(
          size,
          links.map(([a, b, g]) => [a, b, g * scale]),
          scale,
          flow,
        );
        const b = Float64Array.from({ length: size }, (_, i) => 1 + (i % 3));
        const x = solved(net, b);
        // An M-matrix with positive right-hand sides has a positive solution, and elimination loses no digits to cancellation off the diagonal.
        expect(x.every((value) => value > 0)).toBe(true);
        for (let i = 0; i < size; i++) {
          let residual = b[i];
          let magnitude = Math.abs(b[i]);
          for (let j = 0; j < size; j++) {
            residual -= net.dense[i * size + j] * x[j];
            magnitude += Math.abs(net.dense[i * size + j] * x[j]);
          }
          expect(Math.abs(residual)).toBeLessThan(1e-13 * magnitude);
        }
        const reference = solveDense(net.dense, b, size)!;
        const condition = Math.max(...net.dense) / scale;
        x.forEach((value, i) => {
          expect(Math.abs(value / reference[i] - 1)).toBeLessThan(1e-13 * size * (1 + condition));
        });
      }),
      { seed, numRuns: 300 },
    );
  });
});

test('one plan serves other values and many right-hand sides, in place too', () => {
  const first = network(
    6,
    [
      [0, 1, 2],
      [1, 2, 3],
      [2, 3, 1],
      [3, 4, 5],
      [4, 5, 1],
      [5, 0, 2],
    ],
    0.1,
  );
  const plan = planLu(first.size, first.rows, first.columns);
  for (const scale of [1, 7]) {
    expect(
      factor(
        plan,
        first.values.map((value) => value * scale),
      ),
    ).toBe(true);
    for (let k = 0; k < 6; k++) {
      const b = new Float64Array(6);
      b[k] = 1;
      const reference = solveDense(first.dense, b, 6)!;
      solve(plan, b, b);
      b.forEach((value, i) => {
        expect(value * scale).toBeCloseTo(reference[i], 12);
      });
    }
  }
});

test('a tree fills nothing in: as many updates as entries below the diagonal', () => {
  const links = Array.from({ length: 40 }, (_, i): [number, number, number] => [i + 1, i >> 1, 1]);
  const tree = network(41, links, 0.01);
  const plan = planLu(tree.size, tree.rows, tree.columns);
  expect(plan.work.length).toBe(tree.rows.length);
  expect(plan.updates.length / 3).toBe(40);
});

test('a node tied to nothing has no answer', () => {
  const plan = planLu(2, [0, 1], [0, 1]);
  expect(factor(plan, Float64Array.of(1, 0))).toBe(false);
  for (const pivot of [Number.NaN, Number.POSITIVE_INFINITY, 1e-320])
    expect(factor(plan, Float64Array.of(pivot, 1))).toBe(false);
  // The plan isn't spoilt by what could not be factored.
  expect(factor(plan, Float64Array.of(2, 4))).toBe(true);
  const x = Float64Array.of(1, 1);
  solve(plan, x, x);
  expect([...x]).toEqual([0.5, 0.25]);
});

test('a network without a way to ambient has no answer', () => {
  const floating = network(
    3,
    [
      [0, 1, 1],
      [1, 2, 1],
    ],
    0,
  );
  expect(factor(planLu(3, floating.rows, floating.columns), floating.values)).toBe(false);
});

test('arrays may be longer than the matrix; what is behind stays', () => {
  const chain = network(2, [[0, 1, 1]], 1);
  const both = Float64Array.of(3, 0, 7, 8);
  const plan = planLu(2, chain.rows, chain.columns);
  expect(factor(plan, chain.values)).toBe(true);
  solve(plan, both, both);
  // 2·x − y = 3 and 2·y − x = 0: x = 2, y = 1.
  expect(both[0]).toBeCloseTo(2, 14);
  expect(both[1]).toBeCloseTo(1, 14);
  expect([...both.subarray(2)]).toEqual([7, 8]);
});

// The inverse of an M-matrix has no negative element, so that its largest row sum is the largest solution for ones; no estimate is needed.
// Forward error of a stable elimination: some n·ε·cond (N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., theorem 9.4).
describe(`the error is what the condition number allows (seed ${seed})`, () => {
  const side = 6;
  const nodes = side * side;
  const shapes: Record<string, [number, number][]> = {
    chain: Array.from({ length: nodes - 1 }, (_, i) => [i, i + 1]),
    star: Array.from({ length: nodes - 1 }, (_, i) => [0, i + 1]),
    tree: Array.from({ length: nodes - 1 }, (_, i) => [i >> 1, i + 1]),
    grid: Array.from({ length: nodes }, (_, i) => i).flatMap((i): [number, number][] => [
      ...(i % side < side - 1 ? [[i, i + 1] as [number, number]] : []),
      ...(i + side < nodes ? [[i, i + side] as [number, number]] : []),
    ]),
  };

  test.each(Object.keys(shapes))('%s', (shape) => {
    const links = shapes[shape];
    const conductances = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), {
      minLength: links.length,
      maxLength: links.length,
    });
    fc.assert(
      fc.property(
        conductances,
        fc.integer({ min: -12, max: 12 }),
        fc.constantFrom(0, 0.5, 100),
        (powers, scale, flow) => {
          const net = network(
            nodes,
            links.map(([a, b], e) => [a, b, 10 ** (powers[e] + scale)]),
            10 ** (scale - 1),
            flow,
          );
          const b = Float64Array.from({ length: nodes }, (_, i) => Math.cos(i));
          const x = solved(net, b);
          const reference = solveDense(net.dense, b, nodes)!;
          const most = (values: Float64Array) =>
            values.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);
          const rowSums = Float64Array.from({ length: nodes }, (_, i) =>
            net.dense.subarray(i * nodes, (i + 1) * nodes).reduce((sum, value) => sum + Math.abs(value), 0),
          );
          const condition = most(rowSums) * most(solveDense(net.dense, new Float64Array(nodes).fill(1), nodes)!);
          const error = most(x.map((value, i) => value - reference[i])) / most(reference);
          expect(error / (nodes * Number.EPSILON * condition)).toBeLessThan(1);
        },
      ),
      { seed, numRuns: 60 },
    );
  });
});
