import { describe, expect, test } from 'vitest';
import { load, lossless, package54, processor, regulator, rising, sense, supply } from './sketch.test-data.ts';
import { solveSketch as solve } from './solve-sketch.test-data.ts';

describe('boards with little on them', () => {
  test('a supply with nothing to feed gives nothing and heats nothing', () => {
    const { ending, holder, of } = solve({ parts: [supply('adapter', 20)] });
    expect(ending).toBe('solved');
    expect(holder).toBe('demand');
    expect(of('wall-power')).toBe(0);
    expect(of('heat')).toBe(0);
    expect(of('heat.nodes.spot.temperature')).toBe(298.15);
  });

  test('a processor without power lets any limiter be met and takes the whole demand', () => {
    const { ending, holder, of } = solve({
      parts: [supply('adapter', 20), sense('adapter'), load('rest', 'point', 10), processor('point', 0)],
      limiters: package54(),
      demand: '{scale: 3, crest: 1}',
    });
    expect(ending).toBe('solved');
    expect(holder).toBe('demand');
    expect(of('scale')).toBe(3);
  });

  test('leakage alone settles where P = P0·exp((T − T0)/Te) meets T = Ta + R·P', () => {
    // By hand: with Te = 2·e K, R = 2 K/W, P0 = 1 W at ambient: P = exp(P/e), which touches P = e·ln P at P = e; just below P0 = 1 it settles.
    const leak = (watts: number) =>
      solve({
        parts: [
          supply('adapter', 20),
          processor('adapter', 0, `, leakage: {power: ${watts} W, at: 25 degC, e-fold: ${2 * Math.E} K}`),
        ],
      });
    expect(leak(1.001).ending).toBe('runaway');
    const { ending, of } = leak(0.9);
    expect(ending).toBe('solved');
    const watts = of('processor-power');
    expect(watts / (0.9 * Math.exp(watts / Math.E))).toBeCloseTo(1, 9);
    expect(watts).toBeLessThan(Math.E);
    // dP/dT · R = P/e, over a step of 0.01 K, which curves by 0.01 K/(2·Te).
    expect(Math.abs(of('loop-gain') / (watts / Math.E) - 1)).toBeLessThan(1e-3);
    expect(leak(0.999).of('loop-gain')).toBeGreaterThan(0.94);
  });

  test('of two steady states the stable one is taken, even from a start at the other', () => {
    // P = P0·exp(P/e) with P0 = u·exp(1 − u) is met at P = u·e, for u = 1.15 beyond the loop gain of 1. With an e-fold of 20 K the same P is stable.
    const u = 1.15;
    const watts = u * Math.E;
    const leakage = { power: watts * Math.exp((-2 * watts) / 20), upper: u * Math.exp(1 - u) };
    const parts = [
      supply('adapter', 20),
      processor('adapter', 0, `, leakage: {power: ${leakage.power} W, at: 25 degC, e-fold: 20 K}`),
    ];
    expect(solve({ parts }).of('processor-power')).toBeCloseTo(watts, 9);
    const { ending, of } = solve(
      { parts },
      { 'parts.core.leakage.power': leakage.upper, 'parts.core.leakage.e-fold': 2 * Math.E },
    );
    expect(ending).toBe('solved');
    expect(of('processor-power') / (leakage.upper * Math.exp(of('processor-power') / Math.E))).toBeCloseTo(1, 9);
    expect(of('processor-power')).toBeLessThan(Math.E);
  });

  test('a load of kilowatts is a load, no runaway', () => {
    const { of } = solve({ parts: [supply('mains', 400), load('oven', 'mains', 5000)] });
    expect(of('heat')).toBeCloseTo(5000, 6);
  });
});

describe('several supplies', () => {
  const standbyFirst = [
    supply('standby', 5),
    load('clock', 'standby', 1),
    supply('adapter', 20),
    sense('adapter'),
    regulator('point', 12, lossless),
    processor('vr', 60),
  ];

  test('a low supply that stands first does not keep another from starting', () => {
    const { ending, of } = solve({ parts: standbyFirst, limiters: package54() });
    expect(ending).toBe('solved');
    expect(of('limiters.package.real')).toBeCloseTo(54, 9);
    expect(of('wall-power')).toBeCloseTo(of('heat'), 9);
  });

  test('their order in the study changes nothing', () => {
    const first = solve({ parts: standbyFirst, limiters: package54() });
    const last = solve({
      parts: [...standbyFirst.slice(2), ...standbyFirst.slice(0, 2)],
      limiters: package54(),
    });
    for (const id of ['scale', 'wall-power', 'limiters.package.reads', 'heat.nodes.spot.temperature'])
      expect(first.of(id)).toBeCloseTo(last.of(id), 9);
  });
});

