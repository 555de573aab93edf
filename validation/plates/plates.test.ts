import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planPadCurve } from '../../src/physics/mechanics/pad-curve.ts';
import type { Die, Pad, Plate, Screw, Stop } from '../../src/physics/mechanics/plate.ts';
import { solvePlate } from '../../src/physics/mechanics/solve-plate.ts';

// Source: solve.py beside this file, which shares no code with src/: SciPy minimises the potential energy of invented plates.
interface Reference {
  readonly made: { readonly command: string; readonly largestResidual: number };
  readonly curves: readonly { readonly strains: number[]; readonly pressures: number[] }[];
  readonly cases: readonly Case[];
}

interface Case {
  readonly plate: {
    readonly screws: readonly Screw[];
    readonly pads: readonly (Omit<Pad, 'curve'> & { readonly curve: number })[];
    readonly dies: readonly Die[];
    readonly stops: readonly Stop[];
  };
  readonly place: readonly [height: number, tiltX: number, tiltY: number];
  readonly forces: Readonly<Record<'pads' | 'dies' | 'screws' | 'stops', readonly number[]>>;
}

const reference = JSON.parse(readFileSync(new URL('reference.json', import.meta.url), 'utf8')) as Reference;
const curves = reference.curves.map(({ strains, pressures }) => planPadCurve(strains, pressures)!);

function plateOf({ plate }: Case): Plate {
  return { ...plate, pads: plate.pads.map((pad) => ({ ...pad, curve: curves[pad.curve] })) };
}

const solved = reference.cases.map((given) => {
  const result = solvePlate(plateOf(given));
  if (result.ending !== 'solved') throw new Error(`${result.ending} after ${result.passes}: ${JSON.stringify(given)}`);
  const ours = [
    ...result.pads.map(({ force }) => force),
    ...result.dies.map(({ force }) => force),
    ...result.screwForces,
    ...result.stopForces,
  ];
  const { pads, dies, screws, stops } = given.forces;
  return { given, result, ours, theirs: [...pads, ...dies, ...screws, ...stops], pull: sum(screws) };
});

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

test('the references are sharp, and cover every way to rest', () => {
  expect(reference.made.largestResidual).toBeLessThan(1e-10);
  expect(solved).toHaveLength(200);
  const dies = solved.flatMap(({ result }) => result.dies);
  expect(dies.filter(({ contact }) => contact === 0).length).toBeGreaterThan(10);
  expect(dies.filter(({ contact }) => contact > 0 && contact < 1).length).toBeGreaterThan(30);
  expect(dies.filter(({ contact }) => contact === 1).length).toBeGreaterThan(20);
  const pads = solved.flatMap(({ result }) => result.pads);
  expect(pads.filter(({ compression }) => compression < 0).length).toBeGreaterThan(30);
  expect(pads.filter(({ covered }) => !covered).length).toBeGreaterThan(3);
  expect(solved.flatMap(({ result }) => result.stopForces).filter((force) => force > 0).length).toBeGreaterThan(30);
});

test('every force on 200 plates is that of least energy, to a millionth of the pull', () => {
  const worst = solved.map(({ ours, theirs, pull }) =>
    Math.max(...ours.map((force, i) => Math.abs(force - theirs[i]) / pull)),
  );
  expect(Math.max(...worst)).toBeLessThan(1e-6);
});

test('their heights agree to a nanometre, at the middle and 3 cm away', () => {
  const worst = solved.map(({ given: { place }, result: { height, tiltX, tiltY } }) =>
    Math.max(Math.abs(height - place[0]), 0.03 * Math.abs(tiltX - place[1]), 0.03 * Math.abs(tiltY - place[2])),
  );
  expect(Math.max(...worst)).toBeLessThan(1e-9);
});

test('no plate takes more than 30 steps', () => {
  expect(Math.max(...solved.map(({ result }) => result.passes))).toBeLessThan(30);
});
