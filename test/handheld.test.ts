import { describe, expect, test } from 'vitest';
import { runCheck } from '../src/cli/check.ts';
import { usbPower, usbVoltages } from '../src/physics/electrical/usb-power.ts';
import { touchLimit } from '../src/physics/thermal/touch-temperature.ts';
import { planStep } from '../src/steps/plan.ts';
import { exampleStudy, solvedStep, stackedByHand } from './example-study.test-data.ts';

const study = exampleStudy('handheld');
const ids = study.steps.map(({ id }) => id);
const solved = (step: string, changed: Record<string, number> = {}) => solvedStep(study, step, changed);
const celsius = (kelvin: number) => kelvin - 273.15;

/** Resistor on top at each step: value at 20 °C and joint [Ω]. */
const onTop: Record<string, { at20: number; joint: number }> = {
  'stacked-33': { at20: 33e-3, joint: 0.2e-3 },
  'graphite-18': { at20: 18e-3, joint: 0.2e-3 },
  'fan-12': { at20: 12e-3, joint: 0.2e-3 },
};

describe('the ladder of the handheld', () => {
  test('reads without a fault', async () => {
    const { exit, json } = await runCheck('examples/handheld');
    expect(exit).toBe(0);
    expect((json as { warnings: unknown[] }).warnings).toEqual([]);
  });

  test('every step is held by the firmware, takes more real power than the one before, and is bound by the skin', () => {
    let before = 0;
    for (const id of ids) {
      const plan = planStep(study, id, { samples: 0, seed: 1 });
      expect(plan.faults).toEqual([]);
      expect(plan.operating?.holder).toBe('package-limit');
      expect(plan.binding).toBe('limits.skin-back');
      expect(plan.limiters[0].real.value).toBeGreaterThan(before + 3);
      before = plan.limiters[0].real.value;
    }
    expect(ids).toHaveLength(4);
    expect(before).toBeGreaterThan(26);
    expect(before).toBeLessThan(28);
  });

  test('drawn: the skin still binds at the last step, and every draw has a steady state', () => {
    const plan = planStep(study, 'fan-12', { samples: 512, seed: 1 });
    expect(plan.binding).toBe('limits.skin-back');
    expect(plan.sampling?.failed).toBe(0);
    expect(plan.margins.find(({ id }) => id === 'limits.skin-back')!.exceed.value).toBeGreaterThan(0.1);
  });

  test('what isn’t known is open: where the source switches off, the core’s rail, pulses of the battery', () => {
    for (const id of ids)
      expect(planStep(study, id, { samples: 0, seed: 1 }).open.map((open) => open.id)).toEqual([
        'parts.usb-source.over-current',
        'parts.core.rated-current',
        'limits.battery-pulse',
      ]);
  });
});

