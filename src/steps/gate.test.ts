import { describe, expect, test } from 'vitest';
import { type GateEvidence, type GateOptions, gate } from './gate.ts';
import { gatherEvidence } from './gate-evidence.ts';
import { baseline, type GateSketch, gateStudy, gateWindow, instrumentLines } from './gate-study.test-data.ts';

const options: GateOptions = { samples: 4000, seed: 1 };
const many = { samples: 20_000 };
const nothing: GateEvidence = { learnt: null, standing: 'as-is', predicted: [] };

/** The verdict on the next step, with a good baseline or nothing at all. */
function asked(sketch: GateSketch, measured = true, more: Partial<GateOptions> = {}) {
  const study = gateStudy(sketch);
  const evidence = measured ? gatherEvidence(study, 'up', baseline) : nothing;
  const verdict = gate(study, 'up', evidence, { ...options, ...more });
  return { ...verdict, codes: verdict.reasons.map(({ code }) => code) };
}

const air = (degrees: number) => `{air: {of: heat.nodes.ambient.temperature, under: ${degrees} degC, reason: test}}`;
/** A limit on the small load's current, so many of its standard deviations away. */
const draw = (z: number) => `{draw: {of: parts.small.current, under: ${0.1 + 0.01 * z} A, reason: test}}`;

/** Upper tails of the standard normal distribution. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1 (0.5 less its areas). */
const tails = [
  { z: 0.5, tail: 0.30854 },
  { z: 1, tail: 0.15866 },
  { z: 1.5, tail: 0.06681 },
  { z: 2, tail: 0.02275 },
  { z: 2.5, tail: 0.00621 },
  { z: 3, tail: 0.00135 },
];

describe('the probability of exceeding a limit', () => {
  test.each(tails)('is the tail of a normal margin, $z standard deviations away', ({ z, tail }) => {
    const { limits } = asked({ limits: air(25 + 2 * z) }, false, many);
    const { probability, u, low, high, margin } = limits.get('limits.air')!;
    expect(Math.abs(probability - tail)).toBeLessThan(3 * u);
    expect(low).toBeLessThan(tail);
    expect(high).toBeGreaterThan(tail);
    expect(margin.value).toBeCloseTo(2 * z, 2);
    expect(margin.u).toBeCloseTo(2, 1);
  });

  test.each(tails)('is that of what the baseline has left uncertain, $z of it away', ({ z, tail }) => {
    // 2 K as stated and 1 K of the probe, weighted by their inverse squares: √(4/5) K are left.
    const { limits } = asked({ limits: air(25 + z * Math.sqrt(4 / 5)) }, true, many);
    const { probability, u, margin } = limits.get('limits.air')!;
    expect(Math.abs(probability - tail)).toBeLessThan(3 * u);
    expect(margin.u).toBeCloseTo(Math.sqrt(4 / 5), 2);
  });

  test('of several independent limits together is one less the product of what keeps them', () => {
    // Seven loads, each 2.4 standard deviations from a limit of its own: Φ(−2.4) = 0.00820 (NIST/SEMATECH 1.3.6.7.1), together 1 − 0.9918⁷.
    const names = [1, 2, 3, 4, 5, 6, 7].map((i) => `load-${i}`);
    const { codes, together, limits } = asked({
      parts: names.map(
        (name) =>
          `  ${name}: {kind: load, fed-by: adapter, power: 2 W ± 0.2 W (k=1), rated-current: none, heats: ambient}`,
      ),
      limits: `{${names.map((name) => `${name}: {of: parts.${name}.current, under: 0.124 A, reason: test}`).join(', ')}}`,
    });
    for (const { probability, u } of limits.values()) expect(Math.abs(probability - 0.0082)).toBeLessThan(3 * u);
    expect(Math.abs(together!.probability - (1 - (1 - 0.0082) ** 7))).toBeLessThan(3 * together!.u);
    expect(codes).toEqual(['gate/too-likely-together']);
  });

  test('counts peaks: crest times the average, at the trip and at the adapter', () => {
    // 30 W ± 1 W at 20 V and a crest of 1.5: 45 W ± 1.5 W at the trip, 48 W allowed. At the adapter 32 W ± √1.04 W: 2.4 A ± 0.076485 A.
    // Both limits are two standard deviations away.
    const overCurrent = '2.55297 A';
    const limiters =
      '{package: {acts: regulate, takes: average, allowed: 54 W, reads: [{sense: point, assumed: 1 mohm}]}, trip: {acts: trip, takes: peak, allowed: 48 W, reads: [{sense: point, assumed: 1 mohm}]}}';
    const peaks = asked({ demand: '{scale: 1, crest: 1.5}', limiters, overCurrent }, false);
    for (const id of ['limiters.trip', 'parts.adapter.over-current']) {
      const { probability, u } = peaks.limits.get(id)!;
      expect(Math.abs(probability - 0.02275)).toBeLessThan(3 * u);
    }
    expect(peaks.codes).toEqual(['gate/nothing-measured', 'gate/too-likely', 'gate/too-likely']);
    const flat = asked({ demand: '{scale: 1, crest: 1}', limiters, overCurrent }, false);
    expect(flat.codes).toEqual(['gate/nothing-measured']);
  });
});

