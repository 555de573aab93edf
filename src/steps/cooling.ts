import { assembleBoard, type BoardDial, type BoardModel } from '../board/assemble.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Board } from '../study/schema/study.ts';
import type { Step, Study } from '../study/study.ts';
import { beside, PRESENT } from './beside.ts';
import { type Stack, stackOf, stackOfStep } from './cooling-stack.ts';
import { figure } from './figure.ts';
import { boardDial, stepOf } from './plan.ts';
import type { Figure } from './step-plan.ts';
import { withoutChanges } from './without-change.ts';

/** What kind of change to the heat path it is. */
export type CoolingKind =
  | 'interface material'
  | 'pads'
  | 'plate force'
  | 'plate'
  | 'plating'
  | 'airflow'
  | 'heat way'
  | 'ambient'
  | 'heat path';

/** How a node's temperature differs with and without a change, at the same power. */
export interface Gain {
  readonly node: string;
  readonly title: string;
  readonly without: Figure;
  readonly with: Figure;
  /** Without less with: positive where the change cools. */
  readonly gain: Figure;
}

/** One change of the cooling, and what it buys. */
export interface CoolingChange {
  /** Paths that were changed: one, or all of a step's together. */
  readonly paths: readonly string[];
  readonly kind: CoolingKind;
  /** `alone`: this one left out, the others kept; `together`: none of them made. */
  readonly compared: 'alone' | 'together';
  /** Largest gain first; empty when `untold` says why. */
  readonly gains: readonly Gain[];
  /** Why nothing can be said: other changes build on it, or there is no operating point without it (or with it) at this power. */
  readonly untold: null | 'built-on' | 'no-solution';
}

/** The cooling of one step: its stack, that of the step before, and what each change buys. */
export interface CoolingStep {
  readonly id: string;
  readonly title: string;
  readonly stack: Stack | null;
  /** The stack of the step before along the same way, at this step's power. */
  readonly before: Stack | null;
  /** Power at which the changes are compared, and the limiter where it flows; null: at the same scale of the processor. */
  readonly power: { readonly limiter: string; readonly real: Figure } | null;
  readonly changes: readonly CoolingChange[];
}

/** Looks at the cooling of a step. `start`: where the stack begins; the hottest node when left out. */
export function coolingOf(study: Study, stepId: string, start?: string): CoolingStep {
  const step = stepOf(study, stepId);
  const before = study.steps[study.steps.indexOf(step) - 1];
  const stack = stackOfStep(step, start);
  const heading = { id: step.id, title: step.title, stack };
  const paths = step.changed.filter((path) => ['heat', 'plate'].includes(path.split('.')[0]));
  const held = stack && heldPower(step);
  if (!held || !before || paths.length === 0) return { ...heading, before: null, power: null, changes: [] };
  const full = dialled(step, held);
  const compare = (changed: readonly string[], compared: CoolingChange['compared']): CoolingChange => {
    const kinds = [...new Set(changed.map((path) => kindOf(path, step.board)))];
    const what = { paths: changed, kind: kinds.length === 1 ? kinds[0] : 'heat path', compared } as const;
    const other = withoutChanges(step, before, changed);
    if (!other) return { ...what, gains: [], untold: 'built-on' };
    const board = full && dialled(other, held);
    const gains = board && gainsBetween(full, board);
    return gains ? { ...what, gains, untold: null } : { ...what, gains: [], untold: 'no-solution' };
  };
  const earlier = withoutChanges(step, before, paths);
  const earlierBoard = earlier && dialled(earlier, held);
  return {
    ...heading,
    before: earlierBoard ? stackOf(earlierBoard, stack.path.start) : null,
    power: held.power,
    changes: [
      ...paths.map((path) => compare([path], 'alone')),
      ...(paths.length > 1 ? [compare(paths, 'together')] : []),
    ],
  };
}

/** What is kept the same when a change is left out. */
interface Held {
  readonly dial: BoardDial | null;
  readonly scale: number;
  readonly power: CoolingStep['power'];
}