describe('sense points', () => {
  test('two parts behind one sense point both count', () => {
    const { of } = solve({
      parts: [supply('adapter', 20), sense('adapter'), load('rest', 'point', 10), processor('point', 100)],
      limiters: package54(),
    });
    expect(of('limiters.package.real')).toBeCloseTo(54, 9);
    expect(of('processor-power')).toBeCloseTo(44, 9);
  });

  test('a point read twice is read twice as high, and no more flows through it', () => {
    const { of } = solve({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 100)],
      limiters:
        '{package: {acts: regulate, takes: average, allowed: 54 W, reads: [{sense: point, assumed: 10 mohm}, {sense: point, assumed: 10 mohm}]}}',
    });
    expect(of('limiters.package.reads')).toBeCloseTo(54, 9);
    expect(of('limiters.package.real')).toBeCloseTo(27, 9);
  });

  test('a limiter that takes the peak holds it: the average stays below by the crest', () => {
    const { of } = solve({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 100)],
      limiters: package54('', 'regulate', 'peak'),
      demand: '{scale: 1, crest: 1.5}',
    });
    expect(of('limiters.package.reads')).toBeCloseTo(54, 9);
    expect(of('processor-power')).toBeCloseTo(36, 9);
  });

  test('an offset that pulls the reading below zero leaves the limiter satisfied', () => {
    // 20 V at 10 mΩ: −5 mV read as −10 W beside 4 W of real power.
    const { ending, holder, of } = solve({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 4)],
      limiters: package54(', offset: -5 mV'),
    });
    expect(ending).toBe('solved');
    expect(holder).toBe('demand');
    expect(of('scale')).toBe(1);
    expect(of('limiters.package.reads')).toBeLessThan(0);
  });

  test('an offset that alone reads as more than is allowed leaves no operating point', () => {
    const { ending } = solve({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 4)],
      limiters: package54(', offset: 30 mV'),
    });
    expect(ending).toBe('infeasible');
  });
});

describe('regulators', () => {
  test('an output above the input is infeasible, and no runaway', () => {
    const { ending } = solve({
      parts: [supply('adapter', 5), regulator('adapter', 12, lossless), processor('vr', 10)],
    });
    expect(ending).toBe('infeasible');
  });

  test('half a per cent of headroom is enough', () => {
    const { ending } = solve({
      parts: [supply('adapter', 10.05), regulator('adapter', 10, lossless), processor('vr', 60)],
    });
    expect(ending).toBe('solved');
  });

  test('one phase carries all of the current', () => {
    const { of } = solve({
      parts: [supply('adapter', 20), regulator('adapter', 10, lossless), processor('vr', 60)],
    });
    expect(of('parts.vr.phase-current')).toBeCloseTo(6, 12);
    expect(of('parts.vr.current')).toBeCloseTo(3, 12);
  });

  test('below its first point a loss curve stays at that point: the safe side, and never negative', () => {
    for (const watts of [0, 10, 100]) {
      const { ending, of } = solve({
        parts: [supply('adapter', 20), regulator('adapter', 10, rising), processor('vr', watts)],
      });
      expect(ending).toBe('solved');
      expect(of('parts.vr.loss')).toBeCloseTo(1, 12);
    }
  });

  test('beyond its last point a loss curve goes on straight with the slope of its end', () => {
    // Chords 0.2 and 0.3 W/A, equally wide: the three-point formula gives (3·0.3 − 0.2)/2 = 0.35 W/A.
    const { of } = solve({
      parts: [supply('adapter', 20), regulator('adapter', 10, rising), processor('vr', 500)],
    });
    expect(of('parts.vr.loss')).toBeCloseTo(6 + 0.35 * 20, 12);
  });
});

describe('temperature limiters', () => {
  const throttle = (celsius: number) =>
    `{throttle: {acts: regulate, allowed-temperature: ${celsius} degC, node: spot}}`;
  const parts = [supply('adapter', 20), processor('adapter', 100)];

  test.each([
    [20, 'infeasible'],
    [25, 'infeasible'],
    [25.001, 'solved'],
  ])('at 25 °C ambient one that holds %d °C leaves the board %s', (celsius, ending) => {
    expect(solve({ parts, limiters: throttle(celsius) }).ending).toBe(ending);
  });

  test('the power it leaves is the rise it allows over the resistance', () => {
    expect(solve({ parts, limiters: throttle(65) }).of('processor-power')).toBeCloseTo(20, 9);
  });
});

describe('heat paths of any size', () => {
  // Two places joined by a conductance a, and one of them to ambient by b: T1 = Ta + P/b, T2 = T1 + P/a, however far apart a and b are.
  test.each([
    [1e6, 1e-6],
    [1e6, 1],
    [1, 1e-6],
    [1e-6, 1e6],
    [1e6, 1e6],
    [1e-6, 1e-6],
  ])('%d W/K inside and %d W/K to ambient', (inside, outside) => {
    const power = 100 * Math.min(inside, outside, 1);
    const { ending, of } = solve({
      parts: [supply('adapter', 20), load('rest', 'adapter', power)],
      heat: `{ambient: 25 degC, nodes: {spot: {limit: none}, case: {limit: none}}, links: {in: {between: [spot, case], through: [{resistance: ${1 / inside} K/W}]}, out: {between: [case, ambient], through: [{resistance: ${1 / outside} K/W}]}}}`,
    });
    expect(ending).toBe('solved');
    const rise = (node: string) => of(`heat.nodes.${node}.temperature`) - 298.15;
    // A temperature near 300 K has no more digits than 1e-13 K.
    expect(Math.abs(rise('case') - power / outside)).toBeLessThan(1e-12 + 1e-14 * (power / outside));
    expect(Math.abs(rise('spot') - power / outside - power / inside)).toBeLessThan(
      1e-12 + 1e-14 * (power / outside + power / inside),
    );
    expect(of('heat') / of('wall-power')).toBeCloseTo(1, 12);
  });
});
