import { assembleBoard } from '../board/assemble.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Step, Study } from '../study/study.ts';
import { type Caution, cautions } from './cautions.ts';
import { figure } from './figure.ts';
import { limiterRatio } from './low-load.ts';
import { stepOf } from './plan.ts';
import { type SenseCheck, senseCheck, sensePointsAt } from './sense-check.ts';
import type { Figure } from './step-plan.ts';
import { type UndoWay, undoWay } from './undo.ts';
import { isCooling, isElectrical } from './work.ts';

/** What a limiter reads after the way back, and before it. */
export interface ReadingBack {
  readonly limiter: string;
  readonly title: string;
  /** Reading over real power. */
  readonly ratio: Figure;
  readonly now: Figure;
  readonly allowed: Figure;
  /** Real power at the operating point. */
  readonly real: Figure;
  readonly realNow: Figure;
}

/** The way from one step back to an earlier one, and what must be seen at its end. */
export interface UndoPlan extends UndoWay {
  readonly points: readonly SenseCheck[];
  readonly readings: readonly ReadingBack[];
  readonly cautions: readonly string[];
}

/** The whole plan of a way back. `to` comes before `from`. */
export function undoPlan(study: Study, from: string, to: string): UndoPlan {
  const way = undoWay(study, from, to);
  const [now, then] = [from, to].map((id) => stepOf(study, id));
  const works = way.changes.map(({ change }) => change.work);
  const paths = way.changes.filter(({ change }) => isElectrical(change.work)).map(({ change }) => change.at);
  const warns: Caution[] = [
    ...(way.byHand ? (['mains', 'battery', 'charge', 'data'] as const) : []),
    ...(works.some(isElectrical) ? (['fumes', 'short'] as const) : []),
    ...(works.some(isCooling) ? (['hot'] as const) : []),
    'watch',
  ];
  return {
    ...way,
    points: sensePointsAt(paths, then, 'resistance').flatMap((id) => senseCheck(id, then, now) ?? []),
    readings: readingsBack(now, then, new Set(sensePointsAt(paths, then, 'reading'))),
    cautions: warns.map((caution) => cautions[caution]),
  };
}

/** So many draws know a standard uncertainty to a hundredth. */
const SAMPLES = 4096;

/** Limiters that read a sense point that is changed back; none where one of the two boards has no operating point. */
function readingsBack(now: Step, then: Step, touched: ReadonlySet<string>): ReadingBack[] {
  const [before, after] = [now, then].map((step) => {
    const assembly = assembleBoard(step);
    if (!assembly.ok) return null;
    const { board } = assembly;
    const sens = sensitivities(board);
    if (sens.ending !== 'solved') return null;
    const outputs = Object.keys(step.board.limiters)
      .map((id) => `limiters.${id}.real`)
      .filter((id) => board.indexOfOutput(id) >= 0);
    // Draws, because another limiter may hold in some of them.
    return { board, sens, run: monteCarlo(board, { samples: SAMPLES, seed: 1, outputs }) };
  });
  if (!before || !after) return [];
  return Object.entries(then.board.limiters).flatMap(([id, limiter]) => {
    if (!('reads' in limiter) || !limiter.reads.some(({ sense }) => touched.has(sense))) return [];
    if (before.board.indexOfOutput(`limiters.${id}.real`) < 0) return [];
    const realOf = ({ board, sens, run }: typeof after) => {
      const output = `limiters.${id}.real`;
      return figure(sens.y0[board.indexOfOutput(output)], run.outputs.get(output)!.u, 'power', 'W');
    };
    const ratioOf = (operating: typeof after) => {
      const { ratio, uRatio } = limiterRatio(operating, id);
      return figure(ratio, uRatio, 'ratio', '');
    };
    return [
      {
        limiter: id,
        title: limiter.title ?? id,
        ratio: ratioOf(after),
        now: ratioOf(before),
        allowed: figure(limiter.allowed.value, null, 'power', 'W'),
        real: realOf(after),
        realNow: realOf(before),
      },
    ];
  });
}
