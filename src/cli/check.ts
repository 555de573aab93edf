import { type Fault, Refusal, sayFault, writeFault } from '../fault/fault.ts';
import { planStep } from '../steps/plan.ts';
import { placeOf } from '../study/locate.ts';
import type { Study } from '../study/study.ts';
import { isMisuse } from './door.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';

/** The `check` verb: every fault of a study, its open ratings, its numbers without uncertainty, and one line that sums up. */
export async function runCheck(studyArgument: string): Promise<Outcome> {
  try {
    const { study, text, path } = await loadStudy(studyArgument);
    // Each step is put together and solved once: an unknown output or a thermal runaway shows only there.
    const faults = study.steps.flatMap((step, index) =>
      planStep(study, step.id, { samples: 0, seed: 1 }).faults.map((fault) => placed(fault, index, text, path)),
    );
    return tell(path, once(faults), study);
  } catch (error) {
    if (error instanceof Refusal && !isMisuse(error)) return tell(studyArgument, error.faults);
    throw error;
  }
}

/** Points at the limit a fault of the board speaks of, or else at its step. */
function placed(fault: Fault, step: number, text: string, path: string): Fault {
  const field = fault.data.limit === undefined ? `steps.${step}.id` : `limits.${fault.data.limit}.of`;
  return { ...fault, place: fault.place ?? placeOf(text, path, field) };
}

/** A later step has the same fault again. */
function once(faults: readonly Fault[]): Fault[] {
  return [
    ...new Map(faults.map((fault) => [`${fault.code} ${fault.place?.line} ${fault.place?.column}`, fault])).values(),
  ];
}

function tell(path: string, faults: readonly Fault[], study?: Study): Outcome {
  const remarks = study?.remarks ?? [];
  const open = remarks.filter(({ severity }) => severity === 'open');
  const warnings = remarks.filter(({ severity }) => severity === 'warning');
  const unsure = warnings.filter(({ code }) => code === 'study/no-uncertainty');
  const others = warnings.filter(({ code }) => code !== 'study/no-uncertainty');
  const sections = [
    ...faults.map(writeFault),
    ...others.map(writeFault),
    section('open: ratings without data (unknown is not safe)', open),
    section('numbers without an uncertainty', unsure),
    summary(path, faults, open, unsure, study),
  ].filter((part) => part !== '');
  const json = {
    faults: faults.map(spoken),
    open: open.map(spoken),
    warnings: warnings.map(spoken),
    steps: study?.steps.map(({ id }) => id) ?? [],
  };
  return { text: sections.join('\n\n'), json, exit: faults.length > 0 ? 1 : 0 };
}

function section(heading: string, remarks: readonly Fault[]): string {
  if (remarks.length === 0) return '';
  return [`${heading}:`, ...remarks.map((remark) => `  line ${remark.place?.line}: ${sayFault(remark).found}`)].join(
    '\n',
  );
}

function summary(
  path: string,
  faults: readonly Fault[],
  open: readonly Fault[],
  unsure: readonly Fault[],
  study?: Study,
): string {
  const counts = [`${count(faults.length, 'fault')}`];
  if (study)
    counts.push(
      count(study.steps.length, 'step'),
      count(open.length, 'open rating'),
      `${count(unsure.length, 'number')} without uncertainty`,
    );
  return `${path}: ${counts.join(', ')}`;
}

function count(many: number, what: string): string {
  return `${many === 0 ? 'no' : many} ${what}${many === 1 ? '' : 's'}`;
}

function spoken(fault: Fault) {
  const { found, expected = null, remedy = null } = sayFault(fault);
  const { code, severity, data, place = null } = fault;
  return { code, severity, data, place, found, expected, remedy };
}
