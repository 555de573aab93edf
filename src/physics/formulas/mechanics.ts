import type { Formula } from '../formula.ts';
import { diePressureFormula } from './mechanics/die-pressure.ts';
import { flatSpringRateFormula } from './mechanics/flat-spring-rate.ts';
import { padCompressionFormula } from './mechanics/pad-compression.ts';
import { plateTiltFormula } from './mechanics/plate-tilt.ts';
import { preloadTorqueFormula } from './mechanics/preload-torque.ts';
import { rodStiffnessFormula } from './mechanics/rod-stiffness.ts';
import { screwStressFormula } from './mechanics/screw-stress.ts';
import { seriesStiffnessFormula } from './mechanics/series-stiffness.ts';
import { springRateFormula } from './mechanics/spring-rate.ts';
import { stackUpFormula } from './mechanics/stack-up.ts';
import { torquePreloadFormula } from './mechanics/torque-preload.ts';

/** Plate, pads and screws, in the order of the work. */
export const mechanicsFormulas: readonly Formula[] = [
  stackUpFormula,
  padCompressionFormula,
  torquePreloadFormula,
  preloadTorqueFormula,
  screwStressFormula,
  springRateFormula,
  flatSpringRateFormula,
  rodStiffnessFormula,
  seriesStiffnessFormula,
  plateTiltFormula,
  diePressureFormula,
];
