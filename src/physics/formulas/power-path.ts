import type { Formula } from '../formula.ts';
import { agingFactorFormula } from './power-path/aging-factor.ts';
import { buckPhaseLossesFormula } from './power-path/buck-phase-losses.ts';
import { capacitorLossFormula } from './power-path/capacitor-loss.ts';
import { connectorCurrentFormula } from './power-path/connector-current.ts';
import { converterEfficiencyFormula } from './power-path/converter-efficiency.ts';
import { deratedRatingFormula } from './power-path/derated-rating.ts';
import { electrothermalFixedPointFormula } from './power-path/electrothermal-fixed-point.ts';
import { errorBudgetFormula } from './power-path/error-budget.ts';
import { fuseRatingFormula } from './power-path/fuse-rating.ts';
import { fuseSteadyCurrentFormula } from './power-path/fuse-steady-current.ts';
import { inductanceForRippleFormula } from './power-path/inductance-for-ripple.ts';
import { inductorRippleFormula } from './power-path/inductor-ripple.ts';
import { inputCapacitanceFormula } from './power-path/input-capacitance.ts';
import { inputCapacitorCurrentFormula } from './power-path/input-capacitor-current.ts';
import { liquidCapacitorLifeFormula } from './power-path/liquid-capacitor-life.ts';
import { lossFromEfficiencyFormula } from './power-path/loss-from-efficiency.ts';
import { millerOverlapLossFormula } from './power-path/miller-overlap-loss.ts';
import { onResistanceFormula } from './power-path/on-resistance.ts';
import { onTimeFormula } from './power-path/on-time.ts';
import { outputCapacitorCurrentFormula } from './power-path/output-capacitor-current.ts';
import { outputRippleFormula } from './power-path/output-ripple.ts';
import { parallelResistanceFormula } from './power-path/parallel-resistance.ts';
import { phaseSharingFormula } from './power-path/phase-sharing.ts';
import { polymerCapacitorLifeFormula } from './power-path/polymer-capacitor-life.ts';
import { ratedCurrentFormula } from './power-path/rated-current.ts';
import { resistorToStackFormula } from './power-path/resistor-to-stack.ts';
import { senseDividerGainFormula } from './power-path/sense-divider-gain.ts';
import { senseFilterErrorFormula } from './power-path/sense-filter-error.ts';
import { senseRealPowerFormula } from './power-path/sense-real-power.ts';
import { sourceResistanceFormula } from './power-path/source-resistance.ts';
import { stackedSenseCheckFormula } from './power-path/stacked-sense-check.ts';
import { supplyDroopFormula } from './power-path/supply-droop.ts';
import { traceCurrentFormula } from './power-path/trace-current.ts';
import { traceFusingCurrentFormula } from './power-path/trace-fusing-current.ts';
import { traceResistanceFormula } from './power-path/trace-resistance.ts';
import { traceRiseFormula } from './power-path/trace-rise.ts';
import { traceRiseCurrentFormula } from './power-path/trace-rise-current.ts';
import { traceWidthFormula } from './power-path/trace-width.ts';
import { voltageAtPowerFormula } from './power-path/voltage-at-power.ts';
import { voltageDividerFormula } from './power-path/voltage-divider.ts';
import { wireFusingCurrentFormula } from './power-path/wire-fusing-current.ts';
import { wireResistanceFormula } from './power-path/wire-resistance.ts';

/** From the supply to the processor, in the order of the work. */
export const powerPathFormulas: readonly Formula[] = [
  parallelResistanceFormula,
  senseRealPowerFormula,
  senseDividerGainFormula,
  deratedRatingFormula,
  ratedCurrentFormula,
  wireResistanceFormula,
  inductorRippleFormula,
  inputCapacitorCurrentFormula,
  buckPhaseLossesFormula,
  electrothermalFixedPointFormula,
  voltageDividerFormula,
  senseFilterErrorFormula,
  errorBudgetFormula,
  traceCurrentFormula,
  traceWidthFormula,
  traceResistanceFormula,
  traceFusingCurrentFormula,
  wireFusingCurrentFormula,
  fuseRatingFormula,
  connectorCurrentFormula,
  voltageAtPowerFormula,
  liquidCapacitorLifeFormula,
  polymerCapacitorLifeFormula,
  agingFactorFormula,
  inductanceForRippleFormula,
  onTimeFormula,
  stackedSenseCheckFormula,
  phaseSharingFormula,
  converterEfficiencyFormula,
  onResistanceFormula,
  supplyDroopFormula,
  sourceResistanceFormula,
  resistorToStackFormula,
  lossFromEfficiencyFormula,
  fuseSteadyCurrentFormula,
  millerOverlapLossFormula,
  outputRippleFormula,
  outputCapacitorCurrentFormula,
  capacitorLossFormula,
  inputCapacitanceFormula,
  traceRiseFormula,
  traceRiseCurrentFormula,
];
