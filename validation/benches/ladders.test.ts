import { expect, test } from 'vitest';
import { full, keep, type LadderResult, share } from './campaigns.ts';
import { climb, type Rung } from './ladder.ts';

/** Room that counts as safe with margin, as a share of the limit [1]. */
const rooms = [0, 0.05, 0.1];

test('climbing by the verdicts exceeds no limit, and most of what is safe is allowed', { timeout: 7_200_000 }, () => {
  const ladders = full ? 2000 : 10;
  const rungs: (Rung & { readonly seed: number })[] = [];
  for (let seed = 1; seed <= ladders; seed++)
    rungs.push(...climb(seed, true, full ? 2000 : 500).map((rung) => ({ ...rung, seed })));
  const went = rungs.filter(({ verdict }) => verdict === 'go');
  const exceeding = went.filter(({ room }) => room === null || room < 0);
  const closest = went.filter((rung) => !exceeding.includes(rung)).sort((one, other) => one.room! - other.room!);
  const result: LadderResult = {
    ladders,
    rungs: rungs.length,
    exceeded: { of: ladders, count: new Set(exceeding.map(({ seed }) => seed)).size },
    allowed: Object.fromEntries(
      rooms.map((least) => {
        const safe = rungs.filter(({ room }) => room !== null && room >= least);
        const allowed = safe.filter(({ verdict }) => verdict === 'go');
        return [`${100 * least}`, { of: safe.length, count: allowed.length }];
      }),
    ),
    worst: [...exceeding, ...closest.slice(0, 5)].map(describe),
  };
  keep({ ladders: result });
  expect(went.length).toBeGreaterThan(0);
  expect(share(result.exceeded)).toBeLessThanOrEqual(full ? 0.002 : 0.1);
  expect(share(result.allowed['10'])).toBeGreaterThanOrEqual(full ? 0.8 : 0.5);
});

function describe({ seed, step, room, closest, together }: Rung & { readonly seed: number }): string {
  const truly = room === null ? 'no steady state' : `${(100 * room).toFixed(1)} % of room to ${closest}`;
  return `bench ${seed}, ${step}: ${truly}; the gate had ${((together ?? 1) * 100).toFixed(2)} % for exceeding any limit`;
}
