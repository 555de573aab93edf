import type { Ending } from '../../metrology/model.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../../physics/electrical/buck-losses.ts';
import { planCurve } from '../../physics/electrical/loss-curve.ts';
import type { RegulatorPart } from '../../study/schema/parts.ts';
import type { Slots } from '../slots.ts';

/** Data sheets give on-resistances and windings at 25 °C [K]. */
const dataSheetTemperature = 298.15;

/** What one phase works at. */
export interface PhasePoint {
  /** Current of the phase [A]. */
  current: number;
  /** Peak-to-peak ripple of the phase [A]. */
  ripple: number;
  duty: number;
  inputVoltage: number;
  frequency: number;
  /** Temperature of the node under the stage [K]. */
  stageTemperature: number;
  /** Temperature of the node under the inductor [K]. */
  inductorTemperature: number;
  /** Junction above its node, per watt [K/W]. */
  junctionRise: number;
}

/** Loss of one phase; the last call's figures stay readable until the next. */
export interface PhaseLoss {
  load(x: Float64Array): boolean;
  /** Anything but `solved`: the junction has no steady temperature at this point, or the numbers make a loss below zero. */
  evaluate(point: PhasePoint): Ending;
  /** Loss in the switches [W]. */
  readonly stage: number;
  /** Loss in the inductor [W]. */
  readonly inductor: number;
  /** Junction temperature [K]. */
  readonly junction: number;
}

/**
 * The stage's loss P = fixed + growing·(1 + α(Tj − T0)) with Tj = Tn + θ·P has a closed form; a loop gain θ·growing·α of 1 or more has none.
 * Returns NaN then.
 */
function settleLoss(
  fixed: number,
  growing: number,
  coefficient: number,
  reference: number,
  node: number,
  rise: number,
) {
  const gain = rise * growing * coefficient;
  return gain < 1 ? (fixed + growing * (1 + coefficient * (node - reference))) / (1 - gain) : Number.NaN;
}

function endingOf(loss: number): Ending {
  if (loss >= 0) return 'solved';
  return loss < 0 ? 'infeasible' : 'runaway';
}

class LossByParts implements PhaseLoss {
  stage = 0;
  inductor = 0;
  junction = 0;
  readonly #slots: Int32Array;
  readonly #windingCoefficientSlot: number;
  readonly #values: Float64Array;
  #windingCoefficient = 0;

  constructor(losses: Extract<RegulatorPart['losses'], { by: 'parts' }>, slots: Slots) {
    this.#slots = Int32Array.from(
      [
        losses['high-side'],
        losses['low-side'],
        losses['on-coefficient'],
        losses['switching-time'],
        losses['output-charge'],
        losses['recovery-charge'],
        losses['gate-charge'],
        losses['drive-voltage'],
        losses['dead-time'],
        losses['diode-voltage'],
        losses.winding,
        losses.core,
      ],
      (quantity) => slots.of(quantity),
    );
    this.#windingCoefficientSlot = slots.maybe(losses['winding-coefficient']);
    this.#values = new Float64Array(this.#slots.length);
  }

  load(x: Float64Array): boolean {
    let sound = true;
    for (let i = 0; i < this.#slots.length; i++) {
      this.#values[i] = x[this.#slots[i]];
      sound = sound && this.#values[i] >= 0;
    }
    this.#windingCoefficient = this.#windingCoefficientSlot < 0 ? 0 : x[this.#windingCoefficientSlot];
    return sound;
  }

  evaluate(point: PhasePoint): Ending {
    const v = this.#values;
    const { current, ripple, duty, inputVoltage, frequency } = point;
    const conduction = conductionLoss(current, ripple, v[0], duty) + conductionLoss(current, ripple, v[1], 1 - duty);
    const switching =
      switchingLoss(inputVoltage, current, v[3], frequency) +
      outputChargeLoss(v[4], inputVoltage, frequency) +
      recoveryLoss(v[5], inputVoltage, frequency) +
      gateLoss(v[6], v[7], frequency) +
      deadTimeLoss(v[9], current, v[8], frequency);
    this.stage = settleLoss(
      switching,
      conduction,
      v[2],
      dataSheetTemperature,
      point.stageTemperature,
      point.junctionRise,
    );
    this.junction = point.stageTemperature + point.junctionRise * this.stage;
    const winding = 1 + this.#windingCoefficient * (point.inductorTemperature - dataSheetTemperature);
    this.inductor = conductionLoss(current, ripple, v[10] * winding, 1) + v[11];
    return this.inductor >= 0 ? endingOf(this.stage) : 'infeasible';
  }
}

class LossByCurve implements PhaseLoss {
  stage = 0;
  readonly inductor = 0;
  junction = 0;
  readonly #currents: Int32Array;
  readonly #losses: Int32Array;
  readonly #at: number;
  readonly #coefficient: number;
  readonly #curve: ReturnType<typeof planCurve>;
  #reference = 0;
  #growth = 0;

  constructor(losses: Extract<RegulatorPart['losses'], { by: 'curve' }>, slots: Slots) {
    this.#currents = Int32Array.from(losses.points, (point) => slots.of(point.current));
    this.#losses = Int32Array.from(losses.points, (point) => slots.of(point.loss));
    this.#at = slots.of(losses['at-temperature']);
    this.#coefficient = slots.of(losses['loss-coefficient']);
    this.#curve = planCurve(losses.points.length);
  }

  load(x: Float64Array): boolean {
    const curve = this.#curve;
    for (let i = 0; i < this.#currents.length; i++) {
      curve.x[i] = x[this.#currents[i]];
      curve.y[i] = x[this.#losses[i]];
    }
    this.#reference = x[this.#at];
    this.#growth = x[this.#coefficient];
    return curve.prepare();
  }

  evaluate(point: PhasePoint): Ending {
    // Below the first point the loss isn't known, but it is no higher there: the safe side, and never negative.
    const loss = this.#curve.at(Math.max(point.current, this.#curve.x[0]));
    this.stage = settleLoss(0, loss, this.#growth, this.#reference, point.stageTemperature, point.junctionRise);
    this.junction = point.stageTemperature + point.junctionRise * this.stage;
    return endingOf(this.stage);
  }
}

/** Loss by parts or by a data sheet's curve, as the study says. */
export function phaseLoss(losses: RegulatorPart['losses'], slots: Slots): PhaseLoss {
  return losses.by === 'parts' ? new LossByParts(losses, slots) : new LossByCurve(losses, slots);
}
