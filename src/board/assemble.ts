import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Model, Status } from '../metrology/model.ts';
import { peakCurrent } from '../physics/electrical/inductor-current.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readQuantity } from '../quantity/read.ts';
import type { Step } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';
import { HeatNetwork } from './heat/network.ts';
import { type BoardLimiter, PowerLimiterOnBoard, TemperatureLimiterOnBoard } from './limiters.ts';
import { type BoardLimit, Limits, type OpenBoardLimit } from './limits.ts';
import { Outputs } from './outputs.ts';
import { addPartLimits } from './part-limits.ts';
import { pathState } from './path/path-state.ts';
import { type PlateEnding, PlateOnBoard } from './plate/plate-on-board.ts';
import { buildPowerPath } from './power-path.ts';
import { Slots } from './slots.ts';
import { BoardSolver } from './solve.ts';

/** Sets the real power at one limiter, as an input of its own (`dial`), instead of what its reading would allow. */
export interface BoardDial {
  readonly limiter: string;
  readonly realPower: Quantity;
}

/** A board at a step: a Model, and what a door needs to speak about it. */
export interface BoardModel extends Model {
  readonly step: Step;
  readonly limits: readonly BoardLimit[];
  readonly open: readonly OpenBoardLimit[];
  readonly limiters: readonly BoardLimiter[];
  /** After an evaluation: the limiter that holds, or `demand`. */
  readonly holder: string;
  /** After an evaluation: how the plate's balance ended, and the dies that it doesn't touch; null for a board without one. */
  readonly plate: { readonly ending: PlateEnding; readonly lifted: readonly string[] } | null;
  indexOfOutput(id: string): number;
  indexOfInput(id: string): number;
}

export type Assembly =
  | { readonly ok: true; readonly board: BoardModel }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Makes the Model of a board at a step. Faults: an added limit that names no output or has the wrong dimension, a dial on no power limiter. */
