import { buckDuty } from '../../electrical/buck-duty.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../../electrical/buck-losses.ts';
import { inductorRipple } from '../../electrical/buck-ripple.ts';
import { onResistanceAt } from '../../electrical/on-resistance.ts';
import type { Formula } from '../../formula.ts';

const positive = { low: 0, lowOpen: true } as const;
const notNegative = { low: 0 } as const;

export const buckPhaseLossesFormula: Formula = {
  name: 'buck-phase-losses',
  title: 'losses of one phase of a synchronous buck converter',
  equation:
    'P = (I² + ΔI²/12)·(R_H(T)·D + R_L(T)·(1 − D) + R_W) + ½·U_in·I·t_s·f + ½·Q_oss·U_in·f + Q_rr·U_in·f + Q_g·U_d·f + U_F·I·t_d·f + P_core, R(T) = R·(1 + α·(T − 25 °C)), D = U_out/U_in',
  room: 'power path',
  inputs: [
    { name: 'input-voltage', symbol: 'U_in', title: 'input voltage', kind: 'voltage', unit: 'V', ...positive },
    { name: 'output-voltage', symbol: 'U_out', title: 'output voltage', kind: 'voltage', unit: 'V', ...positive },
    { name: 'current', symbol: 'I', title: 'average current of the phase', kind: 'current', unit: 'A', ...notNegative },
    { name: 'inductance', symbol: 'L', title: 'at the working current', kind: 'inductance', unit: 'nH', ...positive },
    { name: 'frequency', symbol: 'f', title: 'switching frequency', kind: 'frequency', unit: 'kHz', ...positive },
    { name: 'high-side', symbol: 'R_H', title: 'high side at 25 °C', kind: 'resistance', unit: 'mΩ', ...notNegative },
    { name: 'low-side', symbol: 'R_L', title: 'low side at 25 °C', kind: 'resistance', unit: 'mΩ', ...notNegative },
    {
      name: 'on-coefficient',
      symbol: 'α',
      title: 'of both on-resistances, from 25 °C',
      kind: 'temperature-coefficient',
      unit: '1/K',
    },
    { name: 'junction', symbol: 'T', title: 'junction temperature', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'switching-time', symbol: 't_s', title: 'rise plus fall time', kind: 'time', unit: 'ns', ...notNegative },
    {
      name: 'output-charge',
      symbol: 'Q_oss',
      title: 'output charge of both switches',
      kind: 'charge',
      unit: 'nC',
      ...notNegative,
    },
    {
      name: 'recovery-charge',
      symbol: 'Q_rr',
      title: 'reverse recovery charge of the low side',
      kind: 'charge',
      unit: 'nC',
      ...notNegative,
    },
    {
      name: 'gate-charge',
      symbol: 'Q_g',
      title: 'gate charge of both switches',
      kind: 'charge',
      unit: 'nC',
      ...notNegative,
    },
    { name: 'drive-voltage', symbol: 'U_d', title: 'gate drive voltage', kind: 'voltage', unit: 'V', ...notNegative },
    {
      name: 'dead-time',
      symbol: 't_d',
      title: 'both dead times of one period',
      kind: 'time',
      unit: 'ns',
      ...notNegative,
    },
    { name: 'diode-voltage', symbol: 'U_F', title: 'body diode drop', kind: 'voltage', unit: 'V', ...notNegative },
    {
      name: 'winding',
      symbol: 'R_W',
      title: 'inductor winding at its temperature',
      kind: 'resistance',
      unit: 'mΩ',
      ...notNegative,
    },
    { name: 'core', symbol: 'P_core', title: 'inductor core loss', kind: 'power', unit: 'mW', ...notNegative },
  ],
  outputs: [
    { name: 'total', title: 'loss of the phase', kind: 'power', unit: 'W' },
    { name: 'stage', title: 'in the switches', kind: 'power', unit: 'W' },
    { name: 'inductor', title: 'in the inductor', kind: 'power', unit: 'W' },
    { name: 'high-side-conduction', title: 'high side, conduction', kind: 'power', unit: 'mW' },
    { name: 'low-side-conduction', title: 'low side, conduction', kind: 'power', unit: 'mW' },
    { name: 'switching', title: 'switching overlap', kind: 'power', unit: 'mW' },
    { name: 'output-charging', title: 'output charge', kind: 'power', unit: 'mW' },
    { name: 'recovery', title: 'reverse recovery', kind: 'power', unit: 'mW' },
    { name: 'gate', title: 'gate drive', kind: 'power', unit: 'mW' },
    { name: 'dead-time-conduction', title: 'body diode in the dead times', kind: 'power', unit: 'mW' },
  ],
  source:
    'ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021; recovery and output charge: International Rectifier, IRF7832 data sheet',
  requires: [
    { says: 'the output voltage lies below the input voltage', holds: (x) => x[1] < x[0] },
    { says: 'the on-resistance is not negative at this temperature', holds: (x) => 1 + x[7] * (x[8] - 298.15) >= 0 },
  ],
  valid: [
    {
      says: 'continuous conduction: current above half the ripple',
      holds: (x) => x[2] >= inductorRipple(x[0], x[1], x[3], x[4]) / 2,
    },
    { says: 'junction from 25 °C to 150 °C', holds: (x) => x[8] >= 298.15 && x[8] <= 423.15 },
  ],
  example: {
    inputs: {
      'input-voltage': '12 V',
      'output-voltage': '5 V',
      current: '3 A',
      inductance: '4.7 µH',
      frequency: '1 MHz',
      'high-side': '100 mΩ',
      'low-side': '70 mΩ',
      'on-coefficient': '0.005 1/K',
      junction: '25 °C',
      'switching-time': '10 ns',
      'output-charge': '1.92 nC',
      'recovery-charge': '3.75 nC',
      'gate-charge': '2 nC',
      'drive-voltage': '5 V',
      'dead-time': '60 ns',
      'diode-voltage': '0.5 V',
      winding: '80 mΩ',
      core: '0 mW',
    },
    result: { 'high-side-conduction': '376 mW' },
    source: 'ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021, worked example',
    tolerance: 0.0015,
  },
  compute(x, y) {
    const ripple = inductorRipple(x[0], x[1], x[3], x[4]);
    const duty = buckDuty(x[0], x[1]);
    y[3] = conductionLoss(x[2], ripple, onResistanceAt(x[5], x[7], x[8]), duty);
    y[4] = conductionLoss(x[2], ripple, onResistanceAt(x[6], x[7], x[8]), 1 - duty);
    y[5] = switchingLoss(x[0], x[2], x[9], x[4]);
    y[6] = outputChargeLoss(x[10], x[0], x[4]);
    y[7] = recoveryLoss(x[11], x[0], x[4]);
    y[8] = gateLoss(x[12], x[13], x[4]);
    y[9] = deadTimeLoss(x[15], x[2], x[14], x[4]);
    y[1] = y[3] + y[4] + y[5] + y[6] + y[7] + y[8] + y[9];
    y[2] = conductionLoss(x[2], ripple, x[16], 1) + x[17];
    y[0] = y[1] + y[2];
    return 'solved';
  },
};
