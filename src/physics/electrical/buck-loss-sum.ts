import { buckDuty } from './buck-duty.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from './buck-losses.ts';
import { inductorRipple } from './buck-ripple.ts';
import { capacitorLoss, outputCapacitorCurrent } from './capacitor-loss.ts';
import { inputCapacitorCurrent } from './input-capacitor-current.ts';

/** One buck phase with everything its losses depend on. */
export interface BuckPhase {
  /** [V] */
  readonly inputVoltage: number;
  readonly outputVoltage: number;
  /** Average current [A]. */
  readonly current: number;
  /** [Hz] */
  readonly frequency: number;
  /** [H] */
  readonly inductance: number;
  /** On-resistances and the winding's resistance at their temperatures [Ω]. */
  readonly highResistance: number;
  readonly lowResistance: number;
  readonly windingResistance: number;
  /** Rise plus fall time of each side [s]. */
  readonly highEdges: number;
  readonly lowEdges: number;
  /** Body diode's forward voltage [V] and recovery charge [C]; both dead times together [s]. */
  readonly diodeVoltage: number;
  readonly recoveryCharge: number;
  readonly deadTime: number;
  /** Output charge of both switches at the input voltage [C]. */
  readonly outputCharge: number;
  /** Gate charge of both switches [C] at the drive voltage [V]. */
  readonly gateCharge: number;
  readonly driveVoltage: number;
  /** Controller's own current [A]. */
  readonly controllerCurrent: number;
  /** Series resistances of the input and output capacitors [Ω]. */
  readonly inputResistance: number;
  readonly outputResistance: number;
}

/**
 * Losses of one buck phase, each by its name [W].
 *
 * conduction of both sides and the winding with ripple; overlap of the high side at U_in, of the low side at the diode's voltage; recovery;
 * output charge; dead times; gates; controller U_in·I_c; capacitors I²·R
 *
 * Valid in continuous conduction with hard switching; core loss isn't in it.
 * Source: ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021, its list of factors.
 */
export function buckLosses(phase: BuckPhase) {
  const { inputVoltage, current, frequency } = phase;
  const duty = buckDuty(inputVoltage, phase.outputVoltage);
  const ripple = inductorRipple(inputVoltage, phase.outputVoltage, phase.inductance, frequency);
  return {
    highConduction: conductionLoss(current, ripple, phase.highResistance, duty),
    lowConduction: conductionLoss(current, ripple, phase.lowResistance, 1 - duty),
    highOverlap: switchingLoss(inputVoltage, current, phase.highEdges, frequency),
    lowOverlap: switchingLoss(phase.diodeVoltage, current, phase.lowEdges, frequency),
    recovery: recoveryLoss(phase.recoveryCharge, inputVoltage, frequency),
    outputCharge: outputChargeLoss(phase.outputCharge, inputVoltage, frequency),
    deadTime: deadTimeLoss(phase.diodeVoltage, current, phase.deadTime, frequency),
    gate: gateLoss(phase.gateCharge, phase.driveVoltage, frequency),
    controller: inputVoltage * phase.controllerCurrent,
    winding: conductionLoss(current, ripple, phase.windingResistance, 1),
    inputCapacitors: capacitorLoss(inputCapacitorCurrent(1, duty, current, 0), phase.inputResistance),
    outputCapacitors: capacitorLoss(outputCapacitorCurrent(ripple), phase.outputResistance),
  };
}

/** All losses of one buck phase together [W]. */
export function totalLoss(losses: ReturnType<typeof buckLosses>): number {
  return Object.values(losses).reduce((sum, loss) => sum + loss, 0);
}
