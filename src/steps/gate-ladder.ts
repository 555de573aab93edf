import { type Fault, refuse, sayFault } from '../fault/fault.ts';
import type { Study } from '../study/study.ts';
import { type GateEvidence, type GateOptions, type GateVerdict, gate } from './gate.ts';
import { gatherEvidence } from './gate-evidence.ts';
import type { MeasuredWindow } from './learn.ts';
import { stepOf } from './plan.ts';

/** Everything that is on record about a study's ladder. */
export interface LadderRecord {
  /** Windows of all runs whose step is known, each with its step. */
  readonly windows: readonly MeasuredWindow[];
  /** Why nothing could be learnt from what there is. */
  readonly trouble?: readonly Fault[];
  /** Whether the check at a small load is ticked, by step; a step that isn't there has no list. */
  readonly lowLoadChecked?: ReadonlyMap<string, boolean>;
}

export interface LadderVerdict extends GateVerdict {
  readonly evidence: GateEvidence;
}

/**
 * The gate before a step of a ladder, from everything on record: each step below must have a go of its own, from what was measured before it.
 * The lowest one without a go holds all above it.
 */
export function gateOnLadder(study: Study, stepId: string, record: LadderRecord, options: GateOptions): LadderVerdict {
  const place = study.steps.indexOf(stepOf(study, stepId));
  const asked = gateAt(study, stepId, record, options);
  if (record.windows.length === 0) return asked;
  for (const { id } of study.steps.slice(1, Math.max(1, place))) {
    const { verdict, reasons } = gateAt(study, id, record, options);
    if (verdict === 'go') continue;
    const [first] = reasons;
    const held = refuse('gate/no-go-before', { step: stepId, before: id, reason: sayFault(first).found });
    return asked.verdict === 'back'
      ? { ...asked, reasons: [...asked.reasons, held] }
      : { ...asked, verdict: 'hold', reasons: [held, ...asked.reasons] };
  }
  return asked;
}

function gateAt(study: Study, stepId: string, record: LadderRecord, options: GateOptions): LadderVerdict {
  const gathered = gatherEvidence(study, stepId, record.windows);
  const evidence: GateEvidence = {
    ...gathered,
    ...(gathered.learnt === null && { trouble: [...(record.trouble ?? []), ...(gathered.trouble ?? [])] }),
    lowLoadChecked: record.lowLoadChecked?.get(gathered.standing),
  };
  return { ...gate(study, stepId, evidence, options), evidence };
}
