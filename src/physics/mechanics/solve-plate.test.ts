import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planPadCurve } from './pad-curve.ts';
import type { Die, Pad, Plate, PlateAtRest, Screw, Stop } from './plate.ts';
import { solvePlate } from './solve-plate.ts';

const SEED = 20_261_125;
const curve = planPadCurve([0.1, 0.2, 0.35, 0.5], [45e3, 110e3, 260e3, 640e3])!;
const firmCurve = planPadCurve([0.1, 0.2, 0.35, 0.5], [90e3, 220e3, 520e3, 1280e3])!;

const screw = (x: number, y: number, force: number, stiffness = 0): Screw => ({ x, y, force, stiffness, height: 2e-3 });
const fourScrews = (force: number) => [-0.02, 0.02].flatMap((x) => [-0.02, 0.02].map((y) => screw(x, y, force)));
const die: Die = { x: 0, y: 0, width: 0.015, depth: 0.012, height: 2e-3, bedding: 1e11 };
const pad = (x: number, y: number, height = 1.3e-3): Pad => ({
  x,
  y,
  width: 0.008,
  depth: 0.006,
  height,
  thickness: 1e-3,
  curve,
});

function plateOf(parts: Partial<Plate>): Plate {
  return { screws: [], pads: [], dies: [], stops: [], ...parts };
}

function rest(plate: Plate): PlateAtRest {
  const result = solvePlate(plate);
  if (result.ending !== 'solved') throw new Error(`${result.ending} after ${result.passes}`);
  return result;
}

const mm = (low: number, high: number) => fc.integer({ min: 100 * low, max: 100 * high }).map((value) => value * 1e-5);
const anyScrew = (x: number, y: number): fc.Arbitrary<Screw> =>
  fc.record({
    x: mm(10, 30).map((value) => x * value),
    y: mm(10, 30).map((value) => y * value),
    force: fc.double({ min: 5, max: 60, noNaN: true }),
    stiffness: fc.constantFrom(0, 2000, 20000),
    height: fc.constant(2e-3),
  });
/** Stops at the corners hold whatever the screws do. */
const anyPlate: fc.Arbitrary<Plate> = fc.record({
  screws: fc.tuple(anyScrew(-1, -1), anyScrew(-1, 1), anyScrew(1, -1), anyScrew(1, 1)),
  pads: fc.array(
    fc.record({
      x: mm(-25, 25),
      y: mm(-25, 25),
      width: mm(1, 12),
      depth: mm(1, 12),
      height: mm(0.6, 1.4),
      thickness: fc.constantFrom(0.5e-3, 1e-3),
      curve: fc.constantFrom(curve, firmCurve),
    }),
    { maxLength: 4 },
  ),
  dies: fc.array(
    fc.record({
      x: mm(-6, 6),
      y: mm(-6, 6),
      width: mm(5, 20),
      depth: mm(5, 20),
      height: mm(1.8, 2.1),
      bedding: fc.constantFrom(1e9, 1e11, 1e13),
    }),
    { maxLength: 2 },
  ),
  stops: fc.constant(
    [-0.03, 0.03].flatMap((x) => [-0.03, 0.03].map((y): Stop => ({ x, y, height: 1.7e-3, stiffness: 1e7 }))),
  ),
});

