import { expect, test } from 'vitest';
import { adviseGate } from './gate-advice.ts';
import { gateOnLadder } from './gate-ladder.ts';
import { baseline, gateStudy, gateWindow } from './gate-study.test-data.ts';

const options = { samples: 4000, seed: 1 };
const air = (degrees: number) => `{air: {of: heat.nodes.ambient.temperature, under: ${degrees} degC, reason: test}}`;
const second = gateWindow('second', 'up', 30, 55);

test('a step below without a go holds all above it, by name and with its reason', () => {
  // At the first step one load was run, whatever came later.
  const [, full] = baseline;
  const { verdict, reasons } = gateOnLadder(gateStudy(), 'further', { windows: [full, second] }, options);
  expect(verdict).toBe('hold');
  expect(reasons[0]).toMatchObject({ code: 'gate/no-go-before', data: { before: 'up', step: 'further' } });
  expect(reasons[0].data.reason).toContain('one load');
});

test('a ladder of goes is a go; without a run there is no word about the steps below', () => {
  expect(gateOnLadder(gateStudy(), 'further', { windows: [...baseline, second] }, options).verdict).toBe('go');
  const { reasons } = gateOnLadder(gateStudy(), 'further', { windows: [] }, options);
  expect(reasons.map(({ code }) => code)).toEqual(['gate/nothing-measured']);
});

test('a check at a small load that isn’t ticked holds the step above it only', () => {
  const record = { windows: [...baseline, second], lowLoadChecked: new Map([['up', false]]) };
  const codes = (step: string) => gateOnLadder(gateStudy(), step, record, options).reasons.map(({ code }) => code);
  expect(codes('up')).toEqual([]);
  expect(codes('further')).toEqual(['gate/low-load']);
});

test('the advice beside a limit starts from the counted probability and says where it falls to', () => {
  const study = gateStudy({ limits: air(29) });
  const verdict = gateOnLadder(study, 'up', { windows: [] }, options);
  const { measurement, now, after, enough } = adviseGate(study, 'up', verdict, null).get('limits.air')!;
  // Two standard deviations of 2 K away: 2.275 % (NIST/SEMATECH 1.3.6.7.1).
  expect(now).toBeCloseTo(0.02275, 3);
  expect(measurement!.uNow.value).toBeCloseTo(2, 1);
  // 4 K less some tenths of a kelvin of uncertainty.
  expect(measurement!.uAfter.value).toBeLessThan(1);
  expect(after).toBeLessThan(1e-4);
  expect(enough).toBe(true);
});

test('no measurement is advised where the best value itself is beyond the limit', () => {
  const study = gateStudy({ limits: air(24) });
  const verdict = gateOnLadder(study, 'up', { windows: [] }, options);
  expect(adviseGate(study, 'up', verdict, null).get('limits.air')).toMatchObject({ measurement: null, enough: false });
});

test('where only all together are too likely, the advice is about the likeliest', () => {
  // 0.6 % and 0.5 % of independent margins, 1 % allowed for both.
  const limits = `{air: {of: heat.nodes.ambient.temperature, under: 30 degC, reason: test}, draw: {of: parts.small.current, under: 0.1258 A, reason: test}}`;
  const study = gateStudy({ limits, gate: 'gate: {together: 1 %, unwatched: 1 %}' });
  const verdict = gateOnLadder(study, 'up', { windows: [] }, options);
  expect(verdict.reasons.map(({ code }) => code)).toEqual(['gate/nothing-measured', 'gate/too-likely-together']);
  expect([...adviseGate(study, 'up', verdict, null).keys()]).toEqual(['limits.air']);
});
