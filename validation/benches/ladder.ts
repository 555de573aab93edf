import { type GateVerdict, gate } from '../../src/steps/gate.ts';
import { learn, type MeasuredWindow, type PredictedWindow, predictWindows } from '../../src/steps/learn.ts';
import { assembled, type CampaignBench, makeBench, windowsAt } from './bench.ts';

/** One step of a virtual ladder, as the gate saw it and as it truly was. */
export interface Rung {
  readonly step: string;
  readonly verdict: GateVerdict['verdict'];
  /** Thermocouples that were added because the gate held for want of them. */
  readonly added: readonly string[];
  /** Probability of exceeding any limit, as the gate worked it out; null where it could not. */
  readonly together: number | null;
  /** Least true margin as a share of the limit, of its rise over ambient for a temperature; null without a steady state. */
  readonly room: number | null;
  /** The limit that it belongs to. */
  readonly closest: string;
  readonly reasons: readonly string[];
}

/**
 * Climbs one virtual ladder by obeying the verdicts. At a hold for a temperature that nothing measures a thermocouple is put there, the step is run
 * again, and the gate asked again; any other hold ends the ladder.
 */
export function climb(seed: number, departing: boolean, samples: number): readonly Rung[] {
  let made = makeBench(seed, departing);
  const baseline = windowsAt(made, 0);
  if (!baseline) return [];
  const rungs: Rung[] = [];
  const windows: MeasuredWindow[] = [...baseline];
  let predicted: readonly PredictedWindow[] = [];
  const added: string[] = [];
  for (let k = 1; k < made.study.steps.length; k++) {
    const ask = () => {
      const { study } = made;
      const learnt = learn(study, study.steps[k - 1], windows);
      const evidence = { learnt, standing: study.steps[k - 1].id, predicted };
      return { learnt, answer: gate(study, study.steps[k].id, evidence, { samples, seed: seed + k }) };
    };
    let asked = ask();
    const missing = missingThermocouples(made, asked.answer);
    if (missing.length > 0) {
      added.push(...missing);
      made = makeBench(seed, departing, undefined, added);
      windows.push(...(windowsAt(made, k - 1, `${made.study.steps[k - 1].id}-again`) ?? []));
      asked = ask();
    }
    const { learnt, answer } = asked;
    const truth = trueRoom(made, k);
    rungs.push({
      step: made.study.steps[k].id,
      verdict: answer.verdict,
      added: missing,
      together: answer.together?.probability ?? null,
      ...truth,
      reasons: answer.reasons.map(({ code, data }) =>
        `${code} ${data.limit ?? data.instrument ?? data.input ?? ''}`.trim(),
      ),
    });
    if (answer.verdict !== 'go' || truth.room === null || truth.room < 0) break;
    const measured = windowsAt(made, k);
    if (!measured) break;
    predicted = predictWindows(made.study, made.study.steps[k], learnt, measured);
    windows.push(...measured);
  }
  return rungs;
}

/** Nodes whose temperature holds the gate and that nothing measures. */
function missingThermocouples({ study }: CampaignBench, { verdict, reasons }: GateVerdict): string[] {
  if (verdict !== 'hold') return [];
  const shown = Object.values(study.instruments).map(({ shows }) => shows);
  return reasons.flatMap(({ code, data }) => {
    const held = code === 'gate/too-likely' || code === 'gate/unwatched';
    const node = held ? /^heat\.nodes\.(.+)\.limit$/.exec(String(data.limit))?.[1] : undefined;
    return node === undefined || shown.includes(`heat.nodes.${node}.temperature`) ? [] : [node];
  });
}

/** Least margin of the virtual board's true steady state at a step. */
function trueRoom({ study, bench }: CampaignBench, k: number): { room: number | null; closest: string } {
  const step = study.steps[k];
  const truth = bench.truth(step);
  if (!truth) return { room: null, closest: 'no steady state' };
  const board = assembled(step);
  const x = Float64Array.from(board.inputs, ({ id, value }) => bench.hidden.get(id) ?? value);
  const y = Float64Array.from(board.outputs, ({ id }) => truth.get(id) ?? Number.NaN);
  board.evaluate(x, new Float64Array(y.length));
  const ambient = truth.get('heat.nodes.ambient.temperature')!;
  let least = { room: Number.POSITIVE_INFINITY, closest: '' };
  for (const limit of board.limits) {
    const value = y[limit.valueOutput];
    const threshold = limit.thresholdBeside(y);
    const zero = board.outputs[limit.valueOutput].kind === 'temperature' ? ambient : 0;
    const room = (limit.side === 'under' ? threshold - value : value - threshold) / (threshold - zero);
    if (!Number.isFinite(room)) throw new Error(`no true value for ${limit.id}`);
    if (room < least.room) least = { room, closest: limit.id };
  }
  return least;
}
