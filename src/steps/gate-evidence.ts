import { assembleBoard } from '../board/assemble.ts';
import { Refusal } from '../fault/fault.ts';
import { budget } from '../metrology/budget.ts';
import { startValues } from '../metrology/evaluate.ts';
import { withPosterior } from '../metrology/posterior.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import type { GateEvidence } from './gate.ts';
import { readInstrument } from './instrument.ts';
import { type Learnt, learn, type MeasuredWindow, type PredictedWindow, predictWindows } from './learn.ts';
import { stepOf } from './plan.ts';
import { atPresentAmbient } from './present-ambient.ts';

/**
 * What was measured below a step, as the evidence of its gate: everything learnt from it, and what the runs of the steps before the standing one
 * would have predicted for the standing one. Learnt is only from the runs that the study names under `learning.from`; the others are there to agree.
 */
export function gatherEvidence(study: Study, stepId: string, windows: readonly MeasuredWindow[]): GateEvidence {
  const place = study.steps.indexOf(stepOf(study, stepId));
  const standing = study.steps[Math.max(0, place - 1)];
  const stepAt = ({ step = study.steps[0].id }: MeasuredWindow) => study.steps.findIndex(({ id }) => id === step);
  const below = windows.filter((window) => stepAt(window) < place);
  const here = below.filter((window) => stepAt(window) === place - 1);
  const now = learnFrom(study, standing, below);
  const earlier = below.filter((window) => stepAt(window) < place - 1);
  const { learnt: before } = learnFrom(study, standing, earlier);
  const known = before?.fit.ending === 'converged' ? before : null;
  const power = predictPower(study, standing, known, here);
  const readings = known ? predictWindows(study, standing, known, here).filter(({ settled }) => settled) : [];
  return {
    ...now,
    standing: standing.id,
    windows: below,
    predicted: power ? [power, ...readings] : readings,
  };
}

/** What windows teach; null with the reason where none of them has settled. */
function learnFrom(
  study: Study,
  step: Step,
  windows: readonly MeasuredWindow[],
): Pick<GateEvidence, 'learnt' | 'trouble'> {
  const taught = windows.filter(({ run }) => study.learning?.from.includes(run));
  if (taught.length === 0) return { learnt: null };
  try {
    return { learnt: learn(study, step, taught) };
  } catch (error) {
    // Recordings that never came to rest are a reason to hold; a study that can't be understood is none of the gate's.
    if (!(error instanceof Refusal && error.faults.every(({ code }) => code === 'fit/nothing-settled'))) throw error;
    return { learnt: null, trouble: error.faults };
  }
}

/**
 * The power that a step was predicted to take at full load, beside the greatest steady power that was measured there. Null without such a window or
 * without a solution.
 */
function predictPower(
  study: Study,
  step: Step,
  before: Learnt | null,
  windows: readonly MeasuredWindow[],
): PredictedWindow | null {
  const id = study.learning?.['power-channel'] ?? '';
  const entry = study.instruments[id];
  const assembly = assembleBoard(step);
  if (!entry || !assembly.ok) return null;
  const { board } = assembly;
  const instrument = readInstrument(board, id, entry);
  const steady = windows.filter(({ channels }) => channels[instrument.channel]?.settled);
  const [window] = steady.toSorted((a, b) => b.channels[entry.channel].mean - a.channels[entry.channel].mean);
  if (!window) return null;
  const model = before ? withPosterior(atPresentAmbient(board, study, before), before.fit) : board;
  const sens = sensitivities(model, startValues(model));
  const predicted = sens.y0[board.indexOfOutput(instrument.shows)];
  const u = budget(model, instrument.shows, sens, before?.fit.joint)?.u;
  if (u === undefined || !Number.isFinite(predicted)) return null;
  const { mean, u: noise, settled, why } = window.channels[instrument.channel];
  const combined = Math.hypot(u, noise, instrument.u, instrument.repeatability);
  const written = (value: number, uncertainty: number) => figure(value, uncertainty, 'power', 'W');
  return {
    run: window.run,
    window: window.title,
    instrument: id,
    power: written(mean, noise),
    predicted: written(predicted, u),
    measured: written(mean, noise),
    difference: written(mean - predicted, combined),
    size: (mean - predicted) / combined,
    settled,
    why,
  };
}
