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
import { loadTicks } from './procedure-store.ts';

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
  const { notes, ...record } = await recordOf(study, folder, step);
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

type NotedRecord = LadderRecord & { readonly notes: readonly Fault[] };

/** Every recording below a step, and what to know about those whose step the study doesn't name. */
async function recordOf(study: Study, folder: string, stepId: string): Promise<NotedRecord> {
  const runs = (await listRuns(folder)).map(({ id }) => id);
  const lowLoadChecked = await lowLoadChecks(study, folder);
  if (!study.learning) {
    const trouble = runs.length > 0 ? [refuse('gate/no-learning', { runs: runs.length })] : [];
    return { windows: [], trouble, lowLoadChecked, notes: [] };
  }
  const { from, at = {} } = study.learning;
  const named = new Set([...from, ...Object.keys(at)]);
  const order = study.steps.map(({ id }) => id);
  const isBelow = (run: string) => order.indexOf(at[run] ?? order[0]) < order.indexOf(stepId);
  const read = runs.filter((run) => named.has(run) && isBelow(run));
  const windows = (await Promise.all(read.map((run) => windowsOfRun(study, folder, run)))).flat();
  const notes = [
    ...[...named].filter((run) => !runs.includes(run) && isBelow(run)).map((run) => remark('gate/run-not-there', run)),
    ...runs.filter((run) => !named.has(run)).map((run) => remark('gate/run-unnamed', run)),
  ];
  return { windows, lowLoadChecked, notes };
}

/** Whether the check at a small load is ticked in the procedure of each step that changes something. */
async function lowLoadChecks(study: Study, folder: string): Promise<Map<string, boolean>> {
  const changing = study.steps.filter(({ changes }) => changes.length > 0);
  return new Map(
    await Promise.all(
      changing.map(async ({ id }): Promise<[string, boolean]> => {
        const { ticks } = await loadTicks(folder, id);
        return [id, ticks.has('low-load')];
      }),
    ),
  );
}

function remark(code: 'gate/run-not-there' | 'gate/run-unnamed', run: string): Fault {
  return { code, severity: 'warning', data: { run } };
}