export function assembleBoard(step: Step, dial?: BoardDial): Assembly {
  const { board: plan } = step;
  const slots = new Slots(step.quantities);
  const faults: Fault[] = [];
  const dialled = dial && plan.limiters[dial.limiter];
  if (dial && !(dialled && 'reads' in dialled)) {
    const known = Object.entries(plan.limiters).filter(([, limiter]) => 'reads' in limiter);
    return {
      ok: false,
      faults: [refuse('board/no-such-limiter', { limiter: dial.limiter, known: known.map(([id]) => id) })],
    };
  }
  const dialSlot = dial ? slots.add(dial.realPower, 'dial') : -1;
  const demandSlot = slots.of(plan.demand.scale);
  const crestSlot = slots.of(plan.demand.crest);

  const outputs = new Outputs();
  const scaleOutput = outputs.add('scale', 'ratio', '', 'scale of the processor’s power');
  const processorOutput = outputs.add(
    'processor-power',
    'power',
    'W',
    'power of everything that follows the processor',
  );
  const wallOutput = outputs.add('wall-power', 'power', 'W', 'power from the wall');
  const heatOutput = outputs.add('heat', 'power', 'W', 'heat that leaves the board');
  const gainOutput = outputs.add('loop-gain', 'ratio', '', 'growth of a small rise in temperature; 1 is runaway');

  const plate = plan.plate ? new PlateOnBoard(plan.plate, slots) : null;
  const heat = new HeatNetwork(plan.heat, slots, plate);
  const nodeOutputs = heat.nodes.map((id) =>
    outputs.add(`heat.nodes.${id}.temperature`, 'temperature', '°C', plan.heat.nodes[id].title ?? id),
  );
  const ambientOutput = outputs.add('heat.nodes.ambient.temperature', 'temperature', '°C', 'ambient');
  const path = buildPowerPath(plan.parts, heat, slots, outputs);
  const title = (id: string) => plan.parts[id].title ?? id;
  const currentOutputs = path.parts.map(({ id }) =>
    outputs.add(`parts.${id}.current`, 'current', 'A', `current of ${title(id)}`),
  );
  const voltageOutputs = path.parts.map(({ id }) =>
    outputs.add(`parts.${id}.voltage`, 'voltage', 'V', `voltage at ${title(id)}`),
  );
  const lossOutputs = path.parts.map(({ id }) => outputs.add(`parts.${id}.loss`, 'power', 'W', `heat of ${title(id)}`));
  const peakOutputs = path.parts.map(({ id }) =>
    plan.parts[id].kind === 'supply'
      ? outputs.add(`parts.${id}.peak-current`, 'current', 'A', `peak current of ${title(id)}`)
      : -1,
  );
  const inductorPeakOutputs = path.parts.map(({ id }) =>
    plan.parts[id].kind === 'regulator'
      ? outputs.add(`parts.${id}.inductor-peak`, 'current', 'A', `peak current of the busiest inductor of ${title(id)}`)
      : -1,
  );

  plate?.addOutputs(outputs);

  const limiters = Object.entries(plan.limiters).map(
    ([id, limiter]): BoardLimiter =>
      'reads' in limiter
        ? new PowerLimiterOnBoard(
            id,
            limiter,
            path.senses,
            crestSlot,
            dial?.limiter === id ? dialSlot : -1,
            slots,
            outputs,
          )
        : new TemperatureLimiterOnBoard(id, limiter, heat.indexOf(limiter.node), slots, outputs),
  );
  const regulating = limiters.filter(({ acts }) => acts === 'regulate');

  const limits = new Limits(slots, outputs);
  for (const { id } of path.parts) addPartLimits(id, plan.parts[id], limits);
  addNodeLimits(step, limits);
  addLimiterLimits(step, limiters, limits);
  plate?.addLimits(limits);
  faults.push(...addOwnLimits(step, limits, slots));
  if (faults.length > 0) return { ok: false, faults };

  const ties = tiesOfStep(step, slots.inputs);
  const state = pathState(path.parts.length, heat.nodes.length);
  const solver = new BoardSolver(path.parts, heat, regulating, state);
  const status: Status = { ending: 'unsettled', residual: Number.POSITIVE_INFINITY, passes: 0 };
  const phaseCurrent = path.parts.map(({ id }) => outputs.find(`parts.${id}.phase-current`));
  const phaseRipple = path.parts.map(({ id }) => outputs.find(`parts.${id}.phase-ripple`));

  const board: BoardModel = {
    step,
    inputs: slots.inputs,
    outputs: outputs.list,
    limits: limits.known,
    open: limits.open,
    limiters,
    get holder() {
      return solver.holder < 0 ? 'demand' : regulating[solver.holder].id;
    },
    plate,
    indexOfOutput: (id) => outputs.find(id),
    indexOfInput: (id) => slots.inputs.findIndex((input) => input.id === id),
    evaluate(given, y) {
      const x = ties ? ties.apply(given) : given;
      status.ending = 'infeasible';
      status.residual = Number.POSITIVE_INFINITY;
      status.passes = 0;
      // The plate first: the heat path may ask for its pressure.
      let sound = (plate?.load(x) ?? true) && heat.load(x) && x[demandSlot] > 0 && x[crestSlot] >= 1;
      for (let i = 0; i < path.parts.length; i++) sound = path.parts[i].load(x) && sound;
      for (let i = 0; i < limiters.length; i++) sound = limiters[i].load(x) && sound;
      if (!sound) {
        y.fill(Number.NaN);
        return status;
      }
      solver.solve(x[demandSlot]);
      status.ending = solver.ending;
      status.residual = solver.residual;
      status.passes = solver.passes;
      if (solver.ending !== 'solved') {
        y.fill(Number.NaN);
        return status;
      }
      const crest = x[crestSlot];
      let wall = 0;
      for (let i = 0; i < path.supplies.length; i++) wall += path.supplies[i].wallPower(state);
      let processor = 0;
      for (let i = 0; i < path.followers.length; i++) processor += state.loss[path.followers[i].index];
      y[scaleOutput] = state.scale;
      y[processorOutput] = processor;
      y[wallOutput] = wall;
      // What heats `ambient` at once never passes the heat path.
      y[heatOutput] = state.heat[heat.nodes.length] + heat.leaving(solver.rises);
      y[gainOutput] = solver.loopGain;
      for (let i = 0; i < nodeOutputs.length; i++) y[nodeOutputs[i]] = heat.ambient + solver.rises[i];
      y[ambientOutput] = heat.ambient;
      for (let i = 0; i < path.parts.length; i++) {
        const part = path.parts[i];
        const ending = part.write(state, y);
        if (ending !== 'solved') status.ending = ending;
        const current = part.feeder < 0 ? state.delivered[i] : state.drawn[i];
        y[currentOutputs[i]] = current;
        y[voltageOutputs[i]] = state.voltage[i];
        y[lossOutputs[i]] = state.loss[i];
        if (peakOutputs[i] >= 0) y[peakOutputs[i]] = current * crest;
        if (inductorPeakOutputs[i] >= 0)
          y[inductorPeakOutputs[i]] = peakCurrent(y[phaseCurrent[i]] * crest, y[phaseRipple[i]]);
      }
      for (let i = 0; i < limiters.length; i++) limiters[i].write(state, y);
      plate?.write(y);
      limits.write(x, y);
      if (status.ending !== 'solved') y.fill(Number.NaN);
      return status;
    },
  };
  warmUp(board, solver);
  return { ok: true, board };
}

