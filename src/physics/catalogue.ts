import type { Formula } from './formula.ts';
import { chemistryFormulas } from './formulas/chemistry.ts';
import { heatPathFormulas } from './formulas/heat-path.ts';
import { mechanicsFormulas } from './formulas/mechanics.ts';
import { powerPathFormulas } from './formulas/power-path.ts';
import { sensingFormulas } from './formulas/sensing.ts';

/** Every formula there is, in the order of the work. */
export const catalogue: readonly Formula[] = [
  ...powerPathFormulas,
  ...heatPathFormulas,
  ...mechanicsFormulas,
  ...chemistryFormulas,
  ...sensingFormulas,
];
