import type { RandomStream } from '../numeric/random.ts';
import { inductorRipple } from '../physics/electrical/buck-ripple.ts';
import { dividerGain } from '../physics/electrical/divider.ts';
import { rmsCurrent } from '../physics/electrical/inductor-current.ts';
import { inputCapacitorCurrent } from '../physics/electrical/input-capacitor-current.ts';
import { wireResistance } from '../physics/electrical/wire-gauge.ts';
import type { ConductorPart, LoadPart, Part, RegulatorPart, SensePart, SupplyPart } from '../study/schema/parts.ts';
import type { Departures } from './departures.ts';
import type { Truth } from './hidden.ts';
import type { Planted } from './planted.ts';
import { phaseHeat } from './stage-loss.ts';

/** Temperature that resistances are stated at [K], and what copper gains per kelvin. */
const stated = 293.15;
const copper = 3.93e-3;
const sweeps = 200;

/** Surroundings of the power path in one moment. */
export interface Surroundings {
  readonly scale: number;
  /** Temperature of a heat node [K]; of `ambient` too. */
  temperature(node: string): number;
  /** Takes heat into a node [W]. */
  warm(node: string, watts: number): void;
}

/** One part at work. Names of outputs are the tool's own, so that an instrument can be put on them. */
interface Worker {
  /** Current drawn from the feeder for what is delivered [A]. */
  draw(voltageIn: number, delivered: number, around: Surroundings): number;
  /** Voltage handed on [V]. */
  hand(voltageIn: number, delivered: number, around: Surroundings): number;
  /** After the sweeps: heats its nodes and writes what could be measured of it. */
  finish(voltageIn: number, delivered: number, around: Surroundings, write: Write): void;
}

export type Write = (output: string, value: number) => void;

/** What a limiter can see of a sense point. */
export interface SensePoint {
  readonly voltage: number;
  readonly current: number;
  readonly resistance: number;
  readonly gain: number;
}

/** Power path of a virtual board in one moment, swept up and down until it stands still; phases one by one. */
export class PowerGrid {
  readonly senses = new Map<string, SensePoint>();
  readonly #order: readonly string[];
  readonly #feeder: ReadonlyMap<string, string>;
  readonly #workers = new Map<string, Worker>();
  readonly #voltage = new Map<string, number>();
  readonly #delivered = new Map<string, number>();
  readonly #parts: Readonly<Record<string, Part>>;

  constructor(
    parts: Readonly<Record<string, Part>>,
    truth: Truth,
    departures: Departures,
    faults: readonly Planted[],
    random: RandomStream,
  ) {
    this.#parts = parts;
    const ids = Object.keys(parts);
    const order = ids.filter((id) => parts[id].kind === 'supply');
    const feeder = new Map<string, string>();
    for (let i = 0; i < order.length; i++)
      for (const id of ids) {
        const part = parts[id];
        if (part.kind === 'supply' || part['fed-by'] !== order[i]) continue;
        feeder.set(id, order[i]);
        order.push(id);
      }
    this.#order = order;
    this.#feeder = feeder;
    for (const id of order) {
      const part = parts[id];
      this.#workers.set(id, this.#worker(id, part, truth, departures, faults, random));
      this.#voltage.set(id, 'voltage' in part ? truth(part.voltage) : 'output' in part ? truth(part.output) : 12);
    }
    // Conductors and sense points start at their feeder's voltage.
    for (const id of order) {
      const { kind } = parts[id];
      if (kind !== 'supply' && kind !== 'regulator') this.#voltage.set(id, this.#voltage.get(feeder.get(id)!)!);
    }
  }

  /** Sweeps until no voltage moves by a part in 10¹²; false: it doesn't come to rest, or a voltage is gone. */
  settle(around: Surroundings, write: Write): boolean {
    for (let sweep = 0; sweep < sweeps; sweep++) {
      this.#delivered.clear();
      for (let i = this.#order.length - 1; i >= 0; i--) {
        const id = this.#order[i];
        const feeder = this.#feeder.get(id);
        if (feeder === undefined) continue;
        const drawn = this.#workers.get(id)!.draw(this.#voltage.get(feeder)!, this.#delivered.get(id) ?? 0, around);
        if (!Number.isFinite(drawn)) return false;
        this.#delivered.set(feeder, (this.#delivered.get(feeder) ?? 0) + drawn);
      }
      let moved = 0;
      for (const id of this.#order) {
        const before = this.#voltage.get(id)!;
        const feeding = this.#feeder.get(id);
        const input = feeding === undefined ? 0 : this.#voltage.get(feeding)!;
        const after = this.#workers.get(id)!.hand(input, this.#delivered.get(id) ?? 0, around);
        if (!(after > 0)) return false;
        moved = Math.max(moved, Math.abs(after - before) / after);
        this.#voltage.set(id, after);
      }
      if (moved < 1e-12) {
        this.#finish(around, write);
        return true;
      }
    }
    return false;
  }