/** Solves once at the best values, the slow way, and keeps that as the start of every evaluation to come. */
function warmUp(board: BoardModel, solver: BoardSolver): void {
  const x = Float64Array.from(board.inputs, ({ value }) => value);
  if (board.evaluate(x, new Float64Array(board.outputs.length)).ending === 'solved') solver.remember();
}

function addNodeLimits({ board }: Step, limits: Limits): void {
  const heated = new Set(
    Object.values(board.parts).flatMap(({ heats }) =>
      typeof heats === 'string' ? [heats] : [heats.stages, heats.inductors],
    ),
  );
  for (const [id, node] of Object.entries(board.heat.nodes)) {
    // A place that no part heats, such as a fin stack or the air, is no part that could be harmed.
    if (node.limit === undefined && !heated.has(id)) continue;
    limits.add({
      id: `heat.nodes.${id}.limit`,
      title: `${node.title ?? id}: temperature`,
      rating: node.limit,
      of: `heat.nodes.${id}.temperature`,
      kind: 'temperature',
      unit: '°C',
      consequence: `${node.title ?? id} gets too hot`,
    });
  }
}

function addLimiterLimits({ board }: Step, limiters: readonly BoardLimiter[], limits: Limits): void {
  for (const limiter of limiters) {
    if (limiter.acts === 'regulate') continue;
    const entry = board.limiters[limiter.id];
    const trips = limiter.acts === 'trip';
    limits.hold(
      {
        id: `limiters.${limiter.id}`,
        title: `${limiter.title}: ${trips ? 'switches the machine off' : 'warns'}`,
        rating: undefined,
        of: `limiters.${limiter.id}.reads`,
        kind: limiter.kind,
        unit: limiter.kind === 'power' ? 'W' : '°C',
        consequence: trips ? 'the machine switches off' : 'it warns',
      },
      'reads' in entry ? entry.allowed : entry['allowed-temperature'],
    );
  }
}

/** The limits the person has added beside those of the parts. */
function addOwnLimits(step: Step, limits: Limits, slots: Slots): Fault[] {
  const faults: Fault[] = [];
  for (const [id, own] of Object.entries(step.board.limits ?? {})) {
    const output = limits.outputs.list[limits.outputs.find(own.of)];
    if (!output) {
      const known = limits.outputs.list.map((each) => each.id);
      faults.push(refuse('board/no-such-output', { limit: id, of: own.of, near: nearest(own.of, known) || known[0] }));
      continue;
    }
    const side = own.over === undefined ? 'under' : 'over';
    const written = String(own[side] ?? 'open');
    const request = {
      id: `limits.${id}`,
      title: own.title ?? own.reason,
      of: own.of,
      side,
      kind: output.kind,
      unit: output.unit,
      consequence: own.reason,
    } as const;
    if (written === 'open') {
      limits.add({ ...request, rating: 'open' });
      continue;
    }
    const reading = readQuantity(written, output.kind);
    if (!reading.ok) faults.push(reading.fault);
    else {
      slots.add(reading.quantity, `limits.${id}.${side}`);
      limits.hold({ ...request, rating: undefined, kind: output.kind }, reading.quantity);
    }
  }
  return faults;
}