/** Potential energy by brute force: dies and screws as they are defined, dies on a fine grid, pads by their points. */
function energyAt(plate: Plate, height: number, tiltX: number, tiltY: number): number {
  const at = (x: number, y: number) => height + tiltX * x + tiltY * y;
  let energy = 0;
  for (const { x, y, force, stiffness, height: own } of plate.screws) {
    const rise = at(x, y) - own;
    energy += stiffness === 0 ? force * rise : Math.max(0, force + stiffness * rise) ** 2 / (2 * stiffness);
  }
  for (const { x, y, stiffness, height: own } of plate.stops)
    energy += (stiffness * Math.max(0, own - at(x, y)) ** 2) / 2;
  for (const { x, y, width, depth, height: own, thickness, curve: pressure } of plate.pads) {
    const offset = 0.5 / Math.sqrt(3);
    for (const i of [-offset, offset]) {
      for (const j of [-offset, offset]) {
        const strain = Math.max(0, (own + thickness - at(x + i * width, y + j * depth)) / thickness);
        let work = 0;
        for (let k = 0; k < 400; k++) work += pressure.pressureAt((strain * (k + 0.5)) / 400) * (strain / 400);
        energy += ((width * depth) / 4) * thickness * work;
      }
    }
  }
  for (const { x, y, width, depth, height: own, bedding } of plate.dies) {
    const n = 200;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        sum += Math.max(0, own - at(x + ((i + 0.5) / n - 0.5) * width, y + ((j + 0.5) / n - 0.5) * depth)) ** 2;
      }
    }
    energy += (bedding / 2) * sum * ((width * depth) / (n * n));
  }
  return energy;
}

const properties = { seed: SEED, numRuns: 150 };

describe(`what must hold of every plate (seed ${SEED})`, () => {
  test('it comes to rest, and forces balance', () => {
    fc.assert(
      fc.property(anyPlate, (plate) => {
        const { screwForces, stopForces, pads, dies, residual } = rest(plate);
        const sum = (forces: readonly number[]) => forces.reduce((total, force) => total + force, 0);
        const pull = sum(screwForces);
        const push = sum(stopForces) + sum(pads.map(({ force }) => force)) + sum(dies.map(({ force }) => force));
        expect(Math.abs(push / pull - 1)).toBeLessThan(1e-9);
        expect(residual).toBeLessThan(1e-9);
      }),
      properties,
    );
  });

  test('moments balance, where only dies and stops carry', () => {
    fc.assert(
      fc.property(anyPlate, (given) => {
        const plate = { ...given, pads: [] };
        const { screwForces, stopForces, dies } = rest(plate);
        for (const axis of ['x', 'y'] as const) {
          const moment = (places: readonly { x: number; y: number }[], forces: readonly number[]) =>
            places.reduce((total, place, i) => total + place[axis] * forces[i], 0);
          const pull = moment(plate.screws, screwForces);
          const push =
            moment(plate.stops, stopForces) +
            moment(
              dies,
              dies.map(({ force }) => force),
            );
          expect(Math.abs(push - pull)).toBeLessThan(1e-9 * 240 * 0.06);
        }
      }),
      properties,
    );
  });

  test('any other place has more potential energy', () => {
    fc.assert(
      fc.property(anyPlate, (plate) => {
        const { height, tiltX, tiltY } = rest(plate);
        const least = energyAt(plate, height, tiltX, tiltY);
        for (const sign of [-1, 1]) {
          expect(energyAt(plate, height + sign * 1e-5, tiltX, tiltY)).toBeGreaterThan(least);
          expect(energyAt(plate, height, tiltX + sign * 1e-3, tiltY)).toBeGreaterThan(least);
          expect(energyAt(plate, height, tiltX, tiltY + sign * 1e-3)).toBeGreaterThan(least);
        }
      }),
      { seed: SEED, numRuns: 25 },
    );
  });

  test('where the board lies and how it is turned changes nothing', () => {
    fc.assert(
      fc.property(anyPlate, mm(-200, 200), mm(-200, 200), mm(-5, 5), (plate, dx, dy, dz) => {
        const here = rest(plate);
        const place = <T extends { x: number; y: number; height: number }>(list: readonly T[]) =>
          list.map((each) => ({ ...each, x: dx - each.y, y: dy + each.x, height: each.height + dz }));
        const swap = <T extends { width: number; depth: number }>(list: readonly T[]) =>
          list.map((each) => ({ ...each, width: each.depth, depth: each.width }));
        const there = rest({
          screws: place(plate.screws),
          stops: place(plate.stops),
          pads: swap(place(plate.pads)),
          dies: swap(place(plate.dies)),
        });
        expect(there.tiltX).toBeCloseTo(-here.tiltY, 8);
        expect(there.tiltY).toBeCloseTo(here.tiltX, 8);
        for (const [i, { force }] of there.dies.entries()) expect(force).toBeCloseTo(here.dies[i].force, 6);
        for (const [i, { force }] of there.pads.entries()) expect(force).toBeCloseTo(here.pads[i].force, 6);
      }),
      properties,
    );
  });

  test('stronger screws on equally stiffer supports leave it where it is', () => {
    fc.assert(
      fc.property(anyPlate, (given) => {
        const plate = { ...given, pads: [] };
        const here = rest(plate);
        const there = rest({
          ...plate,
          screws: plate.screws.map((each) => ({ ...each, force: 3 * each.force, stiffness: 3 * each.stiffness })),
          dies: plate.dies.map((each) => ({ ...each, bedding: 3 * each.bedding })),
          stops: plate.stops.map((each) => ({ ...each, stiffness: 3 * each.stiffness })),
        });
        expect(there.height).toBeCloseTo(here.height, 10);
        for (const [i, { force }] of there.dies.entries()) expect(force).toBeCloseTo(3 * here.dies[i].force, 5);
      }),
      properties,
    );
  });

  test('a plate twice as large in every direction has the same strains and pressures under four times the force', () => {
    fc.assert(
      fc.property(anyPlate, (plate) => {
        const grow = <T extends { x: number; y: number; height: number }>(list: readonly T[]) =>
          list.map((each) => ({ ...each, x: 2 * each.x, y: 2 * each.y, height: 2 * each.height }));
        const sides = <T extends { width: number; depth: number }>(list: readonly T[]) =>
          list.map((each) => ({ ...each, width: 2 * each.width, depth: 2 * each.depth }));
        const here = rest(plate);
        const there = rest({
          screws: grow(plate.screws).map((each) => ({ ...each, force: 4 * each.force, stiffness: 2 * each.stiffness })),
          stops: grow(plate.stops).map((each) => ({ ...each, stiffness: 2 * each.stiffness })),
          pads: sides(grow(plate.pads)).map((each) => ({ ...each, thickness: 2 * each.thickness })),
          dies: sides(grow(plate.dies)).map((each) => ({ ...each, bedding: each.bedding / 2 })),
        });
        for (const [i, { strain, largestStrain }] of there.pads.entries()) {
          expect(strain).toBeCloseTo(here.pads[i].strain, 8);
          expect(largestStrain).toBeCloseTo(here.pads[i].largestStrain, 8);
        }
        for (const [i, { meanPressure, highestPressure, contact }] of there.dies.entries()) {
          expect(Math.abs(meanPressure - here.dies[i].meanPressure)).toBeLessThan(1);
          expect(Math.abs(highestPressure - here.dies[i].highestPressure)).toBeLessThan(1e-4 * highestPressure + 1);
          expect(contact).toBeCloseTo(here.dies[i].contact, 5);
        }
      }),
      properties,
    );
  });
});

