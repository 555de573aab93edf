import type { Formula } from './formula.ts';
import { buckPhaseLossesFormula } from './formulas/buck-phase-losses.ts';
import { deratedRatingFormula } from './formulas/derated-rating.ts';
import { electrothermalFixedPointFormula } from './formulas/electrothermal-fixed-point.ts';
import { inductorRippleFormula } from './formulas/inductor-ripple.ts';
import { inputCapacitorCurrentFormula } from './formulas/input-capacitor-current.ts';
import { parallelResistanceFormula } from './formulas/parallel-resistance.ts';
import { ratedCurrentFormula } from './formulas/rated-current.ts';
import { senseDividerGainFormula } from './formulas/sense-divider-gain.ts';
import { senseRealPowerFormula } from './formulas/sense-real-power.ts';
import { wireResistanceFormula } from './formulas/wire-resistance.ts';

/** Every formula there is, in the order of the work. */
export const catalogue: readonly Formula[] = [
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
];
