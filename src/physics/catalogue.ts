import type { Formula } from './formula.ts';
import { heatPathFormulas } from './formulas/heat-path.ts';
import { powerPathFormulas } from './formulas/power-path.ts';

/** Every formula there is, in the order of the work. */
export const catalogue: readonly Formula[] = [...powerPathFormulas, ...heatPathFormulas];
