import { expect, test } from 'vitest';
import { pitchDiameter } from './thread.ts';
import { looseningArm, tighteningArm } from './tightening-torque.ts';

const flank = Math.PI / 6;

test('without friction a turn of work lifts by the lead, and the screw runs back by itself', () => {
  expect(2 * Math.PI * tighteningArm(0.5e-3, 2.675e-3, 0, flank, 0, 4e-3)).toBeCloseTo(0.5e-3, 15);
  expect(2 * Math.PI * looseningArm(0.5e-3, 2.675e-3, 0, flank, 0, 4e-3)).toBeCloseTo(-0.5e-3, 15);
});

test('a thread stays tight by itself from the friction of its own slope on', () => {
  const slope = 0.5e-3 / (Math.PI * 2.675e-3);
  const friction = slope * Math.cos(flank);
  expect(looseningArm(0.5e-3, 2.675e-3, friction, flank, 0, 4e-3)).toBeCloseTo(0, 12);
});

// VDI 2230-1 writes F·(0.16·P + 0.58·d2·μ + μh·dh/2).
test.each([
  ['M2', 2, 0.4, 0.12],
  ['M2.5', 2.5, 0.45, 0.15],
  ['M3', 3, 0.5, 0.1],
])('%s: within 2 %% of the shorter form of VDI 2230', (_, diameter, pitch, friction) => {
  const d2 = pitchDiameter(diameter, pitch);
  const head = 1.5 * diameter;
  const short = 0.16 * pitch + 0.58 * d2 * friction + (friction * head) / 2;
  expect(Math.abs(tighteningArm(pitch, d2, friction, flank, friction, head) / short - 1)).toBeLessThan(0.02);
});
