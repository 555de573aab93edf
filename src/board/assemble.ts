import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Batch, Model, Status } from '../metrology/model.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readQuantity } from '../quantity/read.ts';
import type { Step } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';
import { BoardBatch } from './batch.ts';
import { HeatNetwork } from './heat/network.ts';
import { type BoardLimiter, PowerLimiterOnBoard, TemperatureLimiterOnBoard } from './limiters.ts';
import { type BoardLimit, Limits, type OpenBoardLimit } from './limits.ts';
import { Outputs } from './outputs.ts';
import { addPartLimits } from './part-limits.ts';
import { type PlateEnding, PlateOnBoard } from './plate/plate-on-board.ts';
import { buildPowerPath } from './power-path.ts';
import { PartResults, WholeResults } from './results.ts';
import { Slots } from './slots.ts';

/** Sets the real power at one limiter, as an input of its own (`dial`), instead of what its reading would allow. */
export interface BoardDial {
  readonly limiter: string;
  readonly realPower: Quantity;
}

/** A board at a step: a Model, and what a door needs to speak about it. */
export interface BoardModel extends Model {
  readonly batch: Batch;
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
  if (dial) slots.add(dial.realPower, 'dial');

  const outputs = new Outputs();
  const plate = plan.plate ? new PlateOnBoard(plan.plate, slots) : null;
  const heat = new HeatNetwork(plan.heat, slots, plate);
  const whole = new WholeResults(step, heat, outputs);
  const path = buildPowerPath(plan.parts, heat, slots, outputs);
  const partResults = new PartResults(step, path.parts, slots.column(plan.demand.crest), outputs);

  plate?.addOutputs(outputs);

  const limiters = Object.entries(plan.limiters).map(
    ([id, limiter]): BoardLimiter =>
      'reads' in limiter
        ? new PowerLimiterOnBoard(
            id,
            limiter,
            path.senses,
            plan.demand.crest,
            dial?.limiter === id ? dial.realPower : undefined,
            slots,
            outputs,
          )
        : new TemperatureLimiterOnBoard(id, limiter, heat.indexOf(limiter.node), slots, outputs),
  );

  const limits = new Limits(slots, outputs);
  for (const { id } of path.parts) addPartLimits(id, plan.parts[id], limits);
  addNodeLimits(step, limits);
  addLimiterLimits(step, limiters, limits);
  plate?.addLimits(limits);
  faults.push(...addOwnLimits(step, limits, slots));
  if (faults.length > 0) return { ok: false, faults };

  const ties = tiesOfStep(step, slots.inputs);
  const batch = new BoardBatch(
    step,
    { path, heat, attachments: plate ? [plate] : [], limiters, limits, whole, partResults, ties },
    slots,
    outputs,
  );
  const status: Status = { ending: 'unsettled', residual: Number.POSITIVE_INFINITY, passes: 0 };
  const board: BoardModel = {
    step,
    inputs: slots.inputs,
    outputs: outputs.list,
    limits: limits.known,
    open: limits.open,
    limiters,
    batch,
    plate,
    get holder() {
      return batch.holder(0)?.id ?? 'demand';
    },
    indexOfOutput: (id) => outputs.find(id),
    indexOfInput: (id) => slots.inputs.findIndex((input) => input.id === id),
    evaluate(x, y) {
      for (let i = 0; i < x.length; i++) batch.inputs[i][0] = x[i];
      batch.evaluate(1, 0);
      for (let i = 0; i < y.length; i++) y[i] = batch.outputs[i][0];
      return batch.tell(0, status);
    },
  };
  return { ok: true, board };
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