/** The real power at the limiter that regulates by reading power, or else the processor's scale. */
function heldPower(step: Step): Held | null {
  const assembly = assembleBoard(step);
  if (!assembly.ok) return null;
  const { board } = assembly;
  const { y, status } = evaluateAt(board, startValues(board));
  if (status.ending !== 'solved') return null;
  const scale = y[board.indexOfOutput('scale')];
  const limiter = board.limiters.find(({ acts, kind }) => acts === 'regulate' && kind === 'power');
  if (!limiter) return { dial: null, scale, power: null };
  const real = y[limiter.realOutput];
  return {
    dial: boardDial({ limiter: limiter.id, realPower: real }),
    scale,
    power: { limiter: limiter.id, real: figure(real, null, 'power', 'W') },
  };
}

/** A step at the held power: nothing else regulates, so that a hotter board doesn't give way. */
function dialled(step: Step, { dial, scale }: Held): BoardModel | null {
  const limiters = Object.fromEntries(
    Object.entries(step.board.limiters).map(([id, limiter]) => [
      id,
      limiter.acts === 'regulate' && id !== dial?.limiter ? ({ ...limiter, acts: 'warn' } as const) : limiter,
    ]),
  );
  // Room enough above the held power: a demand that was just met would end the comparison a hair below it.
  const value = dial ? 4 * scale : scale;
  const demand = { ...step.board.demand, scale: { ...step.board.demand.scale, value, spread: null } };
  const quantities = new Map([...step.quantities].filter(([quantity]) => quantity !== step.board.demand.scale));
  quantities.set(demand.scale, step.quantities.get(step.board.demand.scale)!);
  const board: Board = { ...step.board, demand, limiters };
  const assembly = assembleBoard({ ...step, board, quantities }, dial ?? undefined);
  if (!assembly.ok) return null;
  return evaluateAt(assembly.board, startValues(assembly.board)).status.ending === 'solved' ? assembly.board : null;
}

/** Gains of the nodes that both boards have; null where beside the best values one of them has no solution. */
function gainsBetween(full: BoardModel, other: BoardModel): readonly Gain[] | null {
  const model = beside(full, other, []);
  const sens = sensitivities(model);
  if (sens.start !== 'solved') return null;
  const nodes = full.step.board.heat.nodes;
  const place = (id: string) => model.outputs.findIndex((output) => output.id === id);
  const gains = Object.keys(nodes).flatMap((node): Gain[] => {
    const id = `heat.nodes.${node}.temperature`;
    const [a, b] = [place(id), place(`${PRESENT}${id}`)];
    if (b < 0) return [];
    const u = (difference: (i: number) => number) =>
      sens.ending === 'solved' ? Math.sqrt(sens.u.reduce((sum, own, i) => sum + (difference(i) * own) ** 2, 0)) : null;
    return [
      {
        node,
        title: nodes[node].title ?? node,
        without: figure(
          sens.y0[b],
          u((i) => sens.c[b][i]),
          'temperature',
          '°C',
        ),
        with: figure(
          sens.y0[a],
          u((i) => sens.c[a][i]),
          'temperature',
          '°C',
        ),
        gain: figure(
          sens.y0[b] - sens.y0[a],
          u((i) => sens.c[b][i] - sens.c[a][i]),
          'temperature-difference',
          'K',
        ),
      },
    ];
  });
  return gains.sort((a, b) => Math.abs(b.gain.value) - Math.abs(a.gain.value));
}

/** What kind of change one at this path is. `board`: after it. */
export function kindOf(path: string, { heat }: Pick<Board, 'heat'>): CoolingKind {
  const [section, group, name, , index, ...inner] = path.split('.');
  if (section === 'plate') {
    if (group === 'pads') return 'pads';
    return group === 'screws' ? 'plate force' : 'plate';
  }
  if (group === 'streams') return 'airflow';
  if (group === 'ambient') return 'ambient';
  if (index === undefined) return group === 'nodes' || group === 'links' ? 'heat way' : 'heat path';
  if (inner.includes('surfaces')) return 'plating';
  if (inner.at(-1) === 'pressure') return 'plate force';
  const element = heat.links[name]?.through[Number(index)];
  if (!element) return 'heat path';
  if ('layer' in element) return element.layer.material === 'pad' ? 'pads' : 'heat path';
  return 'bond-line' in element || 'contact' in element ? 'interface material' : 'heat path';
}