describe('who carries the force', () => {
  const even = (force: number, padCurve = curve, height = 1.3e-3) =>
    rest(
      plateOf({
        screws: fourScrews(force),
        dies: [die],
        pads: [-0.015, 0.015].flatMap((x) => [-0.012, 0.012].map((y) => ({ ...pad(x, y, height), curve: padCurve }))),
      }),
    );

  test('an even plate stays level; more screw force never presses the die or a pad less', () => {
    let before = even(1);
    for (let force = 2; force < 80; force += 3) {
      const now = even(force);
      expect(Math.abs(now.tiltX) + Math.abs(now.tiltY)).toBeLessThan(1e-9);
      expect(now.dies[0].force).toBeGreaterThanOrEqual(before.dies[0].force);
      expect(now.pads[0].force).toBeGreaterThan(before.pads[0].force);
      before = now;
    }
  });

  test('stiffer pads, or thicker components, take from the die', () => {
    const soft = even(20);
    expect(even(20, firmCurve).dies[0].force).toBeLessThan(soft.dies[0].force);
    expect(even(20, curve, 1.4e-3).dies[0].force).toBeLessThan(soft.dies[0].force);
    expect(even(20, curve, 1.4e-3).pads[0].strain).toBeGreaterThan(soft.pads[0].strain);
  });

  test('pads that are too thick keep the plate off the die, and the gap is named', () => {
    const { dies, pads, height } = even(5, curve, 1.8e-3);
    expect(pads[0].force).toBeCloseTo(5, 8);
    expect(dies[0]).toMatchObject({ force: 0, contact: 0, meanPressure: 0, highestPressure: 0, unevenness: null });
    expect(dies[0].gap).toBeCloseTo(height - 2e-3, 12);
    expect(dies[0].gap).toBeGreaterThan(1e-4);
    expect([dies[0].x, dies[0].y]).toEqual([0, 0]);
  });

  test('a pad that does not reach the plate says how much is missing', () => {
    const { pads } = rest(plateOf({ screws: fourScrews(20), dies: [die], pads: [pad(0.02, 0, 0.9e-3)] }));
    expect(pads[0].force).toBe(0);
    expect(pads[0].compression).toBeLessThan(-0.9e-4);
    expect(pads[0].covered).toBe(true);
  });

  test('a strain beyond the data is marked', () => {
    const { pads } = even(300);
    expect(pads[0].strain).toBeLessThan(0.5);
    expect(pads[0].covered).toBe(true);
    expect(even(300, curve, 1.6e-3).pads[0]).toMatchObject({ covered: false });
  });

  test('one tight screw tilts the plate towards itself and makes the die uneven', () => {
    const [first, ...others] = fourScrews(20);
    const { tiltX, tiltY, dies } = rest(plateOf({ screws: [{ ...first, force: 25 }, ...others], dies: [die] }));
    expect(tiltX).toBeGreaterThan(0);
    expect(tiltY).toBeGreaterThan(0);
    expect(dies[0].x).toBeCloseTo((-0.02 * 5) / 85, 8);
    expect(dies[0].unevenness).toBeGreaterThan(1.5);
    expect(dies[0].highestPressure).toBeGreaterThan(dies[0].meanPressure);
    expect(dies[0].lowestPressure).toBeLessThan(dies[0].meanPressure);
  });
});

