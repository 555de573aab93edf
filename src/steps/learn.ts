import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { budget } from '../metrology/budget.ts';
import { startValues } from '../metrology/evaluate.ts';
import { type Fit, type FitProblem, fit as fitInputs, type Observation } from '../metrology/fit.ts';
import type { Limits } from '../metrology/limits.ts';
import type { Input, Model } from '../metrology/model.ts';
import { withPosterior } from '../metrology/posterior.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { type Instrument, readInstrument } from './instrument.ts';
import { measuredBoard } from './measured-board.ts';
import type { Figure } from './step-plan.ts';

/** What was measured in one window of a run: mean of each channel with its uncertainty, SI. */
export interface MeasuredWindow {
  readonly run: string;
  readonly id: string;
  /** "idle", "load 697 W" */
  readonly title: string;
  /** Step of the ladder it was recorded at; left out: the step that is asked about. */
  readonly step?: string;
  /** By column of the recording. */
  readonly channels: Readonly<Record<string, MeasuredValue>>;
}

export interface MeasuredValue {
  readonly mean: number;
  readonly u: number;
  readonly settled: boolean;
  /** Why it counts as settled or not, with its numbers. */
  readonly why: string;
}

/** One instrument in one window: what the learnt board predicts beside what was measured. */
export interface PredictedWindow {
  readonly run: string;
  readonly window: string;
  readonly instrument: string;
  readonly power: Figure;
  readonly predicted: Figure;
  readonly measured: Figure;
  readonly difference: Figure;
  /** Difference in units of the combined standard uncertainty [1]. */
  readonly size: number;
  readonly settled: boolean;
  readonly why: string;
}

export interface Learnt {
  readonly problem: FitProblem;
  readonly fit: Fit;
  readonly used: readonly string[];
  readonly leftOut: readonly { readonly window: string; readonly instrument: string; readonly why: string }[];
}

/**
 * Learns the study's inputs from settled windows, of one run or of several at several steps: each window belongs to the board of its own step,
 * and what the steps have in common is the same number. Throws a Refusal when the study doesn't say how, or nothing has settled.
 */
export function learn(
  study: Study,
  step: Step,
  windows: readonly MeasuredWindow[],
  options: { readonly robust?: boolean } = {},
): Learnt {
  const benchOf = benches(study, step);
  const several = new Set(windows.map(({ run }) => run)).size > 1;
  const observations: Observation[] = [];
  const leftOut: { window: string; instrument: string; why: string }[] = [];
  const inputs = new Map<string, Input>();
  for (const window of windows) {
    const name = `${window.run} ${window.id}`;
    const bench = benchOf(window);
    const power = window.channels[bench.powerInstrument.channel];
    if (!power) continue;
    const model = bench.model(window, several ? bench.drift(window.run) : null);
    let used = false;
    for (const instrument of bench.others) {
      const measured = window.channels[instrument.channel];
      if (!measured) continue;
      if (!measured.settled || !power.settled) {
        leftOut.push({ window: name, instrument: instrument.id, why: measured.settled ? power.why : measured.why });
        continue;
      }
      observations.push({
        id: `${name}: ${instrument.id}`,
        model,
        output: instrument.id,
        value: measured.mean,
        u: Math.hypot(measured.u, instrument.repeatability),
      });
      used = true;
    }
    if (used) for (const input of model.inputs) inputs.set(input.id, bench.stated(input));
  }
  if (observations.length === 0)
    throw new Refusal(refuse('fit/nothing-settled', { runs: [...new Set(windows.map(({ run }) => run))] }));
  const all = [...inputs.values()];
  const problem = { inputs: all, observations, limits: physicalLimits(all), robust: options.robust };
  return { problem, fit: fitInputs(problem), used: observations.map(({ id }) => id), leftOut };
}

/** What the learnt board predicts for every instrument in windows that it hasn't seen, beside what was measured. */
export function predictWindows(
  study: Study,
  step: Step,
  learnt: Learnt,
  windows: readonly MeasuredWindow[],
): PredictedWindow[] {
  const benchOf = benches(study, step);
  const { from = [] } = study.learning ?? {};
  return windows.flatMap((window) => {
    const bench = benchOf(window);
    const power = window.channels[bench.powerInstrument.channel];
    if (!power) return [];
    // A single run that was learnt from set the ambient itself.
    const drift = from.length === 1 && from[0] === window.run ? null : bench.drift(window.run);
    const model = withPosterior(bench.model(window, drift), learnt.fit);
    const sens = sensitivities(model, startValues(model));
    return bench.others.flatMap((instrument): PredictedWindow[] => {
      const measured = window.channels[instrument.channel];
      if (!measured) return [];
      const place = model.outputs.findIndex(({ id }) => id === instrument.id);
      const { kind, unit } = model.outputs[place];
      const predicted = sens.y0[place];
      const u = budget(model, instrument.id, sens, learnt.fit.joint)?.u ?? Number.NaN;
      const difference = measured.mean - predicted;
      const combined = Math.hypot(u, measured.u, instrument.repeatability);
      const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
      return [
        {
          run: window.run,
          window: window.title,
          instrument: instrument.id,
          power: figure(power.mean, power.u, 'power', 'W'),
          predicted: figure(predicted, u, kind, unit),
          measured: figure(measured.mean, measured.u, kind, unit),
          difference: figure(difference, combined, differenceKind, kind === 'temperature' ? 'K' : unit),
          size: difference / combined,
          settled: measured.settled && power.settled,
          why: measured.settled ? power.why : measured.why,
        },
      ];
    });
  });
}

/** What no board can have: a resistance, a length or a conductance below zero. */
function physicalLimits(inputs: readonly Input[]): Record<string, Limits> {
  const never = inputs.filter(({ kind, value }) => neverNegative.has(kind) && value >= 0);
  return Object.fromEntries(never.map(({ id }) => [id, { low: 0 }]));
}

