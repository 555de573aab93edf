import type { Formula } from '../formula.ts';
import { electrochemicalEquivalentFormula } from './chemistry/electrochemical-equivalent.ts';
import { platedMassFormula } from './chemistry/plated-mass.ts';
import { platingChargeFormula } from './chemistry/plating-charge.ts';
import { platingCurrentFormula } from './chemistry/plating-current.ts';
import { platingThicknessFormula } from './chemistry/plating-thickness.ts';
import { platingTimeFormula } from './chemistry/plating-time.ts';

/** Plating by Faraday's law, in the order of the work. */
export const chemistryFormulas: readonly Formula[] = [
  platingThicknessFormula,
  platingTimeFormula,
  platingChargeFormula,
  platingCurrentFormula,
  platedMassFormula,
  electrochemicalEquivalentFormula,
];
