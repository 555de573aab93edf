import { plateFault } from '../board/plate/plate-fault.ts';
import { assemblePlate } from '../board/plate/plate-model.ts';
import type { PlateEnding } from '../board/plate/plate-on-board.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { budget } from '../metrology/budget.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { margins as marginsOf } from '../metrology/margin.ts';
import { type MonteCarlo, monteCarlo } from '../metrology/monte-carlo.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { writeMargin } from './margin-figures.ts';
import { stepOf } from './plan.ts';
import type { Figure, Margin, OpenLimit } from './step-plan.ts';

/** A place in the plane of the board [m]. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Centre and sides [m]. */
export interface Field extends Spot {
  readonly width: number;
  readonly depth: number;
}

/** How likely something is, counted from draws. */
export interface Chance {
  readonly probability: number;
  /** 95 % bounds from the number of draws. */
  readonly low: number;
  readonly high: number;
  readonly text: string;
}

export interface PointForce {
  readonly id: string;
  readonly title: string;
  readonly spot: Spot;
  readonly force: Figure;
}

export interface PadState {
  readonly id: string;
  readonly title: string;
  readonly field: Field;
  /** Negative: the gap that is left. */
  readonly compression: Figure;
  readonly strain: Figure;
  readonly largestStrain: Figure;
  readonly force: Figure;
  readonly pressure: Figure;
  /** Part of the whole pull that it carries [1]. */
  readonly carries: number;
  readonly noContact: Chance | null;
  /** How the pad fares, in a word; `beyond-curve` before the others where its data end. */
  readonly state: 'no-contact' | 'loose' | 'usual' | 'strong' | 'beyond-curve';
}

export interface DieState {
  readonly id: string;
  readonly title: string;
  readonly field: Field;
  readonly force: Figure;
  readonly meanPressure: Figure;
  readonly highestPressure: Figure;
  readonly lowestPressure: Figure;
  /** Share of its area that is touched. */
  readonly contact: Figure;
  readonly gap: Figure;
  readonly carries: number;
  /** Where the force acts [m]. */
  readonly centre: Spot;
  /** Pressure at its centre, and its growth along x and y [Pa, Pa/m]; below zero the plate doesn't touch. */
  readonly pressure: { readonly centre: number; readonly alongX: number; readonly alongY: number };
  readonly touches: boolean;
  /** The plate doesn't touch it at all. */
  readonly noContact: Chance | null;
  /** A part of it isn't touched. */
  readonly partContact: Chance | null;
}

/** Who carries the force of a cooler's screws at one step. */
export interface PlateBalance {
  readonly id: string;
  readonly title: string;
  /** Changes of this step that touch the plate. */
  readonly changed: readonly string[];
  readonly ending: PlateEnding;
  readonly pull: Figure | null;
  readonly height: Figure | null;
  readonly tiltX: Figure | null;
  readonly tiltY: Figure | null;
  readonly screws: readonly PointForce[];
  readonly pads: readonly PadState[];
  readonly dies: readonly DieState[];
  readonly stops: readonly PointForce[];
  readonly margins: readonly Margin[];
  readonly open: readonly OpenLimit[];
  /** Remaining unbalanced force over the pull, and steps of the iteration. */
  readonly solution: { readonly residual: number; readonly passes: number } | null;
  readonly sampling: { readonly samples: number; readonly seed: number; readonly failed: number } | null;
  readonly faults: readonly Fault[];
}

export interface BalanceOptions {
  /** 0 or 1: first order only, without chances. */
  readonly samples: number;
  readonly seed: number;
  readonly progress?: (done: number, total: number) => void;
}

/** Strains between which a gap pad is used (a pad maker's selection guide, as in physics/mechanics/pad.ts). */
const USUAL = { least: 0.2, most: 0.45 };
/** Less than this is no force at all [N]. */
const NO_FORCE = 1e-9;

