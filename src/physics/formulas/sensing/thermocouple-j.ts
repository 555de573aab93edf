import { typeJ } from '../../sensing/thermocouple-j.ts';
import { thermocoupleTemperatureFormula, thermocoupleVoltageFormula } from './thermocouple.ts';

const source = 'NIST Monograph 175 (1993), table of type J, reference junctions at 0 °C';

export const thermocoupleJFormula = thermocoupleTemperatureFormula(typeJ, {
  inputs: { voltage: '5.269 mV', reference: '0 °C' },
  result: { temperature: '100 °C' },
  source,
  tolerance: 5e-5,
});

export const thermocoupleJVoltageFormula = thermocoupleVoltageFormula(typeJ, {
  inputs: { temperature: '100 °C', reference: '0 °C' },
  result: { voltage: '5.269 mV' },
  source,
  tolerance: 2e-4,
});
