import type { Formula } from '../formula.ts';
import { buckPhaseLossesFormula } from './power-path/buck-phase-losses.ts';
import { deratedRatingFormula } from './power-path/derated-rating.ts';
import { electrothermalFixedPointFormula } from './power-path/electrothermal-fixed-point.ts';
import { inductorRippleFormula } from './power-path/inductor-ripple.ts';
import { inputCapacitorCurrentFormula } from './power-path/input-capacitor-current.ts';
import { parallelResistanceFormula } from './power-path/parallel-resistance.ts';
import { ratedCurrentFormula } from './power-path/rated-current.ts';
import { senseDividerGainFormula } from './power-path/sense-divider-gain.ts';
import { senseRealPowerFormula } from './power-path/sense-real-power.ts';
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
];
