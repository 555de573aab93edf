import { describe, expect, test } from 'vitest';
import { package54, processor, sense, sketchText, supply } from '../board/sketch.test-data.ts';
import { readStudy } from '../study/read.ts';
import { learn, learntInputs, type MeasuredWindow, predictWindows } from './learn.ts';
import { bentInputs, samplePosterior } from './posterior.ts';

// All of the power heats one spot, through 2 K/W at the first step and through another resistance at the second.
const study = (more = '', instruments = '', first = '2 K/W ~ 25 %') => {
  const heat = `{ambient: 25 degC ± 20 K (k=1), nodes: {spot: {limit: none}}, links: {out: {between: [spot, ambient], through: [{resistance: ${first}}, {resistance: 1 K/W ~ 25 %}]}}}`;
  const text = sketchText({
    parts: [supply('adapter', 20), sense('adapter'), processor('point', 100)],
    limiters: package54(),
    heat,
  }).replace(
    'steps: [{id: as-is}]',
    `instruments:
  meter: {channel: p, shows: limiters.package.real, uncertainty: 1 mW}
  probe: {channel: t, shows: heat.nodes.spot.temperature, uncertainty: 1 mK}
${instruments}
learning:
  from: [first, second]
  learn: [heat.links.out.through.0.resistance, heat.links.out.through.1.resistance#pads]
  power-channel: meter
  limiter: package
${more}
steps:
  - id: as-is
  - id: pads
    changes: [{at: heat.links.out.through.1.resistance, becomes: 0.5 K/W ~ 25 %}]`,
  );
  const reading = readStudy(text, 'learn.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.study;
};

/** A window with power [W], spot [°C] and, where it is read, ambient [°C]. */
const window = (
  run: string,
  id: string,
  step: string,
  watts: number,
  spot: number,
  ambient?: number,
): MeasuredWindow => {
  const value = (mean: number, u: number) => ({ mean, u, settled: true, why: '' });
  return {
    run,
    id,
    title: id,
    step,
    channels: {
      p: value(watts, 0.001),
      t: value(spot + 273.15, 0.01),
      ...(ambient !== undefined && { a: value(ambient + 273.15, 0.01) }),
    },
  };
};

describe('several runs at several steps', () => {
  // As is: 2.2 + 0.9 K/W above 24 °C; with other pads 2.2 + 0.4 K/W.
  const windows = [
    window('first', 'low', 'as-is', 10, 24 + 31),
    window('first', 'high', 'as-is', 30, 24 + 93),
    window('second', 'low', 'pads', 10, 24 + 26),
    window('second', 'high', 'pads', 30, 24 + 78),
  ];
  const about = study();
  const learnt = learn(about, about.steps[0], windows);

  test('each window belongs to the board of its step; what the steps share is one number', () => {
    const value = (id: string) => learnt.fit.inputs.find((each) => each.id === id)!;
    expect(learnt.fit.faults).toEqual([]);
    const shared = value('heat.links.out.through.0.resistance');
    const before = value('heat.links.out.through.1.resistance');
    const after = value('heat.links.out.through.1.resistance#pads');
    expect(shared.value + before.value).toBeCloseTo(3.1, 2);
    expect(shared.value + after.value).toBeCloseTo(2.6, 2);
    expect(before.value - after.value).toBeCloseTo(0.5, 2);
    // The two of a step are known together far better than apart.
    expect(shared.ratio).toBeGreaterThan(0.15);
    expect(value('heat.ambient').value).toBeCloseTo(297.15, 1);
  });

  test('a number of a later step is learnt by its address', () => {
    const [shared, after] = learntInputs(about, learnt);
    expect(shared.path).toBe('heat.links.out.through.0.resistance');
    expect(after.before.text).toContain('0.50 K/W');
    expect(after.after.value).toBeCloseTo(2.6 - shared.after.value, 2);
  });

  test('a window of either step is predicted from both', () => {
    const [seen] = predictWindows(about, about.steps[0], learnt, [window('third', 'mid', 'pads', 20, 24 + 52)]);
    expect(seen.predicted.value).toBeCloseTo(273.15 + 24 + 52, 1);
    expect(seen.predicted.u).toBeLessThan(0.1);
  });

  test('where the posterior bends it is named', () => {
    // Two uncertainties up, the other pads would be at 0.24 K/W: three of their own uncertainties, where a straight posterior has two in all.
    const [bent, ...others] = bentInputs(about, learnt);
    expect(bent.path).toBe('heat.links.out.through.0.resistance');
    expect(others).toEqual([]);
    expect(bent.above!.value).toBeLessThan(0.95 * bent.below!.value);
  });

  test('its posterior is sampled by the same names (seed 1)', () => {
    // Readings to 3 K: a ridge as wide as it is bent.
    const coarse = windows.map((each) => ({
      ...each,
      channels: { ...each.channels, t: { ...each.channels.t, u: 3 } },
    }));
    const taught = learn(about, about.steps[0], coarse);
    const sample = samplePosterior(about, taught, { seed: 1, samples: 20_000 });
    expect(sample.inputs.map(({ path }) => path)).toEqual(about.learning!.learn);
    expect(sample.effective).toBeGreaterThan(100);
    for (const [k, { low, high }] of sample.inputs.entries()) {
      const { after } = learntInputs(about, taught)[k];
      expect(low.value).toBeLessThan(after.value);
      expect(high.value).toBeGreaterThan(after.value);
      expect((high.value - low.value) / after.u! / 3.92).toBeCloseTo(1, 0);
    }
  });
});

test('where an instrument reads ambient, each window has its own', () => {
  const about = study('', '  room: {channel: a, shows: heat.nodes.ambient.temperature, uncertainty: 1 mK}');
  const windows = [
    window('first', 'high', 'as-is', 30, 20 + 93, 20),
    window('second', 'high', 'as-is', 30, 31 + 93, 31),
  ];
  const { fit } = learn(about, about.steps[0], windows);
  const value = (id: string) => fit.inputs.find((each) => each.id === id)!;
  expect(fit.faults).toEqual([]);
  expect(
    value('heat.links.out.through.0.resistance').value + value('heat.links.out.through.1.resistance').value,
  ).toBeCloseTo(3.1, 2);
  expect(value('windows.second.high.ambient').value).toBeCloseTo(304.15, 2);
  // Nothing speaks about the ambient that was stated.
  expect(value('heat.ambient').determined).toBe('no');
});

test('a robust fit leaves one wrong window out of account', () => {
  const about = study('  ambient-drift: 0.01 K');
  const right = [5, 10, 15, 20, 25, 30].map((watts) => window('first', `w${watts}`, 'as-is', watts, 24 + 3.1 * watts));
  const wrong = window('second', 'w12', 'as-is', 12, 24 + 3.1 * 12 + 20);
  const sum = (robust: boolean) => {
    const { fit } = learn(about, about.steps[0], [...right, wrong], { robust });
    return fit.inputs.filter(({ id }) => id.startsWith('heat.links')).reduce((all, { value }) => all + value, 0);
  };
  expect(Math.abs(sum(true) - 3.1)).toBeLessThan(0.01);
  expect(Math.abs(sum(false) - 3.1)).toBeGreaterThan(0.05);
});

test('a resistance is never fitted below zero', () => {
  const about = study('', '', '0.5 K/W ± 1 K/W (k=1)');
  // 0.6 K/W in all, and 1 K/W stated for the second alone: the first would have to be negative.
  const cold = [window('first', 'a', 'as-is', 10, 25 + 6), window('first', 'b', 'as-is', 30, 25 + 18)];
  const { fit } = learn(about, about.steps[0], cold);
  const held = fit.inputs.find(({ id }) => id === 'heat.links.out.through.0.resistance');
  expect(held).toMatchObject({ value: 0, held: 'low' });
  expect(fit.faults.map(({ code }) => code)).toContain('fit/outside');
});
