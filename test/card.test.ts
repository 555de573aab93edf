import { describe, expect, test } from 'vitest';
import { runCheck } from '../src/cli/check.ts';
import { planStep } from '../src/steps/plan.ts';
import { exampleStudy, solvedStep, stackedByHand } from './example-study.test-data.ts';

const study = exampleStudy('card');
const ids = study.steps.map(({ id }) => id);
const solved = (step: string, changed: Record<string, number> = {}) => solvedStep(study, step, changed);
type Results = ReturnType<typeof solved>;

/** What flows into the board behind each sense point [W], from its voltage and current. */
const flow = (of: Results, sense: string) => of(`parts.${sense}.voltage`) * of(`parts.${sense}.current`);

describe('the ladder of the card', () => {
  test('reads without a fault', async () => {
    const { exit, json } = await runCheck('examples/card');
    expect(exit).toBe(0);
    expect((json as { warnings: unknown[] }).warnings).toEqual([]);
  });

  test('every step is held by the one limiter and takes more real power; at the last one the slot binds', () => {
    const binding: string[] = [];
    let before = 0;
    for (const id of ids) {
      const plan = planStep(study, id, { samples: 0, seed: 1 });
      expect(plan.faults).toEqual([]);
      expect(plan.operating?.holder).toBe('board-limit');
      expect(plan.limiters[0].real.value).toBeGreaterThan(before + 10);
      before = plan.limiters[0].real.value;
      binding.push(plan.binding!);
      expect(plan.open.map((open) => open.id)).toEqual([
        'parts.slot.over-current',
        'parts.core-slot.rated-current',
        'parts.core-cable.rated-current',
      ]);
    }
    expect(binding).toEqual(['heat.nodes.memory.limit', 'heat.nodes.memory.limit', 'parts.slot.rated-current']);
    expect(before).toBeGreaterThan(195);
    expect(before).toBeLessThan(205);
  });

  test('drawn: the slot is exceeded about as likely as not at the last step, and every draw has a steady state', () => {
    const plan = planStep(study, 'slot-point', { samples: 512, seed: 1 });
    expect(plan.binding).toBe('parts.slot.rated-current');
    expect(plan.sampling?.failed).toBe(0);
    const { exceed } = plan.margins.find(({ id }) => id === 'parts.slot.rated-current')!;
    expect(exceed.value).toBeGreaterThan(0.3);
    expect(exceed.value).toBeLessThan(0.6);
  });
});

