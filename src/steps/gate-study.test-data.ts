import { sense, sketchText } from '../board/sketch.test-data.ts';
import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';
import type { MeasuredWindow } from './learn.ts';

export interface GateSketch {
  /** Limits of one's own, besides which the board has none. */
  readonly limits?: string;
  readonly parts?: readonly string[];
  /** What the processor would take at most; the firmware holds it at 30 W when left out. */
  readonly demand?: string;
  readonly limiters?: string;
  /** Limit of the spot. */
  readonly spot?: string;
  readonly overCurrent?: string;
  readonly instruments?: string;
  readonly gate?: string;
  readonly steps?: string;
}

/**
 * A board whose margins are normal: air at 25 °C ± 2 K; a processor that is held at exactly 30 W and heats a spot with exactly 1 K/W to the air; a small
 * load of 0.1 A ± 0.01 A beside it. Its supply and its sense point are as good as lossless.
 */
export function gateStudy({
  limits,
  parts = [],
  demand = '{scale: 10, crest: 1}',
  limiters = '{package: {acts: regulate, takes: average, allowed: 30 W, reads: [{sense: point, assumed: 1 mohm}]}}',
  spot = 'none',
  overCurrent = 'none',
  instruments = instrumentLines(),
  gate = '',
  steps = '  - id: up\n  - id: further',
}: GateSketch = {}): Study {
  const text = sketchText({
    parts: [
      `  adapter: {kind: supply, voltage: 20 V, resistance: 0 ohm, efficiency: 1, rated-power: none, rated-current: none, over-current: ${overCurrent}, heats: ambient}`,
      sense('adapter', 1),
      '  core: {kind: load, fed-by: point, power: 30 W ± 1 W (k=1), rated-current: none, heats: spot, follows: processor}',
      '  small: {kind: load, fed-by: adapter, power: 2 W ± 0.2 W (k=1), rated-current: none, heats: ambient}',
      ...parts,
    ],
    limiters,
    limits,
    demand,
    heat: `{ambient: 25 degC ± 2 K (k=1), nodes: {spot: {limit: ${spot}}}, links: {out: {between: [spot, ambient], through: [{resistance: 1 K/W}]}}}`,
  }).replace(
    'steps: [{id: as-is}]',
    `instruments:
${instruments}
learning:
  from: [first, second]
  learn: [heat.ambient]
  power-channel: meter
  limiter: package
${gate}
steps:
  - id: as-is
${steps}`,
  );
  const reading = readStudy(text, 'gate.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.study;
}

/** A power meter and a probe on the spot that is good to 1 K, each calibrated on a day or not. */
export function instrumentLines(calibrated?: string): string {
  const day = calibrated === undefined ? '' : `, calibrated: ${calibrated}`;
  return `  meter: {channel: p, shows: limiters.package.real, uncertainty: 1 mW${day}}
  probe: {channel: t, shows: heat.nodes.spot.temperature, uncertainty: 1 K${day}}`;
}

/** A window with power [W] and spot [°C]; `settled`: whether the spot has. */
export function gateWindow(run: string, step: string, watts: number, spot: number, settled = true): MeasuredWindow {
  return {
    run,
    id: `${watts}`,
    title: `load, ${watts} W`,
    step,
    channels: {
      p: { mean: watts, u: 0.001, settled: true, why: '' },
      t: { mean: spot + 273.15, u: 0.001, settled, why: settled ? '' : 'still moving' },
    },
  };
}

/** A baseline that agrees with what is stated. */
export const baseline = [gateWindow('first', 'as-is', 10, 35), gateWindow('first', 'as-is', 30, 55)];
