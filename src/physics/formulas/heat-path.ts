import type { Formula } from '../formula.ts';
import { airFlowFormula } from './heat-path/air-flow.ts';
import { airPropertiesFormula } from './heat-path/air-properties.ts';
import { annularFinEfficiencyFormula } from './heat-path/annular-fin-efficiency.ts';
import { bondLineFormula } from './heat-path/bond-line.ts';
import { finEfficiencyFormula } from './heat-path/fin-efficiency.ts';
import { heatPipeResistanceFormula } from './heat-path/heat-pipe-resistance.ts';
import { junctionFromCaseFormula } from './heat-path/junction-from-case.ts';
import { junctionFromSurfaceFormula } from './heat-path/junction-from-surface.ts';
import { junctionOverHeatSinkFormula } from './heat-path/junction-over-heat-sink.ts';
import { layerResistanceFormula } from './heat-path/layer-resistance.ts';
import { pinFinEfficiencyFormula } from './heat-path/pin-fin-efficiency.ts';
import { plateFilmFormula } from './heat-path/plate-film.ts';
import { radiatedHeatFormula } from './heat-path/radiated-heat.ts';
import { radiationBetweenSurfacesFormula } from './heat-path/radiation-between-surfaces.ts';
import { spreadingResistanceFormula } from './heat-path/spreading-resistance.ts';
import { tubeFilmFormula } from './heat-path/tube-film.ts';
import { uprightPlateConvectionFormula } from './heat-path/upright-plate-convection.ts';
import { warmingFormula } from './heat-path/warming.ts';

/** From the junction to the air, in the order of the work. */
export const heatPathFormulas: readonly Formula[] = [
  layerResistanceFormula,
  junctionOverHeatSinkFormula,
  bondLineFormula,
  spreadingResistanceFormula,
  finEfficiencyFormula,
  pinFinEfficiencyFormula,
  annularFinEfficiencyFormula,
  plateFilmFormula,
  tubeFilmFormula,
  uprightPlateConvectionFormula,
  radiatedHeatFormula,
  radiationBetweenSurfacesFormula,
  airFlowFormula,
  airPropertiesFormula,
  heatPipeResistanceFormula,
  junctionFromSurfaceFormula,
  junctionFromCaseFormula,
  warmingFormula,
];