describe('go, hold or back', () => {
  test('go where nothing speaks against it', () => {
    expect(asked({ limits: draw(3) }, true, { today: '2026-03-01' })).toMatchObject({
      verdict: 'go',
      reasons: [],
      notes: [{ code: 'gate/undated' }],
    });
  });

  test('hold where nothing was measured', () => {
    expect(asked({ limits: draw(10) }, false)).toMatchObject({ verdict: 'hold', codes: ['gate/nothing-measured'] });
  });

  test('hold where a limit has no data', () => {
    const { verdict, reasons } = asked({ spot: 'open' });
    expect(verdict).toBe('hold');
    expect(reasons).toMatchObject([{ code: 'gate/open-limit', data: { field: 'heat.nodes.spot.limit' } }]);
  });

  test.each([
    [2, 'hold'], // 2.3 %
    [2.5, 'go'], // 0.6 %
  ])('one per cent a limit: %d standard deviations are a %s', (z, verdict) => {
    expect(asked({ limits: draw(z) }).verdict).toBe(verdict);
  });

  test('the study states how much a limit may carry', () => {
    const limits = draw(2);
    expect(asked({ limits, gate: 'gate: {per-limit: 3 %}' })).toMatchObject({ verdict: 'go', codes: [] });
    expect(asked({ limits: draw(2.5), gate: 'gate: {per-limit: 0.5 %}' }).codes).toEqual(['gate/too-likely']);
    expect(asked({ limits, gate: 'gate: {per-limit: 3 %, together: 2 %}' }).codes).toEqual([
      'gate/too-likely-together',
    ]);
  });

  test('a temperature that nobody watches may carry a tenth', () => {
    // The spot is 55 °C ± 2 K before anything is measured: 2.5 of these away, 0.62 %.
    const spot = '60 degC';
    const meter = '  meter: {channel: p, shows: limiters.package.real, uncertainty: 1 mW}';
    const unwatched = asked({ spot, instruments: meter }, false);
    expect(unwatched.codes).toEqual(['gate/nothing-measured', 'gate/unwatched']);
    expect(asked({ spot }, false).codes).toEqual(['gate/nothing-measured']);
    const allowed = asked({ spot, instruments: meter, gate: 'gate: {unwatched: 0.7 %}' }, false);
    expect(allowed.codes).toEqual(['gate/nothing-measured']);
  });

  test('back where a limit is more likely exceeded than not as the board stands', () => {
    const { verdict, reasons } = asked({ limits: draw(-1) });
    expect(verdict).toBe('back');
    expect(reasons[0]).toMatchObject({ code: 'gate/exceeded-now', data: { limit: 'limits.draw', first: 1 } });
    expect(asked({ limits: draw(0.5) }).verdict).toBe('hold');
  });

  test('back where an instrument has read beyond a limit, settled or not', () => {
    const study = gateStudy({ spot: '70 degC' });
    const hot = [...baseline, gateWindow('third', 'as-is', 30, 70.5, false)];
    const { verdict, reasons } = gate(study, 'up', gatherEvidence(study, 'up', hot), options);
    expect(verdict).toBe('back');
    expect(reasons[0]).toMatchObject({ code: 'gate/read-beyond', data: { instrument: 'probe', read: '70.5 °C' } });
    const below = [...baseline, gateWindow('third', 'as-is', 30, 69.5, false)];
    expect(gate(study, 'up', gatherEvidence(study, 'up', below), options).verdict).toBe('go');
  });

  test('hold where the step has no operating point', () => {
    // 20 V behind 10 Ω give 10 W at most.
    const steps = '  - id: up\n    changes: [{at: parts.adapter.resistance, becomes: 10 ohm}]';
    expect(asked({ steps })).toMatchObject({ verdict: 'hold', together: null, codes: ['gate/no-solution'] });
  });

  test('a count that can’t tell on which side of the threshold it is says so', () => {
    // Φ(−2.326) is one per cent.
    const { notes } = asked({ limits: draw(2.326) });
    expect(notes.map(({ code }) => code)).toContain('gate/count-unsure');
    expect(asked({ limits: draw(2.5) }).notes.map(({ code }) => code)).not.toContain('gate/count-unsure');
  });
});