  #finish(around: Surroundings, write: Write): void {
    let processor = 0;
    let wall = 0;
    for (const id of this.#order) {
      const part = this.#parts[id];
      const feeding = this.#feeder.get(id);
      const input = feeding === undefined ? 0 : this.#voltage.get(feeding)!;
      const delivered = this.#delivered.get(id) ?? 0;
      this.#workers.get(id)!.finish(input, delivered, around, (output, value) => {
        write(`parts.${id}.${output}`, value);
        if (output === 'power' && part.kind === 'load' && part.follows === 'processor') processor += value;
        if (output === 'from-the-wall') wall += value;
      });
      write(`parts.${id}.voltage`, this.#voltage.get(id)!);
    }
    write('processor-power', processor);
    write('wall-power', wall);
  }

  #worker(
    id: string,
    part: Part,
    truth: Truth,
    departures: Departures,
    faults: readonly Planted[],
    random: RandomStream,
  ): Worker {
    switch (part.kind) {
      case 'supply':
        return supply(part, truth, departures);
      case 'conductor':
        return conductor(part, truth);
      case 'sense': {
        const wrong = faults.find((fault) => fault.kind === 'wrong-sense' && fault.part === id);
        const factor = wrong?.kind === 'wrong-sense' ? wrong.factor : 1;
        return this.#sense(id, part, truth, factor);
      }
      case 'regulator': {
        const dead = faults.some((fault) => fault.kind === 'dead-phase' && fault.part === id);
        return regulator(part, truth, departures, dead, random);
      }
      case 'load':
        return load(part, truth);
    }
  }

  #sense(id: string, part: SensePart, truth: Truth, factor: number): Worker {
    const fitted = part.fitted.map((resistor, i) => ({
      at20: truth(resistor.resistance) * (i === 0 ? factor : 1),
      joint: resistor.joint ? truth(resistor.joint) : 0,
      coefficient: resistor['temperature-coefficient'] ? truth(resistor['temperature-coefficient']) : 0,
    }));
    const { divider } = part;
    const gain = divider
      ? dividerGain(
          truth(divider.series),
          truth(divider.parallel),
          divider.input ? truth(divider.input) : Number.POSITIVE_INFINITY,
        )
      : 1;
    const bodies = (around: Surroundings) =>
      fitted.map(({ at20, coefficient }) => at20 * (1 + coefficient * (around.temperature(part.heats) - stated)));
    const together = (around: Surroundings) =>
      1 / bodies(around).reduce((sum, body, i) => sum + 1 / (body + fitted[i].joint), 0);
    return {
      draw: (_, delivered) => delivered,
      hand: (voltage, delivered, around) => voltage - delivered * together(around),
      finish: (voltage, delivered, around, write) => {
        const resistance = together(around);
        const drop = delivered * resistance;
        around.warm(part.heats, drop * delivered);
        this.senses.set(id, { voltage: voltage - drop, current: delivered, resistance, gain });
        write('current', delivered);
        write('loss', drop * delivered);
        write('effective-resistance', resistance);
        bodies(around).forEach((body, i) => {
          write(`fitted.${i}.dissipation`, (drop / (body + fitted[i].joint)) ** 2 * body);
        });
      },
    };
  }
}

function supply(part: SupplyPart, truth: Truth, { partLoadLoss }: Departures): Worker {
  const [open, resistance, efficiency] = [truth(part.voltage), truth(part.resistance), truth(part.efficiency)];
  const rating = part['rated-power'];
  const full = typeof rating === 'object' ? rating.value : Number.POSITIVE_INFINITY;
  return {
    draw: () => 0,
    hand: (_, delivered) => open - delivered * resistance,
    finish: (_, delivered, around, write) => {
      const out = (open - delivered * resistance) * delivered;
      // Best at full load, worse by a parabola below it.
      const wall = out / (efficiency * (1 - partLoadLoss * 4 * Math.max(0, 1 - out / full) ** 2));
      around.warm(part.heats, wall - out);
      write('power', out);
      write('current', delivered);
      write('loss', wall - out);
      write('from-the-wall', wall);
    },
  };
}

function conductor(part: ConductorPart, truth: Truth): Worker {
  const at20 = part.wire
    ? wireResistance(truth(part.wire.gauge), truth(part.wire.length))
    : part.resistance
      ? truth(part.resistance)
      : 0;
  const given = part['temperature-coefficient'];
  const coefficient = given ? truth(given) : part.wire ? copper : 0;
  const now = (around: Surroundings) => at20 * (1 + coefficient * (around.temperature(part.heats) - stated));
  return {
    draw: (_, delivered) => delivered,
    hand: (voltage, delivered, around) => voltage - delivered * now(around),
    finish: (_, delivered, around, write) => {
      around.warm(part.heats, delivered * delivered * now(around));
      write('current', delivered);
      write('loss', delivered * delivered * now(around));
    },
  };
}