describe('figures worked by hand', () => {
  test('the sum of three readings is what is allowed; each reads its own flow times R effective over R assumed', () => {
    const assumed: Record<string, number> = { 'slot-sense': 5e-3, 'cable-sense': 2e-3, 'memory-sense': 5e-3 };
    for (const id of ids) {
      const of = solved(id);
      let [reads, real] = [0, 0];
      for (const [sense, ohms] of Object.entries(assumed)) {
        reads += (flow(of, sense) * of(`parts.${sense}.effective-resistance`)) / ohms;
        real += flow(of, sense);
      }
      expect(reads).toBeCloseTo(170, 6);
      expect(of('limiters.board-limit.reads')).toBeCloseTo(170, 6);
      expect(of('limiters.board-limit.real')).toBeCloseTo(real, 9);
    }
  });

  test('the first change is on the cable’s point only: 10 mΩ on 2 mΩ, and what is read too little there flows more', () => {
    const [earlier, later] = [solved('as-delivered'), solved('cable-point')];
    const board = later('heat.nodes.board.temperature');
    const effective = stackedByHand({ at20: 2e-3, joint: 0.05e-3 }, { at20: 10e-3, joint: 0.12e-3 }, 75e-6, board);
    expect(later('parts.cable-sense.effective-resistance') / effective).toBeCloseTo(1, 9);
    // The joints alone make the slot's and the memory's points read 1.6 % too much; warmth adds some tenths of a per cent.
    for (const sense of ['slot-sense', 'memory-sense']) {
      const plain = 5e-3 * (1 + 75e-6 * (board - 293.15)) + 0.08e-3;
      expect(later(`parts.${sense}.effective-resistance`) / plain).toBeCloseTo(1, 9);
      expect(earlier(`parts.${sense}.effective-resistance`) / plain).toBeCloseTo(1, 3);
    }
  });

  test('the slot gives a third of what the core gains, though only the cable’s point was changed', () => {
    const [earlier, later] = [solved('as-delivered'), solved('cable-point')];
    const gained = (part: string) => later(`parts.${part}.power`) - earlier(`parts.${part}.power`);
    const [slot, cable] = [gained('core-slot'), gained('core-cable')];
    expect(slot + cable).toBeGreaterThan(10);
    expect(slot / (slot + cable)).toBeCloseTo(3 / 9, 6);
    expect(later('parts.slot.current')).toBeGreaterThan(earlier('parts.slot.current') + 0.3);
  });

  test('both halves of the core are one rail: same voltage, same current in every phase', () => {
    for (const id of ids) {
      const of = solved(id);
      expect(of('parts.core-vr-slot.voltage')).toBe(of('parts.core-vr-cable.voltage'));
      expect(of('parts.core-vr-slot.phase-current') / of('parts.core-vr-cable.phase-current')).toBeCloseTo(1, 9);
    }
  });

  test('the core’s voltage is one number for both: shifted by what they share, they stay together', () => {
    const of = solved('slot-point', { 'shared.core-voltage.factor': 1.015 });
    expect(of('parts.core-vr-slot.voltage')).toBe(of('parts.core-vr-cable.voltage'));
    expect(of('parts.core-vr-slot.voltage')).toBeGreaterThan(solved('slot-point')('parts.core-vr-slot.voltage'));
  });

  test('energy: what both inputs give is what all parts behind them turn into heat, and from the wall all of it leaves', () => {
    const inputs = ['slot', 'cable'];
    const behind = Object.keys(study.steps[0].board.parts).filter((part) => !inputs.includes(part));
    for (const id of ids) {
      const of = solved(id);
      const given = inputs.reduce((sum, part) => sum + of(`parts.${part}.power`), 0);
      const heat = behind.reduce((sum, part) => sum + of(`parts.${part}.loss`), 0);
      expect(heat / given).toBeCloseTo(1, 9);
      expect(given / 0.9 / of('wall-power')).toBeCloseTo(1, 9);
      expect(of('heat') / of('wall-power')).toBeCloseTo(1, 9);
    }
  });

  // PCI Express Card Electromechanical Specification, through published summaries: 75 W card, 12 V at 5.5 A and 3.3 V at 3 A; 2x4 connector 150 W, 13.5 A.
  test('slot and cable are rated as the open standard rates them', () => {
    const of = solved('slot-point');
    expect(of('parts.slot.rated-current.limit')).toBe(5.5);
    expect(of('parts.slot.rated-power.limit')).toBeCloseTo(12 * 5.5, 9);
    expect(of('parts.cable.rated-power.limit')).toBe(150);
    expect(of('parts.cable.rated-current.limit')).toBe(13.5);
    expect(of('limits.card-power.limit')).toBe(75 + 150);
  });

  test('the slot is the weaker input: its margin, as a share of its limit, is the smaller one at every step', () => {
    for (const id of ids) {
      const of = solved(id);
      const share = (part: string) =>
        of(`parts.${part}.rated-current.margin`) / of(`parts.${part}.rated-current.limit`);
      expect(share('slot')).toBeLessThan(share('cable'));
    }
  });

  test('the hottest place stands above the die’s mean by 0.12 K for each watt of the core', () => {
    for (const id of ids) {
      const of = solved(id);
      const above = of('heat.nodes.hot-spot.temperature') - of('heat.nodes.die.temperature');
      expect(above).toBeCloseTo(0.12 * (of('parts.core-slot.power') + of('parts.core-cable.power')), 6);
    }
  });

  test('fans a quarter faster take nearly twice the power: the study’s two figures keep to the fan laws', () => {
    const [earlier, later] = [solved('cable-point'), solved('slot-point')];
    // Affinity laws: flow as speed, power as its cube; 1.25³ = 1.953.
    expect(later('parts.fans.power') / earlier('parts.fans.power')).toBeCloseTo(1.25 ** 3, 1);
  });
});
