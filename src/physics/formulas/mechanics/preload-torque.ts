import type { Formula } from '../../formula.ts';
import { pitchDiameter } from '../../mechanics/thread.ts';
import { looseningArm, tighteningArm } from '../../mechanics/tightening-torque.ts';

const positive = { low: 0, lowOpen: true } as const;
const flankAngle = Math.PI / 6;

export const preloadTorqueFormula: Formula = {
  name: 'preload-torque',
  title: 'torque for a preload, from pitch and friction, and the torque that loosens it',
  equation:
    'T = F·[(d2/2)·(P + π·μ·d2/cos 30°)/(π·d2 − μ·P/cos 30°) + μh·dh/2], d2 = d − 0.6495·P; loosening: the sign of P turned',
  room: 'plate and pads',
  inputs: [
    { name: 'preload', symbol: 'F', title: 'preload', kind: 'force', unit: 'N', low: 0 },
    { name: 'diameter', symbol: 'd', title: 'nominal diameter', kind: 'length', unit: 'mm', ...positive },
    { name: 'pitch', symbol: 'P', title: 'pitch', kind: 'length', unit: 'mm', ...positive },
    { name: 'thread-friction', symbol: 'μ', title: 'in the thread', kind: 'ratio', unit: '1', low: 0 },
    { name: 'head-friction', symbol: 'μh', title: 'under the head', kind: 'ratio', unit: '1', low: 0 },
    { name: 'head-diameter', symbol: 'dh', title: 'mean, under the head', kind: 'length', unit: 'mm', low: 0 },
  ],
  outputs: [
    { name: 'torque', title: 'tightening torque', kind: 'torque', unit: 'N·m' },
    { name: 'loosening', title: 'torque that loosens it', kind: 'torque', unit: 'N·m' },
    { name: 'nut-factor', title: 'nut factor that says the same', kind: 'ratio', unit: '1' },
  ],
  source: "Shigley's Mechanical Engineering Design, equation 8-26; VDI 2230-1; ISO 724 (pitch diameter)",
  requires: [
    { says: 'the pitch is less than half the diameter', holds: (x) => x[2] < x[1] / 2 },
    { says: 'the friction in the thread is below 1', holds: (x) => x[3] < 1 },
  ],
  valid: [
    { says: 'friction from 0.05 to 0.30', holds: (x) => Math.min(x[3], x[4]) >= 0.05 && Math.max(x[3], x[4]) <= 0.3 },
  ],
  example: {
    inputs: {
      preload: '20.7 kN',
      diameter: '8 mm',
      pitch: '1 mm',
      'thread-friction': '0.10',
      'head-friction': '0.10',
      'head-diameter': '10.315 mm',
    },
    result: { torque: '22.8 N·m' },
    source:
      'VDI 2230, 2001, table of preloads and torques, M8×1, class 8.8, as reprinted by a screw supplier; head of ISO 4014 on a hole of ISO 273 (from memory)',
    tolerance: 0.003,
  },
  compute(x, y) {
    const d2 = pitchDiameter(x[1], x[2]);
    const arm = tighteningArm(x[2], d2, x[3], flankAngle, x[4], x[5]);
    y[0] = x[0] * arm;
    y[1] = x[0] * looseningArm(x[2], d2, x[3], flankAngle, x[4], x[5]);
    y[2] = arm / x[1];
    return 'solved';
  },
};
