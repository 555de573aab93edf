import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../physics/electrical/buck-losses.ts';
import { planCurve } from '../physics/electrical/loss-curve.ts';
import type { RegulatorPart } from '../study/schema/parts.ts';
import type { Truth } from './hidden.ts';

/** What one phase works at; SI. */
export interface PhaseWork {
  readonly current: number;
  readonly ripple: number;
  readonly inputVoltage: number;
  readonly duty: number;
  readonly junction: number;
  readonly inductor: number;
}

/** Loss of one phase [W]. */
export interface PhaseHeat {
  readonly stage: number;
  readonly inductor: number;
}

/** Temperature that on-resistances and windings are stated at [K]. */
const stated = 298.15;

/** Loss of one phase at a junction temperature that the caller settles. */
export function phaseHeat(part: RegulatorPart, truth: Truth, parabolas: boolean): (work: PhaseWork) => PhaseHeat {
  const { losses } = part;
  if (losses.by === 'curve') {
    const currents = losses.points.map(({ current }) => truth(current));
    const watts = losses.points.map(({ loss }) => truth(loss));
    const between = parabolas ? (at: number) => alongParabolas(currents, watts, at) : curveOf(currents, watts);
    const reference = truth(losses['at-temperature']);
    const growth = truth(losses['loss-coefficient']);
    return ({ current, junction }) => ({
      stage: between(Math.max(current, currents[0])) * (1 + growth * (junction - reference)),
      inductor: 0,
    });
  }
  const [high, low, growth] = [truth(losses['high-side']), truth(losses['low-side']), truth(losses['on-coefficient'])];
  const frequency = truth(part.frequency);
  const winding = truth(losses.winding);
  const windingGrowth = losses['winding-coefficient'] ? truth(losses['winding-coefficient']) : 0;
  return ({ current, ripple, inputVoltage, duty, junction, inductor }) => ({
    stage:
      (conductionLoss(current, ripple, high, duty) + conductionLoss(current, ripple, low, 1 - duty)) *
        (1 + growth * (junction - stated)) +
      switchingLoss(inputVoltage, current, truth(losses['switching-time']), frequency) +
      outputChargeLoss(truth(losses['output-charge']), inputVoltage, frequency) +
      recoveryLoss(truth(losses['recovery-charge']), inputVoltage, frequency) +
      gateLoss(truth(losses['gate-charge']), truth(losses['drive-voltage']), frequency) +
      deadTimeLoss(truth(losses['diode-voltage']), current, truth(losses['dead-time']), frequency),
    inductor:
      conductionLoss(current, ripple, winding * (1 + windingGrowth * (inductor - stated)), 1) + truth(losses.core),
  });
}

/** The curve as the tool joins its points. */
function curveOf(x: readonly number[], y: readonly number[]): (at: number) => number {
  const curve = planCurve(x.length);
  curve.x.set(x);
  curve.y.set(y);
  if (!curve.prepare()) throw new Error('a loss curve of which the currents do not rise');
  return (at) => curve.at(at);
}

/**
 * Overlapping parabolas: between two points a blend of the parabola through them and the one before, and of that with the one after.
 * Beyond the table along the last parabola.
 * Source: A. W. Overhauser, "Analytic definition of curves and surfaces by parabolic blending", Ford Scientific Research Staff, SL 68-40 (1968), from memory.
 */
function alongParabolas(x: readonly number[], y: readonly number[], at: number): number {
  const last = x.length - 2;
  let k = 0;
  while (k < last && at > x[k + 1]) k++;
  const share = Math.min(1, (at - x[k]) / (x[k + 1] - x[k]));
  const before = parabola(x, y, Math.max(1, k), at);
  const after = parabola(x, y, Math.min(last, k + 1), at);
  return before + share * (after - before);
}

/** The parabola through a point and its two neighbours. */
function parabola(x: readonly number[], y: readonly number[], middle: number, at: number): number {
  const [a, b, c] = [x[middle - 1], x[middle], x[middle + 1]];
  return (
    (y[middle - 1] * (at - b) * (at - c)) / ((a - b) * (a - c)) +
    (y[middle] * (at - a) * (at - c)) / ((b - a) * (b - c)) +
    (y[middle + 1] * (at - a) * (at - b)) / ((c - a) * (c - b))
  );
}
