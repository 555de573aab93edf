import type { Ending } from '../../metrology/model.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../../physics/electrical/buck-losses.ts';
import { type Curve, planCurve } from '../../physics/electrical/loss-curve.ts';
import type { RegulatorPart } from '../../study/schema/parts.ts';
import { lanes } from '../lanes.ts';
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
  /** False: the numbers of this lane can't be a loss. */
  load(lane: number): boolean;
  /** Anything but `solved`: the junction has no steady temperature at this point, or the numbers make a loss below zero. */
  evaluate(point: PhasePoint, lane: number): Ending;
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
  readonly #highSide: Float64Array;
  readonly #lowSide: Float64Array;
  readonly #onCoefficient: Float64Array;
  readonly #switchingTime: Float64Array;
  readonly #outputCharge: Float64Array;
  readonly #recoveryCharge: Float64Array;
  readonly #gateCharge: Float64Array;
  readonly #driveVoltage: Float64Array;
  readonly #deadTime: Float64Array;
  readonly #diodeVoltage: Float64Array;
  readonly #winding: Float64Array;
  readonly #windingCoefficient: Float64Array;
  readonly #core: Float64Array;

  constructor(losses: Extract<RegulatorPart['losses'], { by: 'parts' }>, slots: Slots) {
    this.#highSide = slots.column(losses['high-side']);
    this.#lowSide = slots.column(losses['low-side']);
    this.#onCoefficient = slots.column(losses['on-coefficient']);
    this.#switchingTime = slots.column(losses['switching-time']);
    this.#outputCharge = slots.column(losses['output-charge']);
    this.#recoveryCharge = slots.column(losses['recovery-charge']);
    this.#gateCharge = slots.column(losses['gate-charge']);
    this.#driveVoltage = slots.column(losses['drive-voltage']);
    this.#deadTime = slots.column(losses['dead-time']);
    this.#diodeVoltage = slots.column(losses['diode-voltage']);
    this.#winding = slots.column(losses.winding);
    this.#windingCoefficient = slots.column(losses['winding-coefficient'], 0);
    this.#core = slots.column(losses.core);
  }

  load(lane: number): boolean {
    return (
      this.#highSide[lane] >= 0 &&
      this.#lowSide[lane] >= 0 &&
      this.#onCoefficient[lane] >= 0 &&
      this.#switchingTime[lane] >= 0 &&
      this.#outputCharge[lane] >= 0 &&
      this.#recoveryCharge[lane] >= 0 &&
      this.#gateCharge[lane] >= 0 &&
      this.#driveVoltage[lane] >= 0 &&
      this.#deadTime[lane] >= 0 &&
      this.#diodeVoltage[lane] >= 0 &&
      this.#winding[lane] >= 0 &&
      this.#core[lane] >= 0
    );
  }

  evaluate(point: PhasePoint, s: number): Ending {
    const { current, ripple, duty, inputVoltage, frequency } = point;
    const conduction =
      conductionLoss(current, ripple, this.#highSide[s], duty) +
      conductionLoss(current, ripple, this.#lowSide[s], 1 - duty);
    const switching =
      switchingLoss(inputVoltage, current, this.#switchingTime[s], frequency) +
      outputChargeLoss(this.#outputCharge[s], inputVoltage, frequency) +
      recoveryLoss(this.#recoveryCharge[s], inputVoltage, frequency) +
      gateLoss(this.#gateCharge[s], this.#driveVoltage[s], frequency) +
      deadTimeLoss(this.#diodeVoltage[s], current, this.#deadTime[s], frequency);
    this.stage = settleLoss(
      switching,
      conduction,
      this.#onCoefficient[s],
      dataSheetTemperature,
      point.stageTemperature,
      point.junctionRise,
    );
    this.junction = point.stageTemperature + point.junctionRise * this.stage;
    const winding = 1 + this.#windingCoefficient[s] * (point.inductorTemperature - dataSheetTemperature);
    this.inductor = conductionLoss(current, ripple, this.#winding[s] * winding, 1) + this.#core[s];
    return this.inductor >= 0 ? endingOf(this.stage) : 'infeasible';
  }
}

class LossByCurve implements PhaseLoss {
  stage = 0;
  readonly inductor = 0;
  junction = 0;
  readonly #currents: readonly Float64Array[];
  readonly #losses: readonly Float64Array[];
  readonly #reference: Float64Array;
  readonly #growth: Float64Array;
  /** One a lane. */
  readonly #curves: readonly Curve[];

  constructor(losses: Extract<RegulatorPart['losses'], { by: 'curve' }>, slots: Slots) {
    this.#currents = losses.points.map((point) => slots.column(point.current));
    this.#losses = losses.points.map((point) => slots.column(point.loss));
    this.#reference = slots.column(losses['at-temperature']);
    this.#growth = slots.column(losses['loss-coefficient']);
    this.#curves = Array.from({ length: lanes }, () => planCurve(losses.points.length));
  }

  load(lane: number): boolean {
    const curve = this.#curves[lane];
    for (let i = 0; i < this.#currents.length; i++) {
      curve.x[i] = this.#currents[i][lane];
      curve.y[i] = this.#losses[i][lane];
    }
    return curve.prepare();
  }

  evaluate(point: PhasePoint, lane: number): Ending {
    const curve = this.#curves[lane];
    // Below the first point the loss isn't known, but it is no higher there: the safe side, and never negative.
    const loss = curve.at(Math.max(point.current, curve.x[0]));
    this.stage = settleLoss(
      0,
      loss,
      this.#growth[lane],
      this.#reference[lane],
      point.stageTemperature,
      point.junctionRise,
    );
    this.junction = point.stageTemperature + point.junctionRise * this.stage;
    return endingOf(this.stage);
  }
}

/** Loss by parts or by a data sheet's curve, as the study says. */
export function phaseLoss(losses: RegulatorPart['losses'], slots: Slots): PhaseLoss {
  return losses.by === 'parts' ? new LossByParts(losses, slots) : new LossByCurve(losses, slots);
}
