import fc from 'fast-check';

/** What a random board is made of; every figure is in the unit its name in `studyText` says. */
export interface RandomBoard {
  readonly supply: { readonly volts: number; readonly milliohms: number; readonly efficiency: number };
  readonly cable: number;
  readonly sense: readonly number[];
  readonly assumed: number;
  readonly phases: number;
  readonly rail: {
    readonly volts: number;
    readonly exponent: number;
    readonly watts: number;
    readonly leakage: number;
  };
  readonly byCurve: boolean;
  readonly constant: readonly number[];
  readonly allowed: number;
  readonly ambient: number;
  readonly die: number;
  readonly sink: number;
  readonly stage: number;
  readonly flow: number;
  readonly demand: number;
}

/** Numbers as a person would write them: six digits, and nothing between zero and a thousandth. */
const number = (min: number, max: number) =>
  fc
    .double({ min, max, noNaN: true, noDefaultInfinity: true })
    .map((drawn) => (drawn < 1e-3 ? 0 : Number(drawn.toPrecision(6))));

/** Boards of one supply, a cable, a sense point, a regulator with a load that follows the processor, constant loads, and moving air. */
export const randomBoard: fc.Arbitrary<RandomBoard> = fc.record({
  supply: fc.record({ volts: number(11, 24), milliohms: number(0, 60), efficiency: number(0.8, 1) }),
  cable: number(0, 40),
  sense: fc.array(number(2, 30), { minLength: 1, maxLength: 3 }),
  assumed: number(2, 10),
  phases: fc.integer({ min: 1, max: 10 }),
  rail: fc.record({ volts: number(0.7, 1.3), exponent: number(0, 0.4), watts: number(10, 60), leakage: number(0, 3) }),
  byCurve: fc.boolean(),
  constant: fc.array(number(0.5, 6), { maxLength: 4 }),
  allowed: number(20, 70),
  ambient: number(10, 35),
  die: number(0.05, 0.4),
  sink: number(0.05, 0.3),
  stage: number(1, 6),
  flow: number(8, 40),
  demand: fc.constant(20),
});

const byParts = `
        by: parts
        high-side: 4 mohm
        low-side: 1.2 mohm
        on-coefficient: 0.4 %/K
        switching-time: 6 ns
        output-charge: 8 nC
        recovery-charge: 4 nC
        gate-charge: 12 nC
        drive-voltage: 5 V
        dead-time: 20 ns
        diode-voltage: 0.8 V
        winding: 0.5 mohm
        winding-coefficient: 0.393 %/K
        core: 0.05 W`;

const byCurve = `
        by: curve
        points:
          - {current: 0 A, loss: 0.2 W}
          - {current: 10 A, loss: 0.9 W}
          - {current: 30 A, loss: 3.5 W}
          - {current: 90 A, loss: 20 W}
        at-temperature: 60 degC
        loss-coefficient: 0.2 %/K`;

/** The board as a study. */
export function studyText(board: RandomBoard): string {
  const { supply, rail, sense, constant } = board;
  return `uprate: 1
title: random board
demand: {scale: ${board.demand}, crest: 1.1}
parts:
  adapter:
    kind: supply
    voltage: ${supply.volts} V
    resistance: ${supply.milliohms} mohm
    efficiency: ${supply.efficiency}
    heats: ambient
  cable:
    kind: conductor
    fed-by: adapter
    resistance: ${board.cable} mohm
    temperature-coefficient: 0.393 %/K
    rated-current: 50 A
    heats: air
  point:
    kind: sense
    fed-by: cable
    fitted:${sense.map((milliohms) => `\n      - {resistance: ${milliohms} mohm, rated-power: 1 W}`).join('')}
    heats: pcb
  vr:
    kind: regulator
    fed-by: point
    output: ${rail.volts} V
    output-exponent: ${rail.exponent}
    phases: ${board.phases}
    imbalance: 5 %
    frequency: 500 kHz
    inductance: 220 nH
    losses:${board.byCurve ? byCurve : byParts}
    fixed: 0.2 W
    stage: {rated-current: 60 A, junction-limit: 150 degC, junction-rise: ${board.stage} K/W}
    inductor: {saturation-current: 90 A, heating-current: 60 A}
    input-capacitors: {count: 4, rated-ripple: 5 A}
    heats: pcb
  core:
    kind: load
    fed-by: vr
    follows: processor
    power: ${rail.watts} W
    leakage: {power: ${rail.leakage} W, at: 25 degC, e-fold: 60 K}
    rated-current: 200 A
    heats: die
${constant
  .map((watts, i) => `  extra-${i}: {kind: load, fed-by: cable, power: ${watts} W, rated-current: 5 A, heats: air}\n`)
  .join('')}limiters:
  package:
    acts: regulate
    allowed: ${board.allowed} W
    takes: average
    reads:
      - {sense: point, assumed: ${board.assumed} mohm}
heat:
  ambient: ${board.ambient} degC
  nodes:
    die: {limit: 100 degC}
    sink: {}
    pcb: {limit: 110 degC}
    air: {limit: none}
  links:
    die-sink: {between: [die, sink], through: [{resistance: ${board.die} K/W}]}
    sink-air: {between: [sink, air], through: [{resistance: ${board.sink} K/W}]}
    pcb-air: {between: [pcb, air], through: [{resistance: 1.5 K/W}]}
    die-pcb: {between: [die, pcb], through: [{resistance: 3 K/W}]}
  streams:
    fan: {flow: ${board.flow} CFM, through: [air]}
steps:
  - {id: as-is}
`;
}
