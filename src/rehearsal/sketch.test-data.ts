import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';

/** A small board with a limiter that holds, one that trips, and three places for heat. `trips`: what the second limiter allows [W]. */
export function sketch(trips = 80): Study {
  const reading = readStudy(
    `uprate: 1
title: Sketch, invented
demand: { scale: 3, crest: 1 }
parts:
  adapter: { kind: supply, voltage: 19 V, resistance: 20 mohm, efficiency: 0.9, rated-power: none, rated-current: none, over-current: none, heats: ambient }
  point:
    kind: sense
    fed-by: adapter
    fitted: [ { resistance: 5 mohm ± 1 %, rated-power: none } ]
    heats: board
  vr:
    kind: regulator
    fed-by: point
    output: 1 V
    phases: 4
    imbalance: 3 %
    frequency: 500 kHz
    inductance: 220 nH
    losses:
      by: curve
      points: [ { current: 0 A, loss: 0.2 W }, { current: 10 A, loss: 1 W }, { current: 30 A, loss: 4 W } ]
      at-temperature: 60 degC
      loss-coefficient: 0.2 %/K
    fixed: 0.2 W
    stage: { rated-current: none, junction-limit: none, junction-rise: 3 K/W }
    inductor: { saturation-current: none, heating-current: none }
    input-capacitors: { count: 4, rated-ripple: none }
    heats: board
  core: { kind: load, fed-by: vr, follows: processor, power: 30 W, rated-current: none, heats: die }
limiters:
  package: { acts: regulate, allowed: 50 W, takes: average, reads: [ { sense: point, assumed: 5 mohm } ] }
  controller: { acts: trip, allowed: ${trips} W, takes: average, reads: [ { sense: point, assumed: 5 mohm } ] }
heat:
  ambient: 25 degC ± 2 K
  nodes: { die: { limit: none }, sink: { limit: none }, board: { limit: none } }
  links:
    die-sink: { between: [die, sink], through: [ { resistance: 0.3 K/W } ] }
    sink-ambient: { between: [sink, ambient], through: [ { film: { coefficient: 40 W/(m^2*K), area: 500 cm^2 } } ] }
    board-ambient: { between: [board, ambient], through: [ { resistance: 2 K/W } ] }
steps: [ { id: as-is } ]
`,
    'sketch.yaml',
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.study;
}
