import { assembleBoard } from '../board/assemble.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Study } from '../study/study.ts';
import { changesOf } from './changes-of.ts';
import { expectedReadings } from './expected-readings.ts';
import { lowLoad } from './low-load.ts';
import { planStep, stepOf } from './plan.ts';
import type { ProcedureBasis, ProcedureItem } from './procedure-item.ts';
import { procedureItems } from './procedure-items.ts';
import { senseCheck, sensePointsAt } from './sense-check.ts';
import type { StepPlan } from './step-plan.ts';
import { isByHand, isElectrical } from './work.ts';

/** What is done to climb one step, and what must then be seen. */
export interface Procedure extends ProcedureBasis {
  readonly items: readonly ProcedureItem[];
}

export interface ProcedureOptions {
  /** True power of the check at a low load [W]; 15 % of what the step lets through, when left out. */
  readonly lowPower?: number;
  /** Last digit of what the firmware shows [W]; 0.1 W when left out (common practice, no source). */
  readonly resolution?: number;
}

/** So many draws know a standard uncertainty to a hundredth. */
const SAMPLES = 4096;

/**
 * The checklist of a step, made from its changes and from the board solved at it. Throws a Refusal for a step that changes nothing (the first one), and for
 * one without an operating point: nobody should build that.
 */
export function procedureOf(study: Study, stepId: string, options: ProcedureOptions = {}): Procedure {
  const step = stepOf(study, stepId);
  const place = study.steps.indexOf(step);
  if (place === 0 || step.changes.length === 0)
    throw new Refusal(refuse('procedure/nothing-to-do', { step: stepId, first: place === 0 ? 1 : 0 }));
  const before = study.steps[place - 1];
  const plan = planStep(study, stepId, { samples: 0, seed: 1 });
  if (plan.faults.length > 0) throw new Refusal(plan.faults);
  const changes = changesOf(step, before);
  const byHand = changes.filter(({ work }) => isByHand(work)).map(({ at }) => at);
  const assembly = assembleBoard(step);
  if (!assembly.ok) throw new Refusal(assembly.faults);
  const { board } = assembly;
  const shown = [...new Set(Object.values(study.instruments).map(({ shows }) => shows))];
  const run = monteCarlo(board, { samples: SAMPLES, seed: 1, outputs: shown });
  const made = {
    study: study.title,
    step: stepId,
    title: step.title,
    about: step.about,
    before: before.id,
    changes,
    points: sensePointsAt(byHand, step, 'resistance').flatMap((id) => senseCheck(id, step, before) ?? []),
    low: lowLoad(study, step, before, {
      power: options.lowPower,
      resolution: options.resolution ?? 0.1,
      changed: new Set(sensePointsAt(byHand, step, 'reading')),
    }),
    full: expectedReadings(study, board, sensitivities(board), run),
    unwatched: unwatched(study, plan),
    open: plan.open.map(({ title }) => title),
  };
  const work = {
    byHand: byHand.length > 0,
    electrical: changes.some((change) => isElectrical(change.work)),
  };
  return { ...made, items: procedureItems(made, work) };
}

/** Limits less than three standard uncertainties away whose quantity no instrument shows. */
function unwatched(study: Study, { margins }: StepPlan): string[] {
  const shown = new Set(Object.values(study.instruments).map(({ shows }) => shows));
  return margins.flatMap(({ title, of, margin, u }) => {
    const isNear = !(margin.value > 3 * u.value);
    const isShown = shown.has(of) || shown.has(of.replace(/\.reads$/, '.real'));
    return isNear && !isShown ? [`${title}: ${margin.text} away`] : [];
  });
}