const neverNegative: ReadonlySet<KindName> = new Set([
  'resistance',
  'thermal-resistance',
  'thermal-conductance',
  'thermal-conductivity',
  'area-thermal-resistance',
  'film-coefficient',
  'length',
  'area',
  'frequency',
  'inductance',
  'capacitance',
  'volume-flow',
]);

/** The bench of a window's step, each made once. */
function benches(study: Study, step: Step): (window: MeasuredWindow) => Bench {
  const made = new Map<string, Bench>();
  return (window) => {
    const id = window.step ?? step.id;
    const found = made.get(id) ?? new Bench(study, study.steps.find((each) => each.id === id) ?? step);
    made.set(id, found);
    return found;
  };
}

/** Output of every board: the air around it. */
export const AMBIENT = 'heat.nodes.ambient.temperature';

/** The study's word on how its recordings belong to its board at one step. */
class Bench {
  readonly powerInstrument: Instrument;
  readonly ambientInstrument: Instrument | null;
  /** Those whose readings are learnt from. */
  readonly others: readonly Instrument[];
  readonly #study: Study;
  readonly #step: Step;
  readonly #limiter: string;
  readonly #instruments: readonly Instrument[];
  readonly #board: BoardModel;

  constructor(study: Study, step: Step) {
    this.#study = study;
    this.#step = step;
    const { learning } = study;
    if (!learning) throw new Refusal(refuse('fit/no-learning', { file: study.file }));
    this.#limiter = learning.limiter;
    const limiter = step.board.limiters[learning.limiter];
    // A mean is measured; what such a limiter calls its power is the peak.
    if (limiter && 'takes' in limiter && limiter.takes === 'peak')
      throw new Refusal(refuse('fit/peak-limiter', { limiter: learning.limiter }));
    this.#board = this.#assemble(1);
    this.#instruments = Object.entries(study.instruments).map(([id, entry]) => readInstrument(this.#board, id, entry));
    const power = this.#instruments.find(({ id }) => id === learning['power-channel']);
    if (!power)
      throw new Refusal(
        refuse('fit/no-power-instrument', { wanted: learning['power-channel'], known: Object.keys(study.instruments) }),
      );
    this.powerInstrument = power;
    this.ambientInstrument = this.#instruments.find(({ shows }) => shows === AMBIENT) ?? null;
    this.others = this.#instruments.filter(
      (instrument) => instrument !== power && instrument !== this.ambientInstrument,
    );
  }

  /**
   * The board in one window, as the instruments see it: with the power that was read there, and the ambient where an instrument reads it; else
   * with the stated ambient and its drift.
   */
  model(window: MeasuredWindow, drift: Input | null): Model {
    const power = this.#read(window, this.powerInstrument, 'power')!;
    const ambient = this.ambientInstrument && this.#read(window, this.ambientInstrument, 'ambient');
    return measuredBoard(this.#assemble(power.input.value), this.#instruments, power, ambient ? null : drift, ambient);
  }

  /** A number that is read in a window and goes into the board; null where the window doesn't have it. */
  #read(window: MeasuredWindow, { id, channel, repeatability }: Instrument, what: 'power' | 'ambient') {
    const measured = window.channels[channel];
    if (!measured) return null;
    const input: Input = {
      id: `windows.${window.run}.${window.id}.${what}`,
      kind: what === 'power' ? 'power' : 'temperature',
      unit: what === 'power' ? 'W' : '°C',
      value: measured.mean,
      spread: { shape: 'normal', u: Math.hypot(measured.u, repeatability) },
      source: `measured in ${window.run}, ${window.title}`,
    };
    return { instrument: id, input };
  }

  /** Ambient may have changed from run to run. */
  drift(run: string): Input | null {
    const u = this.#study.learning?.['ambient-drift']?.value;
    if (!u) return null;
    return {
      id: `runs.${run}.ambient-drift`,
      kind: 'temperature-difference',
      unit: 'K',
      value: 0,
      spread: { shape: 'normal', u },
      source: 'stated drift of ambient between runs',
    };
  }

  /** An input as it was stated before any fit: a fit written into the study must not count its own data twice. */
  stated(input: Input): Input {
    for (const [quantity, path] of this.#step.quantities)
      if (path === input.id && quantity.before) return { ...input, ...quantity.before };
    return input;
  }

  #assemble(watts: number): BoardModel {
    const realPower = { kind: 'power', value: watts, unit: 'W', spread: null, text: '' } as const;
    const assembly = assembleBoard(this.#step, { limiter: this.#limiter, realPower });
    if (!assembly.ok) throw new Refusal(assembly.faults);
    return assembly.board;
  }
}

/** The inputs a study wants to learn, before and after. */
export function learntInputs(study: Study, { fit: result }: Learnt) {
  return (study.learning?.learn ?? []).map((path) => {
    const found = result.inputs.find(({ id }) => id === path);
    const quantity = quantityAt(study, path);
    if (!found || !quantity)
      throw new Refusal(refuse('fit/no-such-input', { path, known: result.inputs.map(({ id }) => id) }));
    const { kind, unit } = quantity;
    return {
      path,
      kind,
      unit,
      spread: found.spread,
      before: figure(found.prior.value, found.prior.u, kind, unit),
      after: figure(found.value, found.u, kind, unit),
      determined: found.determined,
      ratio: found.ratio,
      siUnit: kinds[kind].siUnit,
    };
  });
}

/** A number of any step by its address. */
export function quantityAt(study: Study, path: string): Quantity | undefined {
  for (const { quantities } of study.steps)
    for (const [quantity, address] of quantities) if (address === path) return quantity;
  return undefined;
}