function load(part: LoadPart, truth: Truth): Worker {
  const full = truth(part.power);
  const idle = part.idle ? truth(part.idle) : 0;
  const { leakage } = part;
  const [leak, at, fold] = leakage ? [truth(leakage.power), truth(leakage.at), truth(leakage['e-fold'])] : [0, 300, 1];
  const power = (around: Surroundings) =>
    (part.follows ? idle + (full - idle) * around.scale : full) +
    leak * Math.exp((around.temperature(part.heats) - at) / fold);
  return {
    draw: (voltage, _, around) => power(around) / voltage,
    hand: (voltage) => voltage,
    finish: (voltage, _, around, write) => {
      around.warm(part.heats, power(around));
      write('power', power(around));
      write('current', power(around) / voltage);
      write('loss', power(around));
    },
  };
}

function regulator(
  part: RegulatorPart,
  truth: Truth,
  { phaseScatter, parabolas }: Departures,
  dead: boolean,
  random: RandomStream,
): Worker {
  const [output, inductance, frequency] = [truth(part.output), truth(part.inductance), truth(part.frequency)];
  const exponent = part['output-exponent'] ? truth(part['output-exponent']) : 0;
  const [fixed, rise] = [truth(part.fixed), truth(part.stage['junction-rise'])];
  const [stageNode, inductorNode] =
    typeof part.heats === 'string' ? [part.heats, part.heats] : [part.heats.stages, part.heats.inductors];
  const shares = phaseShares(part.phases - (dead ? 1 : 0), truth(part.imbalance), phaseScatter, random);
  const heatOf = phaseHeat(part, truth, parabolas);
  const voltageAt = (scale: number) => (exponent === 0 ? output : output * scale ** exponent);

  /** All phases at work: their currents, losses, and the hottest junction. */
  function work(voltageIn: number, delivered: number, around: Surroundings) {
    const out = voltageAt(around.scale);
    const ripple = inductorRipple(voltageIn, out, inductance, frequency);
    const node = around.temperature(stageNode);
    let [stages, inductors, busiest, hottest] = [fixed, 0, 0, node];
    for (const share of shares) {
      const current = delivered * share;
      let junction = node;
      let heat = { stage: 0, inductor: 0 };
      for (let k = 0; k < 60; k++) {
        heat = heatOf({
          current,
          ripple,
          inputVoltage: voltageIn,
          duty: out / voltageIn,
          junction,
          inductor: around.temperature(inductorNode),
        });
        const next = node + rise * heat.stage;
        const still = Math.abs(next - junction) < 1e-9;
        junction = next;
        if (still) break;
      }
      stages += heat.stage;
      inductors += heat.inductor;
      busiest = Math.max(busiest, current);
      hottest = Math.max(hottest, junction);
    }
    return { out, ripple, stages, inductors, busiest, hottest };
  }

  return {
    draw: (voltage, delivered, around) => {
      if (!(voltage > voltageAt(around.scale))) return Number.NaN;
      const { out, stages, inductors } = work(voltage, delivered, around);
      return (out * delivered + stages + inductors) / voltage;
    },
    hand: (_, __, around) => voltageAt(around.scale),
    finish: (voltage, delivered, around, write) => {
      const { out, ripple, stages, inductors, busiest, hottest } = work(voltage, delivered, around);
      around.warm(stageNode, stages);
      around.warm(inductorNode, inductors);
      write('current', (out * delivered + stages + inductors) / voltage);
      write('loss', stages + inductors);
      write('phase-current', busiest);
      write('phase-ripple', ripple);
      write('junction-temperature', hottest);
      write('inductor-rms', rmsCurrent(busiest, ripple));
      write(
        'capacitor-ripple',
        inputCapacitorCurrent(shares.length, out / voltage, delivered, ripple) / part['input-capacitors'].count,
      );
    },
  };
}

/** Shares of the phases, 1 together: the busiest exceeds an equal share by the stated imbalance, the others lie anywhere below it. */
function phaseShares(phases: number, imbalance: number, scatter: number, random: RandomStream): number[] {
  if (phases < 1) return [1];
  const busiest = (1 + Math.max(0, imbalance) + (phases > 1 ? scatter * random.normal() : 0)) / phases;
  if (phases === 1) return [1];
  const others = Array.from({ length: phases - 1 }, () => 1 + Math.max(imbalance, scatter) * random.uniform());
  const sum = others.reduce((total, share) => total + share, 0);
  return [busiest, ...others.map((share) => ((1 - busiest) * share) / sum)];
}
