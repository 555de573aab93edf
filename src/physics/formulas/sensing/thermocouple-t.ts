import { typeT } from '../../sensing/thermocouple-t.ts';
import { thermocoupleTemperatureFormula, thermocoupleVoltageFormula } from './thermocouple.ts';

const source = 'NIST Monograph 175 (1993), table of type T, reference junctions at 0 °C';

export const thermocoupleTFormula = thermocoupleTemperatureFormula(typeT, {
  inputs: { voltage: '4.279 mV', reference: '0 °C' },
  result: { temperature: '100 °C' },
  source,
  tolerance: 5e-5,
});

export const thermocoupleTVoltageFormula = thermocoupleVoltageFormula(typeT, {
  inputs: { temperature: '100 °C', reference: '0 °C' },
  result: { voltage: '4.279 mV' },
  source,
  tolerance: 2e-4,
});