describe('by hand', () => {
  const corners = [-1, 1].flatMap((x) => [-1, 1].map((y) => [x, y]));
  const fourStops = (stiffness: number) =>
    corners.map(([x, y]): Stop => ({ x: 0.01 * x, y: 0.01 * y, height: 2e-3, stiffness }));
  const lowest = (box: { x: number; y: number; width: number; depth: number }, { height, tiltX, tiltY }: PlateAtRest) =>
    Math.min(
      ...corners.map(
        ([i, j]) => height + tiltX * (box.x + (i * box.width) / 2) + tiltY * (box.y + (j * box.depth) / 2),
      ),
    );

  // Four springs k at ±a: depth F/(4·k), slopes −F·x/(4·k·a²) and −F·y/(4·k·a²); Newton's method needs one step where all is straight.
  test.each([
    [-3e-3, 0],
    [3e-3, 0],
    [0, -3e-3],
    [0, 3e-3],
    [2e-3, -1e-3],
  ])('a screw at (%d, %d) m on four springs', (x, y) => {
    const { height, tiltX, tiltY, passes } = rest(plateOf({ screws: [screw(x, y, 40)], stops: fourStops(1e7) }));
    expect(height).toBeCloseTo(2e-3 - 1e-6, 12);
    expect(tiltX).toBeCloseTo(-x / 100, 10);
    expect(tiltY).toBeCloseTo(-y / 100, 10);
    expect(passes).toBe(1);
  });

  test.each([
    [4.975e-3, 0, 'solved'],
    [5.025e-3, 0, 'unsupported'],
    [0, -4.975e-3, 'solved'],
    [0, -5.025e-3, 'unsupported'],
    [3.5e-3, 3.5e-3, 'solved'],
    [3.6e-3, 3.6e-3, 'unsupported'],
  ])(
    'a slope of more than 0.2 is no small angle: pulled with 40 N at (%d, %d) m on soft springs, %s',
    (x, y, ending) => {
      expect(solvePlate(plateOf({ screws: [screw(x, y, 40)], stops: fourStops(2500) })).ending).toBe(ending);
    },
  );

  // Three stops carry alike what pulls in the middle of them.
  test('a plate that leaves a high die for three stops beside it', () => {
    const stop = (x: number, y: number, height: number, stiffness: number): Stop => ({ x, y, height, stiffness });
    const high = { ...die, y: -0.003, width: 0.014, depth: 0.013 };
    const found = rest(
      plateOf({
        screws: [screw(0.015, 0.02, 10)],
        dies: [high],
        stops: [stop(0.018, 0.017, 1.91e-3, 1e6), stop(0.016, 0.022, 1.84e-3, 1e6), stop(0.011, 0.021, 1.98e-3, 1e7)],
      }),
    );
    for (const force of found.stopForces) expect(force).toBeCloseTo(10 / 3, 8);
    expect(found.dies[0].force).toBe(0);
    expect(found.dies[0].gap).toBeCloseTo(lowest(high, found) - high.height, 12);
  });

  test('the largest strain of a pad is where the plate stands lowest over it', () => {
    const tilted = rest(plateOf({ screws: [screw(2e-3, -1e-3, 40)], stops: fourStops(1e5), pads: [pad(1e-3, 0)] }));
    const [{ strain, largestStrain }] = tilted.pads;
    expect(largestStrain).toBeCloseTo((2.3e-3 - lowest(pad(1e-3, 0), tilted)) / 1e-3, 10);
    expect(largestStrain - strain).toBeGreaterThan(0.005);
  });

  // At the start the stop is pressed 1 µm and pushes with 5 N; about the centre (3, 4) mm the moments are 15 N·3 mm and 15 N·4 mm, over a size of 5 mm.
  test('what is unbalanced of a plate that only turns about one stop', () => {
    const stops: Stop[] = [{ x: 0, y: 0, height: 2e-3, stiffness: 5e6 }];
    const found = solvePlate(plateOf({ screws: [screw(6e-3, 8e-3, 10)], stops }));
    expect(found).toMatchObject({ ending: 'unsupported', passes: 0 });
    expect(found.residual).toBeCloseTo(12 / 10, 8);
    expect(solvePlate(plateOf({ screws: [screw(0, 0, 10)] })).residual).toBe(1);
  });
});

