import { millerOverlapLoss } from '../../electrical/miller-overlap-loss.ts';
import type { Formula } from '../../formula.ts';

export const millerOverlapLossFormula: Formula = {
  name: 'miller-overlap-loss',
  title: 'loss from current and voltage overlapping, by the driver and the Miller capacitance',
  equation: 'P = U²·(I/2)·R·C·(1/(U_dr − U_th) + 1/U_th)·f',
  room: 'power path',
  inputs: [
    { name: 'input-voltage', symbol: 'U', title: 'input voltage', kind: 'voltage', unit: 'V', low: 0 },
    { name: 'current', symbol: 'I', title: 'current of the phase', kind: 'current', unit: 'A', low: 0 },
    { name: 'driver', symbol: 'R', title: 'resistance of the driver', kind: 'resistance', unit: 'Ω', low: 0 },
    { name: 'capacitance', symbol: 'C', title: 'Miller capacitance', kind: 'capacitance', unit: 'pF', low: 0 },
    { name: 'drive', symbol: 'U_dr', title: 'drive voltage', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    {
      name: 'plateau',
      symbol: 'U_th',
      title: 'gate voltage of the plateau',
      kind: 'voltage',
      unit: 'V',
      low: 0,
      lowOpen: true,
    },
    { name: 'frequency', symbol: 'f', title: 'switching frequency', kind: 'frequency', unit: 'kHz', low: 0 },
  ],
  outputs: [{ name: 'loss', title: 'overlap loss of the high side', kind: 'power', unit: 'W' }],
  source: 'Linear Technology, LTC3731 data sheet, page 23',
  requires: [{ says: 'the plateau lies below the drive voltage', holds: (x) => x[5] < x[4] }],
  valid: [
    {
      says: 'edges within a tenth of the switching period',
      holds: (x) => x[2] * x[3] * (1 / (x[4] - x[5]) + 1 / x[5]) * x[0] * x[6] <= 0.1,
    },
  ],
  example: {
    inputs: {
      'input-voltage': '20 V',
      current: '15 A',
      driver: '2 Ω',
      capacitance: '1000 pF',
      drive: '5 V',
      plateau: '1.8 V',
      frequency: '400 kHz',
    },
    result: { loss: '2.0833 W' },
    source: 'Linear Technology, LTC3731 data sheet, page 23, worked out independently',
    tolerance: 3e-5,
  },
  compute(x, y) {
    y[0] = millerOverlapLoss(x[0], x[1], x[2], x[3], x[4], x[5], x[6]);
    return 'solved';
  },
};