describe('figures worked by hand', () => {
  test('real power is what is allowed times R assumed over R effective', () => {
    expect(solved('as-delivered')('limiters.package-limit.real')).toBeCloseTo(
      (15 * 10e-3) /
        (10e-3 * (1 + 75e-6 * (celsius(solved('as-delivered')('heat.nodes.board.temperature')) - 20)) + 0.1e-3),
      9,
    );
    for (const [id, upper] of Object.entries(onTop)) {
      const of = solved(id);
      const effective = stackedByHand({ at20: 10e-3, joint: 0.1e-3 }, upper, 75e-6, of('heat.nodes.board.temperature'));
      expect(of('parts.package-sense.effective-resistance') / effective).toBeCloseTo(1, 9);
      expect(of('limiters.package-limit.reads')).toBeCloseTo(15, 6);
      expect(of('limiters.package-limit.real')).toBeCloseTo((15 * 10e-3) / effective, 6);
    }
    // Cold, on paper: 10.1 mΩ beside 33.2 mΩ is 7.744 mΩ, and 15 W·10/7.744 is 19.37 W.
    expect(solved('stacked-33')('limiters.package-limit.real')).toBeCloseTo(19.37, 0);
  });

  test('energy: what the source gives is what all parts behind it turn into heat, and from the wall all of it leaves', () => {
    for (const id of ids) {
      const of = solved(id);
      const parts = Object.keys(study.steps[0].board.parts);
      const behind = parts.filter((part) => part !== 'usb-source');
      const heat = behind.reduce((sum, part) => sum + of(`parts.${part}.loss`), 0);
      expect(heat / of('parts.usb-source.power')).toBeCloseTo(1, 9);
      expect(of('parts.usb-source.power') / 0.88 / of('wall-power')).toBeCloseTo(1, 9);
      expect(of('heat') / of('wall-power')).toBeCloseTo(1, 9);
    }
  });

  test('the source’s level is one that a 45 W source has to offer and a plain cable carries', () => {
    const level = usbPower(15, '3 A');
    const { parts } = study.steps[0].board;
    const source = parts['usb-source'] as { 'rated-power': { value: number }; 'rated-current': { value: number } };
    if (!level.ok) throw new Error('no such level');
    expect(source['rated-power'].value).toBe(level.power);
    expect(source['rated-current'].value).toBe(level.current);
    expect(usbVoltages(45)).toContain(15);
    expect(usbVoltages(45)).not.toContain(20);
  });

  test('the budget of the input shrinks at every step, and stays under the agreed current', () => {
    const margins = ids.map((id) => solved(id)('limits.battery-assist.margin'));
    for (let i = 1; i < ids.length; i++) expect(margins[i]).toBeLessThan(margins[i - 1]);
    expect(margins.at(-1)).toBeGreaterThan(0);
    const current = solved('fan-12')('parts.usb-source.current');
    // Power over voltage behind 40 mΩ of droop: U = (U₀ + √(U₀² − 4·P·R))/2.
    const power = solved('fan-12')('parts.usb-source.power');
    const voltage = 15 - 0.04 * current;
    expect(voltage * current).toBeCloseTo(power, 9);
    expect(current).toBeLessThan(3);
  });

  test('what the battery carries alone is its rating, an empty pack’s voltage over the rail’s', () => {
    // 8 A at 6.6 V are 52.8 W, at 8.2 V 6.44 A; the study rounds down.
    const limit = solved('fan-12')('limits.battery-alone.limit');
    expect(limit).toBeLessThanOrEqual((8 * 6.6) / 8.2);
    expect(limit).toBeGreaterThan(((8 * 6.6) / 8.2) * 0.99);
  });

  test('the back’s limit is the standard’s for a hand that stays', () => {
    expect(solved('fan-12')('limits.skin-back.limit')).toBe(touchLimit('plastic', 3600));
  });
});

describe('what the changes do', () => {
  const graphite = 'heat.links.back-shell.through.0.resistance#graphite-18';

  test('graphite takes from the hot spot and gives to the rest of the back and the grips', () => {
    const [without, with_] = [solved('graphite-18', { [graphite]: 14 }), solved('graphite-18')];
    expect(with_('heat.nodes.back.temperature')).toBeLessThan(without('heat.nodes.back.temperature') - 1);
    expect(with_('heat.nodes.shell.temperature')).toBeGreaterThan(without('heat.nodes.shell.temperature') + 0.5);
    expect(with_('heat.nodes.grips.temperature')).toBeGreaterThan(without('heat.nodes.grips.temperature'));
  });

  test('without the raised fan curve the last step burns the hand', () => {
    const slow = {
      'heat.streams.blower.flow#fan-12': 2.4 * 4.719474432e-4,
      'heat.links.fins-air.through.0.fins.film#fan-12': 52,
    };
    expect(celsius(solved('fan-12', slow)('heat.nodes.back.temperature'))).toBeGreaterThan(48);
    expect(celsius(solved('fan-12')('heat.nodes.back.temperature'))).toBeLessThan(48);
  });
});
