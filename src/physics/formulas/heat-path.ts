import type { Formula } from '../formula.ts';
import { activeTipFinFormula } from './heat-path/active-tip-fin.ts';
import { airFlowFormula } from './heat-path/air-flow.ts';
import { airPropertiesFormula } from './heat-path/air-properties.ts';
import { annularFinEfficiencyFormula } from './heat-path/annular-fin-efficiency.ts';
import { bodyTimeConstantFormula } from './heat-path/body-time-constant.ts';
import { bondLineFormula } from './heat-path/bond-line.ts';
import { channelFilmFormula } from './heat-path/channel-film.ts';
import { coneResistanceFormula } from './heat-path/cone-resistance.ts';
import { contactConductanceFormula } from './heat-path/contact-conductance.ts';
import { finEfficiencyFormula } from './heat-path/fin-efficiency.ts';
import { finnedSurfaceFormula } from './heat-path/finned-surface.ts';
import { halfSpaceSpreadingFormula } from './heat-path/half-space-spreading.ts';
import { heatPipeCapillaryLimitFormula } from './heat-path/heat-pipe-capillary-limit.ts';
import { heatPipeConductivityFormula } from './heat-path/heat-pipe-conductivity.ts';
import { heatPipeResistanceFormula } from './heat-path/heat-pipe-resistance.ts';
import { isothermalDiscFormula } from './heat-path/isothermal-disc.ts';
import { junctionFromCaseFormula } from './heat-path/junction-from-case.ts';
import { junctionFromSurfaceFormula } from './heat-path/junction-from-surface.ts';
import { junctionOverHeatSinkFormula } from './heat-path/junction-over-heat-sink.ts';
import { layerResistanceFormula } from './heat-path/layer-resistance.ts';
import { levelCylinderHeatFormula } from './heat-path/level-cylinder-heat.ts';
import { levelPlateConvectionFormula } from './heat-path/level-plate-convection.ts';
import { pinFinEfficiencyFormula } from './heat-path/pin-fin-efficiency.ts';
import { plateFilmFormula } from './heat-path/plate-film.ts';
import { radiatedHeatFormula } from './heat-path/radiated-heat.ts';
import { radiationBetweenSurfacesFormula } from './heat-path/radiation-between-surfaces.ts';
import { spreadingDiscFormula } from './heat-path/spreading-disc.ts';
import { spreadingRectangleFormula } from './heat-path/spreading-rectangle.ts';
import { spreadingResistanceFormula } from './heat-path/spreading-resistance.ts';
import { surfaceStepFormula } from './heat-path/surface-step.ts';
import { tubeFilmFormula } from './heat-path/tube-film.ts';
import { tubeWallResistanceFormula } from './heat-path/tube-wall-resistance.ts';
import { uprightPlateConvectionFormula } from './heat-path/upright-plate-convection.ts';
import { warmingFormula } from './heat-path/warming.ts';

/** From the junction to the air, in the order of the work. */
export const heatPathFormulas: readonly Formula[] = [
  layerResistanceFormula,
  tubeWallResistanceFormula,
  junctionOverHeatSinkFormula,
  bondLineFormula,
  contactConductanceFormula,
  coneResistanceFormula,
  spreadingResistanceFormula,
  spreadingDiscFormula,
  spreadingRectangleFormula,
  halfSpaceSpreadingFormula,
  isothermalDiscFormula,
  finEfficiencyFormula,
  pinFinEfficiencyFormula,
  annularFinEfficiencyFormula,
  activeTipFinFormula,
  finnedSurfaceFormula,
  plateFilmFormula,
  channelFilmFormula,
  tubeFilmFormula,
  uprightPlateConvectionFormula,
  levelPlateConvectionFormula,
  levelCylinderHeatFormula,
  radiatedHeatFormula,
  radiationBetweenSurfacesFormula,
  airFlowFormula,
  airPropertiesFormula,
  heatPipeResistanceFormula,
  heatPipeConductivityFormula,
  heatPipeCapillaryLimitFormula,
  junctionFromSurfaceFormula,
  junctionFromCaseFormula,
  bodyTimeConstantFormula,
  warmingFormula,
  surfaceStepFormula,
];
