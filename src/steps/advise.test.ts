import { describe, expect, test } from 'vitest';
import { assembleBoard } from '../board/assemble.ts';
import { package54, processor, sense, sketchText, supply } from '../board/sketch.test-data.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { readStudy } from '../study/read.ts';
import { adviseStep, tryMeasurement } from './advise.ts';
import { beside, PRESENT } from './beside.ts';
import { candidatesOf } from './candidates.ts';
import { readInstrument } from './instrument.ts';
import { learn } from './learn.ts';

// All of the processor's power heats one spot through 2 K/W, 1 K/W after the pads are renewed; the spot may reach 90 °C.
function study(resistance = '2 K/W ± 0.4 K/W (k=1)', more = '', power = 30, meter = '') {
  const heat = `{ambient: 25 degC ± 3 K (k=1), nodes: {spot: {title: Spot, limit: 90 degC}}, links: {out: {title: Way out, between: [spot, ambient], through: [{resistance: ${resistance}}, {resistance: 1 K/W ± 0.01 K/W}]}}}`;
  const text = sketchText({
    parts: [supply('adapter', 20), sense('adapter'), processor('point', power)],
    limiters: package54(),
    heat,
  }).replace(
    'steps: [{id: as-is}]',
    `instruments:
  probe: {title: Probe, channel: t, shows: heat.nodes.spot.temperature, uncertainty: 2 K}
${meter}
${more}
steps:
  - id: as-is
  - {id: pads, changes: [{at: heat.links.out.through.1.resistance, becomes: 0.5 K/W ± 0.01 K/W}]}`,
  );
  const reading = readStudy(text, 'advise.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.study;
}

function boards(of = study()) {
  const [present, next] = of.steps.map((step) => {
    const assembly = assembleBoard(step);
    if (!assembly.ok) throw new Error('no board');
    return assembly.board;
  });
  const instruments = [readInstrument(present, 'probe', of.instruments.probe)];
  return { present, next, both: beside(next, present, instruments) };
}

describe('two steps beside each other', () => {
  test('say what each says alone, and share what is one number', () => {
    const { present, next, both } = boards();
    const { y } = evaluateAt(both);
    const at = (id: string) => y[both.outputs.findIndex((output) => output.id === id)];
    // By hand: 25 °C + 30 W · (2 + 1) K/W, and 30 W · (2 + 0.5) K/W.
    expect(at(`${PRESENT}heat.nodes.spot.temperature`)).toBeCloseTo(298.15 + 90, 8);
    expect(at('heat.nodes.spot.temperature')).toBeCloseTo(298.15 + 75, 8);
    expect(both.inputs.length).toBe(next.inputs.length + 2);
    const x = startValues(both);
    x[both.inputs.findIndex(({ id }) => id === 'heat.ambient')] += 10;
    const warmer = evaluateAt(both, x).y;
    expect(warmer[next.indexOfOutput('heat.nodes.spot.temperature')]).toBeCloseTo(298.15 + 85, 8);
    expect(warmer[next.outputs.length + present.indexOfOutput('heat.nodes.spot.temperature')]).toBeCloseTo(398.15, 8);
  });

  test('only the margins of the step to come are margins', () => {
    const { next, both } = boards();
    const held = both.outputs.filter(({ hold }) => hold).map(({ id }) => id);
    expect(held.length).toBeGreaterThan(0);
    for (const id of held) expect(next.indexOfOutput(id)).toBeGreaterThanOrEqual(0);
  });
});

describe('what is proposed', () => {
  test('numbers where the usual way would be better than what is stated, the probe as it is or calibrated', () => {
    const about = study();
    const { present, next, both } = boards(about);
    const list = candidatesOf(about, next, present, both);
    const ids = list.map(({ id }) => id);
    expect(ids).toContain('heat.links.out.through.0.resistance');
    // Stated to 0.6 %, and two thermocouples give 6 %.
    expect(ids).not.toContain('heat.links.out.through.1.resistance');
    expect(list.find(({ id }) => id === 'instruments.probe')).toMatchObject({ u: 0.4, effort: 1 });
    expect(list.find(({ id }) => id === 'instruments.probe.calibrated')!.u).toBeCloseTo(Math.hypot(2 / 3, 0.4), 12);
    // The probe watches the only place there is.
    expect(ids.filter((id) => id.startsWith('heat.nodes'))).toEqual([]);
    expect(list.find(({ id }) => id === 'heat.links.out.through.0.resistance')!.title).toBe(
      'measure Way out: resistance',
    );
  });
});

describe('the advice', () => {
  const advice = adviseStep(study(), 'pads')!;
  const of = (id: string) => advice.measurements.find((each) => each.id === id)!;

  test('has the margin that hand calculation gives, before and after', () => {
    expect(advice.present).toBe('as-is');
    expect(advice.limit.id).toBe('heat.nodes.spot.limit');
    // Margin 90 − (25 + 75) = −10 K, u² = 3² + (30·0.4)² + (30·0.01/√3)².
    expect(advice.margin.value).toBeCloseTo(-10, 6);
    const own = (30 * 0.01) / Math.sqrt(3);
    expect(advice.margin.u).toBeCloseTo(Math.hypot(3, 12, own), 6);
    // Probe at the present step: sees 3² + 12² and its own pads' 0.173 K; what is shared goes down to 2 K and that.
    const shared = 9 + 144;
    const after = Math.sqrt(shared + own ** 2 - shared ** 2 / (shared + own ** 2 + 4 + 0.16));
    expect(of('instruments.probe').uAfter.value).toBeCloseTo(after, 1);
    expect(of('heat.ambient').uAfter.value).toBeCloseTo(Math.sqrt(144 + 9 * (0.09 / 9.09)), 0);
  });

  test('comes in the order of what goes away per hour', () => {
    const rates = advice.measurements.map(({ reduction, hours }) => reduction / hours);
    expect(rates).toEqual([...rates].sort((a, b) => b - a));
    expect(advice.measurements[0].id).toBe('instruments.probe');
  });

  test('at the first step is about the board that is there', () => {
    expect(adviseStep(study(), 'as-is')).toMatchObject({ step: 'as-is', present: 'as-is' });
  });

  test('is none for an unknown limit', () => {
    expect(adviseStep(study(), 'pads', { limit: 'heat.nodes.spit.limit' })).toBeNull();
    expect(tryMeasurement(study(), advice, 'nothing', { seed: 1, trials: 10 })).toBeNull();
  });

  test('tried on drawn boards it holds (seed 5)', () => {
    const tried = tryMeasurement(study(), advice, 'instruments.probe', { seed: 5, trials: 200 })!;
    expect(tried.failed).toBe(0);
    const { uAfter, uNow } = of('instruments.probe');
    expect(Math.abs(tried.uAfter.value / uAfter.value - 1)).toBeLessThan(0.05);
    expect(Math.abs(tried.errorAfter.value / uAfter.value - 1)).toBeLessThan(0.15);
    expect(Math.abs(tried.errorBefore.value / uNow.value - 1)).toBeLessThan(0.15);
  });
});

test('of numbers that hang together the whole number is measured, not its own part', () => {
  const [first, second] = ['heat.links.out.through.0.resistance', 'heat.links.out.through.1.resistance'];
  const about = study(
    '2 K/W ± 0.2 K/W (k=1)',
    `correlations: [{between: [${second}, ${first}], coefficient: 0.9}]
advice: {measurements: [{of: ${first}, by: bench, uncertainty: 0.001 K/W, effort: 1 h}]}`,
  );
  // The first of the two keeps its own value, the other is partly the first: measured to next to nothing, it has no variance left.
  const measured = adviseStep(about, 'as-is')!.measurements.find(({ id }) => id === first)!;
  // What is left: 3 K of ambient, and what the known one leaves of the second, 0.00577·√(1 − 0.9²) K/W at 30 W.
  const left = 30 * (0.01 / Math.sqrt(3)) * Math.sqrt(1 - 0.81);
  expect(measured.uAfter.value).toBeCloseTo(Math.hypot(3, left), 1);
});

test('what an instrument has taught it does not teach again; calibrating it does', () => {
  const about = study(
    undefined,
    `learning: {from: [base], learn: [heat.ambient], power-channel: meter, limiter: package}`,
    30,
    '  meter: {title: Meter, channel: p, shows: limiters.package.real, uncertainty: 1 mW}\n',
  );
  const value = (mean: number, u: number) => ({ mean, u, settled: true, why: '' });
  // 25 °C + 3 K/W: exactly as stated, at two powers.
  const windows = [10, 30].map((watts) => ({
    run: 'base',
    id: `w${watts}`,
    title: '',
    channels: { p: value(watts, 0.001), t: value(298.15 + 3 * watts, 0.1) },
  }));
  const learnt = learn(about, about.steps[0], windows);
  expect(learnt.fit.ending).toBe('converged');
  const stated = adviseStep(about, 'pads')!;
  const taught = adviseStep(about, 'pads', { learnt })!;
  expect(taught.learnt).toBe(true);
  expect(taught.margin.u!).toBeLessThan(0.3 * stated.margin.u!);
  const reduction = (advice: typeof stated, id: string) =>
    advice.measurements.find((each) => each.id === id)!.reduction;
  expect(reduction(stated, 'instruments.probe')).toBeGreaterThan(0.9);
  expect(reduction(taught, 'instruments.probe')).toBeLessThan(0.1);
  expect(reduction(taught, 'instruments.probe.calibrated')).toBeGreaterThan(0.5);
  const tried = tryMeasurement(about, taught, 'instruments.probe.calibrated', { seed: 5, trials: 200, learnt })!;
  const { uAfter } = taught.measurements.find(({ id }) => id === 'instruments.probe.calibrated')!;
  expect(tried.failed).toBe(0);
  expect(Math.abs(tried.uAfter.value / uAfter.value - 1)).toBeLessThan(0.1);
  expect(Math.abs(tried.errorAfter.value / uAfter.value - 1)).toBeLessThan(0.2);
});
