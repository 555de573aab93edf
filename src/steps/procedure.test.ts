import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';
import { changesOf } from './changes-of.ts';
import { type Procedure, procedureOf } from './procedure.ts';
import { orphansOf, stateOf, tickOf } from './procedure-ticks.ts';
import { senseAtRest } from './sense-at-rest.ts';
import { undoPlan } from './undo-plan.ts';

function studyOf(text: string): Study {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults, null, 1));
  return reading.study;
}

const miniPc = readFileSync('examples/mini-pc/study.yaml', 'utf8');
const study = studyOf(miniPc);
const small = readFileSync('test/boards/small.yaml', 'utf8');
const stacked = procedureOf(study, 'stacked-22');
const stepOf = (id: string, of = study) => of.steps.find((step) => step.id === id)!;
const item = ({ items }: Procedure, id: string) => items.find((each) => each.id === id)!;

describe('changes in words', () => {
  test('what a step brings is said with its place, before and after, and how it is taken back', () => {
    const [core, graphics] = changesOf(stepOf('stacked-22'), stepOf('as-delivered'));
    expect(core).toMatchObject({
      work: 'resistor-added',
      undo: 'take the upper resistor off with two irons; R2 stays',
    });
    expect(graphics).toMatchObject({
      id: 'change-2',
      work: 'resistor-added',
      title: 'Sense resistor of the graphics, on top of R3',
      does: 'Solder a resistor of 22 mΩ ± 1 % at "Sense resistor of the graphics, on top of R3".',
      undo: 'Take off the resistor of 22 mΩ ± 1 % at "Sense resistor of the graphics, on top of R3"; the others stay.',
    });
    expect(core.fields).toContainEqual({ name: 'resistance', before: null, after: '22 mΩ ± 1 %' });
    const [replaced, , paste] = changesOf(stepOf('stacked-12'), stepOf('stacked-22'));
    expect(replaced.fields).toEqual([{ name: '', before: '22 mΩ ± 1 %', after: '12 mΩ ± 1 %' }]);
    expect(paste.work).toBe('interface');
    // The area stays, so it isn't told.
    expect(paste.fields.map(({ name }) => name)).toEqual(['yield-stress', 'pressure', 'conductivity']);
    expect(paste.undo).toMatch(/conductivity 5\.5 .* → 2\.0 .*A fresh layer isn’t the old one/);
  });
});

// By hand, Ohm's and Kirchhoff's laws, GUM 5.1.2. Room 25 °C, 75 ppm/K from 20 °C:
// R2 and its joint 5·1.000375 + 0.08 = 5.081875 mΩ, the new one and its joint 22·1.000375 + 0.15 = 22.15825 mΩ; side by side 4.13381 mΩ.
// u: (4.13381/5.081875)²·√(0.05² + 0.05²)/√3 = 0.02701 mΩ and (4.13381/22.15825)²·√(0.22² + 0.1²)/√3 = 0.00486 mΩ, together 0.02745 mΩ;
// the meter 0.5 % and 5 µΩ: 0.02127 mΩ; with it 0.03472 mΩ.
describe('a sense point measured with four wires', () => {
  test('is the two resistors side by side with their joints, in the room', () => {
    const bare = senseAtRest(stepOf('stacked-22'), 'core-sense', () => 0)!;
    expect(bare.value).toBeCloseTo(4.13381e-3, 8);
    expect(bare.u).toBeCloseTo(0.02745e-3, 6);
    const metered = senseAtRest(stepOf('stacked-22'), 'core-sense', () => 0.02127e-3)!;
    expect(metered.u / 0.03472e-3).toBeCloseTo(1, 2);
    // Rectangles and a normal together: nearly normal, a little narrower.
    for (const end of [metered.high - metered.value, metered.value - metered.low])
      expect(end / 0.03472e-3).toSatisfy((k: number) => k > 1.85 && k < 1.97);
  });

  test('tells what it would be with nothing changed, and with either resistor not connected', () => {
    const [core, graphics, ...none] = stacked.points;
    expect([core.part, graphics.part, none]).toEqual(['core-sense', 'graphics-sense', []]);
    expect(core.mistakes.map(({ what, tells }) => [what, tells])).toEqual([
      ['nothing changed', true],
      ['"R2" not connected', true],
      ['"on top of R2" not connected', true],
    ]);
    const measured = core.mistakes.map(({ measured: { value } }) => value * 1e3);
    expect(measured[0]).toBeCloseTo(5.081875, 6);
    expect(measured[1]).toBeCloseTo(22.15825, 6);
    expect(measured[2]).toBeCloseTo(5.081875, 6);
  });

  test('a resistor too large to be told from none is said to be', () => {
    const high = studyOf(miniPc.replaceAll('resistance: 22 mohm ± 1 %', 'resistance: 900 mohm ± 1 %'));
    const procedure = procedureOf(high, 'stacked-22');
    expect(procedure.points[0].mistakes[0]).toMatchObject({ what: 'nothing changed', tells: false });
    expect(item(procedure, 'measure-core-sense').details.join(' ')).toContain('can’t tell: nothing changed');
  });

  test('a shared error of the meter that measured all resistors moves all of them', () => {
    const shared = studyOf(
      `${miniPc}\nshared:\n  meter:\n    factor: 100 % ± 3 %\n    of: [parts.core-sense.fitted.0.resistance]\n`,
    );
    const alone = senseAtRest(stepOf('as-delivered'), 'core-sense', () => 0)!;
    const together = senseAtRest(stepOf('as-delivered', shared), 'core-sense', () => 0)!;
    // 5 mΩ · 3 %/√3 = 0.0866 mΩ beside 0.0408 mΩ.
    expect(alone.u).toBeCloseTo(0.0408e-3, 6);
    expect(together.u).toBeCloseTo(0.0957e-3, 6);
  });
});

