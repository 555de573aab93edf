import { Refusal, refuse } from '../fault/fault.ts';
import { type UndoPlan, undoPlan } from '../steps/undo-plan.ts';
import type { Outcome } from './envelope.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { plural } from './text-table.ts';

export interface UndoCommandOptions {
  readonly step: string;
  readonly to?: string;
}

/** The `undo` verb: how the board is brought from a step back to an earlier one. */
export async function runUndo(studyArgument: string, options: UndoCommandOptions): Promise<Outcome> {
  const { study } = await loadStudy(studyArgument);
  const step = namedStep(study, options.step);
  const known = study.steps.map(({ id }) => id);
  const place = known.indexOf(step);
  if (place === 0) throw new Refusal(refuse('undo/nothing-to-undo', { step }));
  const to = options.to === undefined ? known[0] : namedStep(study, options.to);
  if (known.indexOf(to) >= place)
    throw new Refusal(refuse('undo/not-before', { step, to, known: known.slice(0, place) }));
  const plan = undoPlan(study, step, to);
  return { text: undoText(study.title, plan), json: jsonSafe(plan), exit: 0 };
}

function undoText(title: string, { from, to, changes, points, readings, cautions }: UndoPlan): string {
  const numbered = changes.map(({ step, change, changedAgain }, i) => {
    const again = changedAgain.length > 0 ? `, changed again by ${changedAgain.join(', ')}` : '';
    return [
      `${String(i + 1).padStart(2)}  ${change.undo}`,
      `    from ${step}${again}${change.where ? `; where: ${change.where}` : ''}${change.photo ? `; picture: ${change.photo}` : ''}`,
    ].join('\n');
  });
  const measured = points.map(
    ({ title: point, low, high, expected, before, mistakes }) =>
      `"${point}": ${low.text} to ${high.text} with four wires (expected ${expected.text})${before ? `; now ${before.text}` : ''}${mistakes.every(({ tells }) => tells) ? '' : '; the meter can’t tell every mistake'}`,
  );
  const read = readings.map(
    (reading) =>
      `"${reading.title}" then reads ${reading.ratio.text} of what really flows, now ${reading.now.text}; at its limit ${reading.allowed.text} really are ${reading.real.text}, now ${reading.realNow.text}`,
  );
  return [
    `${title}: back from ${from} to ${to}, ${plural(changes.length, 'change')} to take back`,
    ...(cautions.length > 0 ? [cautions.map((each) => `! ${each}`).join('\n')] : []),
    numbered.join('\n'),
    ...(measured.length > 0
      ? [`Then measure, before power comes back; outside: don't connect it\n${lines(measured)}`]
      : []),
    ...(read.length > 0 ? [`What the firmware reads\n${lines(read)}`] : []),
    `Then check at a small load, and compare full load with the run of ${to}.`,
  ].join('\n\n');
}

const lines = (texts: readonly string[]) => texts.map((text) => `    ${text}`).join('\n');