describe('no place of rest is an answer too', () => {
  const stop = (x: number, y: number): Stop => ({ x, y, height: 2e-3, stiffness: 1e6 });

  test.each([
    ['nothing carries', plateOf({ screws: fourScrews(10) })],
    ['nothing at all', plateOf({})],
    ['pulled beside its only die', plateOf({ screws: [screw(0.02, 0, 10)], dies: [die] })],
    [
      'pulled outside its stops',
      plateOf({ screws: [screw(0.1, 0, 10)], stops: [stop(0, 0), stop(0.01, 0), stop(0, 0.01)] }),
    ],
    ['on a single point', plateOf({ screws: [screw(0, 0, 10)], stops: [stop(0, 0)] })],
    ['on two points, free to roll', plateOf({ screws: [screw(0, 0, 10)], stops: [stop(-0.01, 0), stop(0.01, 0)] })],
    ['pulled by nothing', plateOf({ screws: fourScrews(0), dies: [die] })],
  ])('%s: unsupported', (_, plate) => {
    expect(solvePlate(plate)).toMatchObject({ ending: 'unsupported' });
  });

  test('a screw right at the edge of the die still holds', () => {
    expect(rest(plateOf({ screws: [screw(0.007, 0, 10)], dies: [die] })).dies[0].contact).toBeCloseTo(0.1, 6);
  });

  test('stiffness that is not a number is a mistake of the caller', () => {
    expect(() => solvePlate(plateOf({ screws: fourScrews(10), dies: [{ ...die, bedding: Number.NaN }] }))).toThrow();
  });
});