describe('the check at a small load', () => {
  test('the reading is the true power times what is there over what is assumed', () => {
    const { low } = procedureOf(studyOf(small), 'stacked', { lowPower: 4 });
    const [reading] = low!.readings;
    // By hand: 5·(1 + 50 ppm/K·5 K) + 0.1 = 5.10125 mΩ beside 22 mΩ: 4.14099 mΩ; over 5 mΩ assumed: 0.82820.
    expect(reading.ratio.value).toBeCloseTo(0.8282, 4);
    expect(reading.expected.value).toBeCloseTo(4 * 0.8282, 4);
    // Without an instrument the true power is known the usual way: 2 % and 0.05 W; the display shows tenths.
    const u = Math.hypot(4 * reading.ratio.u!, 0.8282 * Math.hypot(0.08, 0.05), 0.1 / Math.sqrt(12));
    expect(reading.expected.u).toBeCloseTo(u, 4);
    expect(reading.high.value - reading.low.value).toBeCloseTo(4 * u, 4);
    // Unchanged: 5.10125/5.
    expect(reading.unchanged.value).toBeCloseTo(4 * 1.02025, 4);
    expect(reading.tells).toBe(true);
  });

  test('at too small a load, or with too coarse a display, it can’t tell, and says so', () => {
    for (const options of [
      { lowPower: 4, resolution: 3 },
      { lowPower: 1.2, resolution: 1 },
    ]) {
      const procedure = procedureOf(studyOf(small), 'stacked', options);
      expect(procedure.low!.readings[0].tells).toBe(false);
      expect(item(procedure, 'low-load').details.join(' ')).toContain('the check can’t tell');
    }
  });

  test('on the mini-PC both sense points count, warmer than the room', () => {
    const { low } = stacked;
    const [reading, ...none] = low!.readings;
    expect(none).toEqual([]);
    // 4.13381/5 in the room; up to 40 K more add up to 0.3 %.
    expect(reading.ratio.value).toSatisfy((ratio: number) => ratio > 0.8268 && ratio < 0.8293);
    expect(reading.measuredBy).toBe('Power really taken at the two sense points');
    // The instrument is off by 0.5 W at most likely, and that alone makes 0.41 W of reading.
    expect(reading.expected.u).toBeGreaterThan(0.41);
  });

  test('where the step leaves the sense points alone, the limiter reads as before', () => {
    const cooler = studyOf(
      miniPc.replace(
        / {2}- id: stacked-22[\s\S]*$/,
        `  - id: paste
    changes:
      - { at: heat.links.die-plate.through.0.bond-line.conductivity, becomes: 8 W/(m*K) ± 15 % }
`,
      ),
    );
    const procedure = procedureOf(cooler, 'paste');
    expect(procedure.points).toEqual([]);
    expect(procedure.low!.readings).toMatchObject([{ limiter: 'package-limit', tells: null }]);
    const ids = procedure.items.map(({ id }) => id);
    expect(ids).not.toContain('no-short');
    expect(ids).toContain('unplug');
    expect(item(procedure, 'change-1').cautions.join(' ')).toMatch(/100 °C/);
    expect(item(procedure, 'change-1').cautions.join(' ')).not.toMatch(/gallium/);
  });

  test('a load that the board can’t be at leaves the check to the person', () => {
    const procedure = procedureOf(study, 'stacked-22', { lowPower: 0.01 });
    expect(procedure.low).toBeNull();
    expect(item(procedure, 'low-load').does).toContain('as-delivered');
  });
});

