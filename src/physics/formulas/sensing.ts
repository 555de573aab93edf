import type { Formula } from '../formula.ts';
import { adcAveragedUncertaintyFormula } from './sensing/adc-averaged-uncertainty.ts';
import { adcSignalToNoiseFormula } from './sensing/adc-signal-to-noise.ts';
import { adcVoltageFormula } from './sensing/adc-voltage.ts';
import { calibrationTwoPointFormula } from './sensing/calibration-two-point.ts';
import { fourWireResistanceFormula } from './sensing/four-wire-resistance.ts';
import { lowPassGainFormula } from './sensing/low-pass-gain.ts';
import { ntcBetaFormula } from './sensing/ntc-beta.ts';
import { ntcBetaBetweenFormula } from './sensing/ntc-beta-between.ts';
import { ntcBetaResistanceFormula } from './sensing/ntc-beta-resistance.ts';
import { ntcCoefficientsFormula } from './sensing/ntc-coefficients.ts';
import { ntcDividerFormula } from './sensing/ntc-divider.ts';
import { ntcSteinhartHartFormula } from './sensing/ntc-steinhart-hart.ts';
import { ntcSteinhartHartResistanceFormula } from './sensing/ntc-steinhart-hart-resistance.ts';
import { offsetCompensatedResistanceFormula } from './sensing/offset-compensated-resistance.ts';
import { powerStageTemperatureFormula } from './sensing/power-stage-temperature.ts';
import { rcSettlingFormula } from './sensing/rc-settling.ts';
import { rtdResistanceFormula } from './sensing/rtd-resistance.ts';
import { rtdTemperatureFormula } from './sensing/rtd-temperature.ts';
import { selfHeatingFormula } from './sensing/self-heating.ts';
import { settlingErrorFormula } from './sensing/settling-error.ts';
import { shuntCurrentFormula } from './sensing/shunt-current.ts';
import { thermocoupleEFormula, thermocoupleEVoltageFormula } from './sensing/thermocouple-e.ts';
import { thermocoupleJFormula, thermocoupleJVoltageFormula } from './sensing/thermocouple-j.ts';
import { thermocoupleKFormula, thermocoupleKVoltageFormula } from './sensing/thermocouple-k.ts';
import { thermocoupleNFormula, thermocoupleNVoltageFormula } from './sensing/thermocouple-n.ts';
import { thermocoupleTFormula, thermocoupleTVoltageFormula } from './sensing/thermocouple-t.ts';

/** From the sensor to the value. */
export const sensingFormulas: readonly Formula[] = [
  thermocoupleKFormula,
  thermocoupleTFormula,
  thermocoupleJFormula,
  thermocoupleEFormula,
  thermocoupleNFormula,
  thermocoupleKVoltageFormula,
  thermocoupleTVoltageFormula,
  thermocoupleJVoltageFormula,
  thermocoupleEVoltageFormula,
  thermocoupleNVoltageFormula,
  rtdTemperatureFormula,
  rtdResistanceFormula,
  ntcDividerFormula,
  ntcBetaFormula,
  ntcSteinhartHartFormula,
  ntcCoefficientsFormula,
  selfHeatingFormula,
  powerStageTemperatureFormula,
  adcVoltageFormula,
  rcSettlingFormula,
  shuntCurrentFormula,
  fourWireResistanceFormula,
  calibrationTwoPointFormula,
  adcAveragedUncertaintyFormula,
  adcSignalToNoiseFormula,
  lowPassGainFormula,
  settlingErrorFormula,
  ntcBetaResistanceFormula,
  ntcBetaBetweenFormula,
  ntcSteinhartHartResistanceFormula,
  offsetCompensatedResistanceFormula,
];
