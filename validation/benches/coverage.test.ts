import { expect, test } from 'vitest';
import { type CoverageResult, full, keep, share } from './campaigns.ts';
import { type PredictedName, playNextStep, predicted } from './coverage.ts';
import { plants } from './plant.ts';

const hours = 3_600_000;

/** Plays the benches with seeds 1 to `benches`. */
function campaign(benches: number, departing: boolean): CoverageResult {
  const names = Object.keys(predicted) as PredictedName[];
  const inside = Object.fromEntries(names.map((name) => [name, 0]));
  const squares = Object.fromEntries(names.map((name) => [name, 0]));
  let withoutResult = 0;
  let falseAlarms = 0;
  for (let seed = 1; seed <= benches; seed++) {
    const { outcomes, misfit } = playNextStep(seed, departing);
    if (misfit) falseAlarms++;
    if (!outcomes) {
      withoutResult++;
      continue;
    }
    for (const name of names) {
      if (outcomes[name].inside) inside[name]++;
      squares[name] += outcomes[name].size ** 2;
    }
  }
  const of = benches - withoutResult;
  return {
    benches,
    withoutResult,
    falseAlarms,
    inside: Object.fromEntries(names.map((name) => [name, { of, count: inside[name] }])),
    size: Object.fromEntries(names.map((name) => [name, Number(Math.sqrt(squares[name] / of).toFixed(2))])),
  };
}

test('the next step’s truth lies inside the predicted 95 % interval as often as it should', { timeout: hours }, () => {
  const benches = full ? 1000 : 12;
  const coverage = {
    'as the tool has it': campaign(benches, false),
    'with what the tool leaves out': campaign(benches, true),
  };
  keep({ coverage });
  for (const { inside, withoutResult } of Object.values(coverage)) {
    expect(withoutResult).toBeLessThanOrEqual(benches / 100);
    for (const count of Object.values(inside)) expect(share(count)).toBeGreaterThan(full ? 0.93 : 0.7);
  }
  if (full)
    for (const count of Object.values(coverage['as the tool has it'].inside)) expect(share(count)).toBeLessThan(0.97);
});

test('a planted fault is reported as a misfit', { timeout: hours }, () => {
  const benches = full ? 250 : 4;
  const planted = Object.fromEntries(
    Object.entries(plants).map(([kind, plant]) => {
      let count = 0;
      for (let seed = 1; seed <= benches; seed++) if (playNextStep(seed, true, plant).misfit) count++;
      return [kind, { of: benches, count }];
    }),
  );
  keep({ planted });
  for (const count of Object.values(planted)) expect(share(count)).toBeGreaterThanOrEqual(full ? 0.9 : 0.75);
});