describe('full load', () => {
  test('it is broken off two uncertainties of the instrument before the limit', () => {
    const { full } = stacked;
    const reading = (id: string) => full.find((each) => each.id === id)!;
    // 105 °C is the die's own limit and 100 °C the firmware's, which regulates and is none; 1 K of the sensor: 105 − 2.
    expect(reading('die').abort!.at.value - 273.15).toBeCloseTo(103, 6);
    // 120 °C, thermocouple 1.5 K.
    expect(reading('stages').abort!.at.value - 273.15).toBeCloseTo(117, 6);
    // The hand's 48 °C, 1 K.
    expect(reading('case').abort).toMatchObject({ limit: 'limits.skin', near: true });
    expect(reading('case').abort!.at.value - 273.15).toBeCloseTo(46, 6);
    expect(reading('case').think).toBeNull();
    // Nothing limits what really flows past the limiter that holds.
    expect(reading('processor-power').abort).toBeNull();
  });

  test('a trip is reached where the firmware reads it, not where it flows', () => {
    const { full } = stacked;
    const { at } = full.find(({ id }) => id === 'machine-power')!.abort!;
    // 112 W is read at about 112/1.0185 = 110 W, because 5.08 mΩ is there instead of 5 mΩ; the ratio is known to 1.3 %, the instrument to 0.8 W.
    expect(at.value).toBeGreaterThan(106.5);
    expect(at.value).toBeLessThan(108);
  });

  test('stop and think is three combined uncertainties above, the interval two', () => {
    for (const { expected, low, high, think } of stacked.full) {
      expect(high.value - expected.value).toBeCloseTo(2 * expected.u!, 9);
      expect(expected.value - low.value).toBeCloseTo(2 * expected.u!, 9);
      if (think) expect(think.value - expected.value).toBeCloseTo(3 * expected.u!, 9);
    }
  });

  test('what is near its limit and watched by nothing is named', () => {
    expect(stacked.unwatched.join()).toMatch(/^Drive: temperature: 17\.\d K/);
    const blind = studyOf(miniPc.replace(/^ {2}case:\n {4}title: Case, thermocouple[\s\S]*?\n\n/m, '\n'));
    expect(procedureOf(blind, 'stacked-22').unwatched.join()).toMatch(/Case, top side/);
  });
});

test('the order is isolate, change, inspect, measure, small load, soak, full load, and afterwards', () => {
  const { items } = procedureOf(study, 'stacked-12');
  expect(items.map(({ number }) => number)).toEqual(items.map((_, i) => i + 1));
  expect([...new Set(items.map(({ phase }) => phase))]).toEqual([
    'before',
    'isolate',
    'change',
    'inspect',
    'measure',
    'low load',
    'soak',
    'full load',
    'after',
  ]);
  expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
});

test('a gallium alloy has its cautions', () => {
  const metal = studyOf(miniPc.replace('why: fresh paste, spread thinly', 'why: gallium alloy, with a dam'));
  const said = item(procedureOf(metal, 'stacked-12'), 'change-3').cautions.join(' ');
  expect(said).toMatch(/aluminium/);
  expect(said).toMatch(/plater/);
});

test('so has one that the study names as the material of the place', () => {
  const named = studyOf(
    miniPc
      .replace(
        'conductivity: 2.0 W/(m*K) ~ 20 % # dried',
        'material: gallium-indium-tin\n            conductivity: 2.0 W/(m*K) ~ 20 % # dried',
      )
      .replace(
        'at: heat.links.die-plate.through.0.bond-line\n',
        'at: heat.links.die-plate.through.0.bond-line.conductivity\n',
      )
      .replace(/becomes:\n {10}yield-stress[\s\S]*?area: 120 mm\^2 ± 3 %/, 'becomes: 20 W/(m*K) ± 15 %'),
  );
  const [, , paste] = procedureOf(named, 'stacked-12').changes;
  expect(paste.materials).toEqual(['gallium-indium-tin']);
  expect(item(procedureOf(named, 'stacked-12'), 'change-3').cautions.join(' ')).toMatch(/aluminium/);
});

test('a divider on the sense lines changes the reading, not what is measured at the sense point', () => {
  const divided = studyOf(`${miniPc.slice(0, miniPc.indexOf('\nsteps:'))}
steps:
  - id: a
  - id: b
    changes:
      - at: parts.core-sense.divider
        becomes: { series: 20 ohm ± 1 %, parallel: 100 ohm ± 1 % }
`);
  const procedure = procedureOf(divided, 'b');
  expect(procedure.points).toEqual([]);
  expect(item(procedure, 'change-1').details.join(' ')).toContain('before it is soldered in');
  // Core alone would read 100/120 of before; the graphics is as it was.
  const [{ ratio, tells }] = procedure.low!.readings;
  expect(ratio.value).toBeGreaterThan(1.0184 * (100 / 120));
  expect(ratio.value).toBeLessThan(1.0184);
  expect(tells).not.toBeNull();
});

