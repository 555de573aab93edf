import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planStep } from '../steps/plan.ts';
import { readStudy } from '../study/read.ts';
import { TurningBoard } from './turning-board.ts';

const reading = readStudy(
  readFileSync(new URL('../../examples/mini-pc/study.yaml', import.meta.url), 'utf8'),
  'study.yaml',
);
if (!reading.ok) throw new Error('the example has faults');
const { study } = reading;
const step = study.steps.at(-1)!;
const limiter = 'package-limit';
const dialled = (realPower: number) => planStep(study, step.id, { samples: 0, seed: 1, dial: { limiter, realPower } });
const board = new TurningBoard(step, limiter);

describe.each([40, 75, 105, 400])('a dial turned from 60 W to %i W', (power) => {
  const turned = board.turn(dialled(60), power)!;
  const whole = dialled(power);

  test('has the values of the whole solution at once', () => {
    expect(turned.operating!.holder).toBe(whole.operating!.holder);
    expect(turned.operating!.wallPower.value).toBeCloseTo(whole.operating!.wallPower.value, 6);
    for (const margin of whole.margins) {
      const fast = turned.margins.find(({ id }) => id === margin.id)!;
      expect(fast.margin.value).toBeCloseTo(margin.margin.value, 6);
      expect(fast.limit.value).toBeCloseTo(margin.limit.value, 6);
    }
    for (const [at, { reads, real, holds }] of whole.limiters.entries()) {
      expect(turned.limiters[at].reads.value).toBeCloseTo(reads.value, 6);
      expect(turned.limiters[at].real.value).toBeCloseTo(real.value, 6);
      expect(turned.limiters[at].holds).toBe(holds);
    }
  });

  test('is first order, and what binds is the margin most likely to be exceeded', () => {
    expect(turned.sampling).toBeNull();
    expect(turned.binding).toBe(turned.margins[0].id);
    expect(Math.max(...turned.margins.map(({ exceed }) => exceed.value))).toBe(turned.margins[0].exceed.value);
  });
});

test('turned to where it was, a plan keeps its uncertainties, intervals and probabilities', () => {
  const plan = dialled(80);
  const turned = board.turn(plan, 80)!;
  expect(turned.margins.map(({ id, interval, u }) => [id, interval.low.text, interval.high.text, u.text])).toEqual(
    plan.margins.map(({ id, interval, u }) => [id, interval.low.text, interval.high.text, u.text]),
  );
});

test('a plan without an operating point gives nothing to start from', () => {
  const plan = { ...dialled(60), operating: null, solution: null };
  expect(board.turn(plan, 50)).toBeNull();
});
