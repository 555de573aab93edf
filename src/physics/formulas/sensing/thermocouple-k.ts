import { typeK } from '../../sensing/thermocouple-k.ts';
import { thermocoupleTemperatureFormula, thermocoupleVoltageFormula } from './thermocouple.ts';

const source = 'NIST Monograph 175 (1993), table of type K, reference junctions at 0 °C';

export const thermocoupleKFormula = thermocoupleTemperatureFormula(typeK, {
  inputs: { voltage: '4.096 mV', reference: '0 °C' },
  result: { temperature: '100 °C' },
  source,
  tolerance: 5e-5,
});

export const thermocoupleKVoltageFormula = thermocoupleVoltageFormula(typeK, {
  inputs: { temperature: '100 °C', reference: '0 °C' },
  result: { voltage: '4.096 mV' },
  source,
  tolerance: 2e-4,
});