test('a figure that is only known better is no work, and a setting needs no soldering iron', () => {
  const steps = (changes: string) =>
    studyOf(`${miniPc.slice(0, miniPc.indexOf('\nsteps:'))}
steps:
  - id: a
  - id: b
    changes:
${changes}`);
  const known = procedureOf(
    steps('      - { at: parts.core-sense.fitted.0.resistance, becomes: 5.01(1) mohm }\n'),
    'b',
  );
  expect(known.items.map(({ id }) => id)).not.toContain('change-1');
  expect(known.points).toEqual([]);
  const set = procedureOf(steps('      - { at: limiters.package-limit.allowed, becomes: 58 W }\n'), 'b');
  const ids = set.items.map(({ id }) => id);
  expect(ids).not.toContain('unplug');
  expect(ids.indexOf('change-1')).toBeLessThan(ids.indexOf('low-load'));
});

describe('what has no procedure', () => {
  test('the board as delivered, and a step without changes', () => {
    expect(() => procedureOf(study, 'as-delivered')).toThrow('first step');
    const idle = studyOf(miniPc.replace('  - id: stacked-22', '  - id: idle\n  - id: stacked-22'));
    expect(() => procedureOf(idle, 'idle')).toThrow('changes nothing');
  });

  test('a step without an operating point', () => {
    const starved = studyOf(miniPc.replace('resistance: 25 mohm ± 30 %', 'resistance: 25 ohm ± 30 %'));
    expect(() => procedureOf(starved, 'stacked-22')).toThrow('no operating point');
  });
});

describe('ticks', () => {
  const procedure = stacked;
  const full = item(procedure, 'full-load');

  test('hold as long as the item says the same, its figures included', () => {
    const tick = tickOf(full, '2026-03-05T14:10:00Z');
    expect(stateOf(full, new Map([['full-load', tick]]))).toEqual({ state: 'done', at: '2026-03-05T14:10:00Z' });
    const warmer = procedureOf(
      studyOf(miniPc.replace('ambient: 25 degC ± 2 K', 'ambient: 30 degC ± 2 K')),
      'stacked-22',
    );
    expect(stateOf(item(warmer, 'full-load'), new Map([['full-load', tick]])).state).toBe('changed');
    expect(stateOf(item(warmer, 'unplug'), new Map([['unplug', tickOf(item(procedure, 'unplug'), 'x')]])).state).toBe(
      'done',
    );
    expect(stateOf(full, new Map()).state).toBe('open');
  });

  test('of items that are gone are told', () => {
    const tick = { at: '2026-03-05T14:10:00Z', said: 'Solder it.' };
    expect(orphansOf(procedure.items, new Map([['change-9', tick]]))).toEqual([['change-9', tick]]);
  });
});

describe('the way back', () => {
  test('says what must then be measured and what the firmware then reads', () => {
    const { points, readings, cautions } = undoPlan(study, 'stacked-9', 'as-delivered');
    expect(points.map(({ part }) => part).sort()).toEqual(['core-sense', 'graphics-sense']);
    // R2 and its joint at 25 °C.
    expect(points[0].expected.value).toBeCloseTo(5.081875e-3, 8);
    const [reading] = readings;
    expect(reading.limiter).toBe('package-limit');
    // 5.08 mΩ over 5 mΩ, a little warmer than the room; and 54 W over that.
    expect(reading.ratio.value).toSatisfy((ratio: number) => ratio > 1.0164 && ratio < 1.0195);
    expect(reading.real.value).toBeCloseTo(54 / reading.ratio.value, 1);
    expect(cautions.join(' ')).toMatch(/Capacitors.*bridge a sense resistor/);
  });

  test('of a setting needs neither ohmmeter nor iron', () => {
    const set = studyOf(`${miniPc.slice(0, miniPc.indexOf('\nsteps:'))}
steps:
  - id: a
  - id: b
    changes:
      - { at: limiters.package-limit.allowed, becomes: 58 W }
`);
    const { changes, points, byHand, cautions } = undoPlan(set, 'b', 'a');
    expect(changes[0].change.undo).toBe('Set "Firmware\'s power limit: allowed": 58 W → 54 W.');
    expect([points, byHand]).toEqual([[], false]);
    expect(cautions.join(' ')).not.toMatch(/Capacitors/);
  });
});
