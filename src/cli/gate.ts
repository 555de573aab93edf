import { type Fault, Refusal, refuse, sayFault, writeFault } from '../fault/fault.ts';
import { listRuns } from '../runs/read-run.ts';
import { adviseGate } from '../steps/gate-advice.ts';
import { gateOnLadder, type LadderRecord } from '../steps/gate-ladder.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { windowsOfRun } from './fit.ts';
import { describeGate } from './gate-text.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';

export interface GateCommandOptions {
  readonly samples?: number;
  readonly seed?: number;
  /** Day to which the age of calibrations is counted. */
  readonly today: string;
}

const defaultSamples = 20_000;

/** The `gate` verb: go, hold or back before a step, with every reason and what would change it. Leaves with 0 for go only. */
export async function runGate(studyArgument: string, wanted: string, options: GateCommandOptions): Promise<Outcome> {
  const { study, folder } = await loadStudy(studyArgument);
  const step = namedStep(study, wanted);
  const [first, ...above] = study.steps.map(({ id }) => id);
  if (step === first) throw new Refusal(refuse('gate/first-step', { step, known: above }));
  const { samples = defaultSamples, seed = 1, today } = options;
  const { notes, ...record } = await recordOf(study, folder);
  const verdict = gateOnLadder(study, step, record, { samples, seed, today });
  const { evidence } = verdict;
  const advice = adviseGate(study, step, verdict, evidence.learnt);
  const told = [...notes, ...verdict.notes];
  const runs = new Set((evidence.windows ?? []).map(({ run }) => run));
  const json = {
    step,
    standing: evidence.standing,
    verdict: verdict.verdict,
    reasons: verdict.reasons.map((fault) => ({
      ...spoken(fault),
      advice: advice.get(String(fault.data.limit)) ?? null,
    })),
    together: verdict.together,
    limits: [...verdict.limits].map(([id, limit]) => ({ id, ...limit })),
    samples,
    seed,
    today,
    runs: [...runs],
    learntFrom: evidence.learnt?.used ?? [],
    predicted: evidence.predicted,
    remarks: told.map(spoken),
  };
  return {
    text: describeGate({ study, step, verdict, advice, samples, seed, runs: [...runs] }),
    json: jsonSafe(json),
    exit: verdict.verdict === 'go' ? 0 : 1,
    notes: told.map(writeFault),
  };
}

function spoken(fault: Fault) {
  const { found, expected = null, remedy = null } = sayFault(fault);
  return { code: fault.code, data: fault.data, found, expected, remedy };
}

/** Every recording whose step the study names, and what to know about the others. */
async function recordOf(study: Study, folder: string): Promise<LadderRecord & { readonly notes: readonly Fault[] }> {
  const runs = (await listRuns(folder)).map(({ id }) => id);
  if (!study.learning) {
    const trouble = runs.length > 0 ? [refuse('gate/no-learning', { runs: runs.length })] : [];
    return { windows: [], trouble, notes: [] };
  }
  const { from, at = {} } = study.learning;
  const named = new Set([...from, ...Object.keys(at)]);
  const read = runs.filter((run) => named.has(run));
  const windows = (await Promise.all(read.map((run) => windowsOfRun(study, folder, run)))).flat();
  const notes = [
    ...[...named].filter((run) => !runs.includes(run)).map((run) => remark('gate/run-not-there', run)),
    ...runs.filter((run) => !named.has(run)).map((run) => remark('gate/run-unnamed', run)),
  ];
  return { windows, notes };
}

function remark(code: 'gate/run-not-there' | 'gate/run-unnamed', run: string): Fault {
  return { code, severity: 'warning', data: { run } };
}
