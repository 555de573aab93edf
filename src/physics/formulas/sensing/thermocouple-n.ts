import { typeN } from '../../sensing/thermocouple-n.ts';
import { thermocoupleTemperatureFormula, thermocoupleVoltageFormula } from './thermocouple.ts';

const source = 'NIST Monograph 175 (1993), table of type N, reference junctions at 0 °C';

export const thermocoupleNFormula = thermocoupleTemperatureFormula(typeN, {
  inputs: { voltage: '20.613 mV', reference: '0 °C' },
  result: { temperature: '600 °C' },
  source,
  tolerance: 5e-5,
});

export const thermocoupleNVoltageFormula = thermocoupleVoltageFormula(typeN, {
  inputs: { temperature: '600 °C', reference: '0 °C' },
  result: { voltage: '20.613 mV' },
  source,
  tolerance: 2e-4,
});