describe('what was measured', () => {
  const study = gateStudy();
  const codes = (windows: Parameters<typeof gatherEvidence>[2], step = 'up', about = study) =>
    gate(about, step, gatherEvidence(about, step, windows), options).reasons.map(({ code }) => code);

  test('a baseline at one load is too short; the study says how many it wants', () => {
    const [, full] = baseline;
    expect(codes([full])).toEqual(['gate/baseline-short']);
    // A twentieth of the greatest power is no other load.
    expect(codes([full, { ...gateWindow('first', 'as-is', 29, 54) }])).toEqual(['gate/baseline-short']);
    expect(codes([full], 'up', gateStudy({ gate: 'gate: {loads: 1}' }))).toEqual([]);
    expect(codes(baseline, 'up', gateStudy({ gate: 'gate: {loads: 3}' }))).toEqual(['gate/baseline-short']);
  });

  test('recordings in which nothing has settled teach nothing', () => {
    expect(codes([gateWindow('first', 'as-is', 30, 50, false)])).toEqual(['fit/nothing-settled']);
  });

  test('at full load a temperature has to settle', () => {
    const moving = [...baseline, gateWindow('first', 'as-is', 30.001, 50, false), gateWindow('first', 'as-is', 20, 45)];
    expect(codes(moving)).toEqual([]);
    const [low, full] = baseline;
    const short = [
      low,
      gateWindow('first', 'as-is', 20, 45),
      { ...full, channels: { ...full.channels, t: { ...full.channels.t, settled: false } } },
    ];
    expect(codes(short)).toEqual(['gate/full-load-unsettled']);
  });

  test('the standing step has to have been run, with what was predicted for it', () => {
    expect(codes(baseline, 'further')).toEqual(['gate/standing-unmeasured']);
    expect(codes([...baseline, gateWindow('second', 'up', 30, 55)], 'further')).toEqual([]);
  });

  test('a reading that was predicted otherwise holds, and its number is named', () => {
    // The probe knows the spot to 1 K by itself, but what it adds to every reading cancels: 0.4 K are far off.
    const evidence = gatherEvidence(study, 'further', [...baseline, gateWindow('second', 'up', 30, 55.4)]);
    const { reasons } = gate(study, 'further', evidence, options);
    expect(reasons.map(({ code }) => code)).toContain('gate/prediction-missed');
    expect(reasons.find(({ code }) => code === 'gate/prediction-missed')!.data).toMatchObject({ instrument: 'probe' });
  });

  test('a power beside the predicted one holds: 45 W where 30 W ± 1.5 W were predicted', () => {
    const about = gateStudy({
      limiters:
        '{package: {acts: regulate, takes: average, allowed: 30 W, reads: [{sense: point, assumed: 1 mohm, gain: 1 ± 0.05 (k=1)}]}}',
    });
    const evidence = gatherEvidence(about, 'further', [...baseline, gateWindow('second', 'up', 45, 70)]);
    const { reasons } = gate(about, 'further', evidence, options);
    expect(reasons).toMatchObject([{ code: 'gate/power-missed', data: { instrument: 'meter', size: '10.0' } }]);
  });

  test('a run that isn’t learnt from still has to agree', () => {
    const held = [...baseline, gateWindow('third', 'up', 30, 58)];
    const evidence = gatherEvidence(study, 'further', held);
    expect(evidence.learnt!.used).toEqual(['first 10: probe', 'first 30: probe']);
    expect(codes(held, 'further')).toEqual(['gate/prediction-missed']);
  });

  test('the check at a small load holds where it is not ticked', () => {
    const evidence = gatherEvidence(study, 'up', baseline);
    const verdict = (lowLoadChecked?: boolean) => gate(study, 'up', { ...evidence, lowLoadChecked }, options);
    expect(verdict(false).reasons.map(({ code }) => code)).toEqual(['gate/low-load']);
    expect(verdict(true).verdict).toBe('go');
    expect(verdict().verdict).toBe('go');
  });
});

describe('the age of calibrations', () => {
  const codes = (calibrated: string | undefined, gateLine = '') =>
    asked({ instruments: instrumentLines(calibrated), gate: gateLine }, true, { today: '2026-03-01' }).reasons.map(
      ({ code }) => code,
    );

  test('a year is allowed, a day more is not', () => {
    expect(codes('2025-03-01')).toEqual([]);
    expect(codes('2025-02-28')).toEqual(['gate/calibration-old', 'gate/calibration-old']);
  });

  test('the study states another age; then a calibration without a day holds too', () => {
    expect(codes('2026-02-01', 'gate: {calibration-days: 28}')).toEqual([]);
    expect(codes('2026-01-31', 'gate: {calibration-days: 28}')).toHaveLength(2);
    expect(codes(undefined, 'gate: {calibration-days: 28}')).toEqual([
      'gate/calibration-unknown',
      'gate/calibration-unknown',
    ]);
    expect(codes(undefined)).toEqual([]);
  });

  test('a day to come is a slip', () => {
    expect(codes('2026-03-02')).toEqual(['gate/calibration-to-come', 'gate/calibration-to-come']);
  });
});