/** The balance of a step's plate; null for a board without a plate. */
export function balancePlate(study: Study, stepId: string, options: BalanceOptions): PlateBalance | null {
  const step = stepOf(study, stepId);
  const model = assemblePlate(step);
  if (!model) return null;
  const nominal = evaluateAt(model, startValues(model));
  const heading = {
    id: step.id,
    title: step.title,
    changed: step.changed.filter((path) => path.split('.')[0] === 'plate'),
    ending: model.plate.ending,
  };
  const { rest, ending } = model.plate;
  if (!rest || ending !== 'solved') {
    const faults = ending === 'solved' ? [] : [refuse(plateFault(ending), { step: step.id })];
    const none = { pull: null, height: null, tiltX: null, tiltY: null, solution: null, sampling: null };
    return { ...heading, ...none, screws: [], pads: [], dies: [], stops: [], margins: [], open: [], faults };
  }
  const sens = sensitivities(model);
  const { samples, seed, progress } = options;
  const run = samples >= 2 ? monteCarlo(model, { samples, seed, progress }) : undefined;
  const u = (id: string) => run?.outputs.get(id)?.u ?? budget(model, id, sens)?.u ?? null;
  const of = (id: string): Figure => {
    const index = model.outputs.findIndex((output) => output.id === id);
    const { kind, unit } = model.outputs[index];
    return figure(nominal.y[index], u(id), kind, unit);
  };
  const { screws, pads = {}, dies = {}, stops = {} } = step.board.plate!;
  const pull = rest.screwForces.reduce((sum, force) => sum + force, 0);
  const carries = (force: number) => (pull > 0 ? force / pull : 0);
  const points = (kind: 'screws' | 'stops', parts: typeof screws | typeof stops): PointForce[] =>
    Object.entries(parts).map(([id, part]) => ({
      id,
      title: part.title ?? id,
      spot: { x: part.x.value, y: part.y.value },
      force: of(`plate.${kind}.${id}.force`),
    }));
  return {
    ...heading,
    pull: of('plate.pull'),
    height: of('plate.height'),
    tiltX: of('plate.tilt-x'),
    tiltY: of('plate.tilt-y'),
    screws: points('screws', screws),
    pads: Object.entries(pads).map(([id, pad], index): PadState => {
      const { strain, largestStrain, force, covered } = rest.pads[index];
      const at = `plate.pads.${id}`;
      return {
        id,
        title: pad.title ?? id,
        field: fieldOf(pad),
        compression: of(`${at}.compression`),
        strain: of(`${at}.strain`),
        largestStrain: of(`${at}.largest-strain`),
        force: of(`${at}.force`),
        pressure: of(`${at}.pressure`),
        carries: carries(force),
        noContact: chanceBelow(run, `${at}.force`, NO_FORCE),
        state: stateOf(strain, largestStrain, force, covered),
      };
    }),
    dies: Object.entries(dies).map(([id, die], index): DieState => {
      const { force, x, y, highestPressure } = rest.dies[index];
      const bedding = die.layer.modulus.value / die.layer.thickness.value;
      const [alongX, alongY] = [-bedding * rest.tiltX, -bedding * rest.tiltY];
      const toCorner = (Math.abs(alongX) * die.width.value + Math.abs(alongY) * die.depth.value) / 2;
      const at = `plate.dies.${id}`;
      return {
        id,
        title: die.title ?? id,
        field: fieldOf(die),
        force: of(`${at}.force`),
        meanPressure: of(`${at}.mean-pressure`),
        highestPressure: of(`${at}.highest-pressure`),
        lowestPressure: of(`${at}.lowest-pressure`),
        // Its ends are walls: an uncertainty would say that more than all of it may touch. The chances say how sure it is.
        contact: figure(rest.dies[index].contact, null, 'ratio', '%'),
        gap: of(`${at}.gap`),
        carries: carries(force),
        centre: { x, y },
        pressure: { centre: highestPressure - toCorner, alongX, alongY },
        touches: force > NO_FORCE,
        noContact: chanceBelow(run, `${at}.force`, NO_FORCE),
        partContact: chanceBelow(run, `${at}.contact`, 1 - 1e-9),
      };
    }),
    stops: points('stops', stops),
    margins: (marginsOf(model, sens, run) ?? []).map((margin) => writeMargin(model, margin, u)),
    open: model.open.map(({ id, title, of: held }) => ({ id, title, of: held, value: of(held), field: id })),
    solution: { residual: rest.residual, passes: rest.passes },
    sampling: run ? { samples: run.samples, seed, failed: run.samples - run.endings.solved } : null,
    faults: [],
  };
}

function fieldOf({ x, y, width, depth }: Record<'x' | 'y' | 'width' | 'depth', { readonly value: number }>): Field {
  return { x: x.value, y: y.value, width: width.value, depth: depth.value };
}

function stateOf(strain: number, largest: number, force: number, covered: boolean): PadState['state'] {
  if (force <= NO_FORCE) return 'no-contact';
  if (!covered) return 'beyond-curve';
  if (strain < USUAL.least) return 'loose';
  return largest > USUAL.most ? 'strong' : 'usual';
}

function chanceBelow(run: MonteCarlo | undefined, id: string, threshold: number): Chance | null {
  const sample = run?.outputs.get(id);
  if (!sample) return null;
  const { probability, low, high } = sample.below(threshold);
  const percent = (share: number) =>
    share > 0.995 ? `${(100 * share).toFixed(1)} %` : `${(100 * share).toPrecision(2)} %`;
  return { probability, low, high, text: probability === 0 ? `< ${percent(high)}` : percent(probability) };
}
