/** A board in a few lines, for tests: everything that isn't written is as small and plain as it can be. */
export interface Sketch {
  readonly parts: readonly string[];
  readonly limiters?: string;
  readonly limits?: string;
  readonly heat?: string;
  readonly demand?: string;
}

const oneNode =
  '{ambient: 25 degC, nodes: {spot: {limit: none}}, links: {out: {between: [spot, ambient], through: [{resistance: 2 K/W}]}}}';

export function sketchText({
  parts,
  limiters = '{}',
  limits,
  heat = oneNode,
  demand = '{scale: 1, crest: 1}',
}: Sketch): string {
  return `uprate: 1
title: a board at its edge
demand: ${demand}
parts:
${parts.join('\n')}
limiters: ${limiters}
${limits ? `limits: ${limits}\n` : ''}heat: ${heat}
steps: [{id: as-is}]
`;
}

export const supply = (name: string, volts: number, resistance = '0 ohm') =>
  `  ${name}: {kind: supply, voltage: ${volts} V, resistance: ${resistance}, efficiency: 1, heats: ambient}`;
export const load = (name: string, feeder: string, watts: number, more = '') =>
  `  ${name}: {kind: load, fed-by: ${feeder}, power: ${watts} W, heats: spot${more}}`;
export const processor = (feeder: string, watts: number, more = '') =>
  load('core', feeder, watts, `, follows: processor${more}`);
export const sense = (feeder: string, milliohms = 10) =>
  `  point: {kind: sense, fed-by: ${feeder}, heats: ambient, fitted: [{resistance: ${milliohms} mohm, rated-power: none}]}`;
export const package54 = (more = '', acts = 'regulate', takes = 'average') =>
  `{package: {acts: ${acts}, takes: ${takes}, allowed: 54 W, reads: [{sense: point, assumed: 10 mohm${more}}]}}`;
export const regulator = (feeder: string, volts: number, points: string, phases = 1) => `  vr:
    kind: regulator
    fed-by: ${feeder}
    output: ${volts} V
    phases: ${phases}
    imbalance: 0
    frequency: 500 kHz
    inductance: 220 nH
    losses: {by: curve, at-temperature: 25 degC, loss-coefficient: 0 1/K, points: [${points}]}
    fixed: 0 W
    stage: {rated-current: none, junction-limit: none, junction-rise: 0 K/W}
    inductor: {saturation-current: none, heating-current: none}
    input-capacitors: {count: 1, rated-ripple: none}
    heats: spot`;
export const lossless = '{current: 0 A, loss: 0 W}, {current: 50 A, loss: 0 W}, {current: 100 A, loss: 0 W}';
export const rising = '{current: 10 A, loss: 1 W}, {current: 20 A, loss: 3 W}, {current: 30 A, loss: 6 W}';
