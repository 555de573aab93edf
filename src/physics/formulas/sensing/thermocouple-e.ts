import { typeE } from '../../sensing/thermocouple-e.ts';
import { thermocoupleTemperatureFormula, thermocoupleVoltageFormula } from './thermocouple.ts';

const source = 'NIST Monograph 175 (1993), table of type E, reference junctions at 0 °C';

export const thermocoupleEFormula = thermocoupleTemperatureFormula(typeE, {
  inputs: { voltage: '6.319 mV', reference: '0 °C' },
  result: { temperature: '100 °C' },
  source,
  tolerance: 5e-5,
});

export const thermocoupleEVoltageFormula = thermocoupleVoltageFormula(typeE, {
  inputs: { temperature: '100 °C', reference: '0 °C' },
  result: { voltage: '6.319 mV' },
  source,
  tolerance: 2e-4,
});
