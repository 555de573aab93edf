import { type FosterStage, pulseTrainImpedance, stepImpedance } from '../../src/physics/thermal/foster.ts';
import { fosterFromLadder } from '../../src/physics/thermal/foster-from-ladder.ts';
import type { LadderStage } from '../../src/physics/thermal/ladder.ts';
import { ladderFromFoster } from '../../src/physics/thermal/ladder-from-foster.ts';
import { bodyTimeConstant, temperatureOnTheWay } from '../../src/physics/thermal/lumped-warming.ts';
import { surfaceStepRise } from '../../src/physics/thermal/surface-step.ts';
import { spectrumKernel } from '../../src/physics/thermal/time-constant-spectrum.ts';
import { rodStages } from '../../src/physics/thermal/uniform-rod.ts';
import type { Figure, Topic } from '../topic.ts';

const book = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer';
const closed =
  'closed form of the ladder of N equal rungs: τ = 1/(4·sin²θ), R = 4·cos²θ·τ/(2N + 1), θ = (2j − 1)·π/(4N + 2)';
const module =
  'Infineon, AN2008-03, Thermal equivalent circuit models, module values; ladder by an independent program in extended precision';
const sink = 'ladder of a cooler, eigenvalues by an independent program';

const moduleStages: readonly FosterStage[] = [
  { resistance: 1.6e-3, timeConstant: 6.8e-3 },
  { resistance: 4.3e-3, timeConstant: 64e-3 },
  { resistance: 1.3e-3, timeConstant: 320e-3 },
  { resistance: 1.4e-3, timeConstant: 2 },
];
const moduleLadder = ladderFromFoster(moduleStages);

const sinkLadder: readonly LadderStage[] = [
  { resistance: 0.05, capacity: 0.5 },
  { resistance: 0.1, capacity: 5 },
  { resistance: 0.15, capacity: 60 },
  { resistance: 0.5, capacity: 150 },
];
const sinkStages = fosterFromLadder(sinkLadder);

function figure(
  what: string,
  computed: number,
  published: number,
  digit: number,
  source: string,
  tier: 'B' | 'C',
): Figure {
  return { what, computed, published, tolerance: digit, why: 'last digit', source, tier };
}

/** Slowest first. */
const equalRungs: Readonly<Record<number, readonly [timeConstant: number, resistance: number][]>> = {
  2: [
    [2.618033989, 1.894427191],
    [0.381966011, 0.105572809],
  ],
  3: [
    [5.04891734, 2.74223848],
    [0.643104132, 0.224630933],
    [0.307978528, 0.033130588],
  ],
  4: [
    [8.290859369, 3.573715275],
    [1, 1 / 3],
    [0.426022048, 0.078232021],
    [0.283118583, 0.01471937],
  ],
};

const equalRungFigures = Object.entries(equalRungs).flatMap(([count, published]) => {
  const stages = fosterFromLadder(published.map(() => ({ resistance: 1, capacity: 1 }))).reverse();
  return published.flatMap(([timeConstant, resistance], i) => [
    figure(
      `${count} rungs of 1 and 1: time constant ${i + 1} [s]`,
      stages[i].timeConstant,
      timeConstant,
      1e-9,
      closed,
      'C',
    ),
    figure(`${count} rungs of 1 and 1: resistance ${i + 1} [K/W]`, stages[i].resistance, resistance, 1e-9, closed, 'C'),
  ]);
});

const exactLadder = ladderFromFoster([
  { resistance: 1, timeConstant: 1 },
  { resistance: 1, timeConstant: 10 },
]);

const moduleRungs: readonly [resistance: number, capacity: number][] = [
  [2.6468286, 3.2547409],
  [3.8700763, 13.963367],
  [1.2006933, 301.81938],
  [0.8824017, 1870.98962],
];

const sinkFoster: readonly [resistance: number, timeConstant: number, digit: number][] = [
  [0.0407823, 0.022629, 1e-6],
  [0.0909772, 0.503431, 1e-6],
  [0.0786828, 6.67544, 1e-5],
  [0.5895576, 110.9485, 1e-4],
];

const rod = rodStages(1, 1, 20_000);
const rodAt: readonly [time: number, impedance: number][] = [
  [1e-3, 0.0356825],
  [0.01, 0.1128379],
  [0.1, 0.3568234],
  [0.2, 0.5040878],
  [0.5, 0.7639503],
  [1, 0.9312597],
  [2, 0.9941705],
];

const junctionBead = { density: 8500, volume: (Math.PI * 7.06e-4 ** 3) / 6, area: Math.PI * 7.06e-4 ** 2 };

export const topic: Topic = {
  title: 'Warming, transient impedance, Foster and Cauer',
  field: 'thermal',
  figures: [
    {
      what: 'time constant of a thermocouple bead of 0.706 mm, 400 W/(m²·K) [s]',
      computed: bodyTimeConstant(8500, junctionBead.volume, 400, 1 / (400 * junctionBead.area)),
      published: 1,
      tolerance: 0.001,
      why: 'three printed digits of the diameter',
      source: `${book}, example 5.1`,
      tier: 'B',
    },
    {
      what: 'the bead after 5.16 s, from 25 °C in gas of 200 °C: what is missing [K]',
      computed: 200 - temperatureOnTheWay(25, 200, 5.16, 1),
      published: 1,
      tolerance: 0.005,
      why: 'three printed digits of the time',
      source: `${book}, example 5.1`,
      tier: 'B',
    },
    {
      what: 'sphere of 10 mm, 3000 kg/m³, 1000 J/(kg·K), 10 W/(m²·K), from 400 °C in air of 20 °C, after 93.7 s [°C]',
      computed: temperatureOnTheWay(400, 20, 93.7, bodyTimeConstant(3000, 0.005 / 3, 1000, 1 / 10)),
      published: 335,
      tolerance: 0.3,
      why: 'the book takes ln 10 as 2.30',
      source: `${book}, example 5.5`,
      tier: 'B',
    },
    {
      what: 'square-root law of silicon, 148 W/(m·K), 2330 kg/m³, 700 J/(kg·K) [K·mm²/(W·√s)]',
      computed: 1e6 * surfaceStepRise(1, 1, 148, 2330, 700),
      published: 72.63,
      tolerance: 0.005,
      why: 'last digit',
      source: 'JEDEC JESD51-14 (from memory), worked out independently',
      tier: 'C',
    },
    {
      what: 'square-root law of silicon, 130 W/(m·K), 2330 kg/m³, 712 J/(kg·K), after 4 s [K·mm²/W]',
      computed: 1e6 * surfaceStepRise(1, 4, 130, 2330, 712),
      published: 153.67,
      tolerance: 0.005,
      why: 'worked by hand: 2·√4/√(π·130·2330·712) = 4/26 029.5',
      source: 'Carslaw and Jaeger, Conduction of Heat in Solids, section 2.9',
      tier: 'C',
    },
    {
      what: 'thick silicon, 148 W/(m·K), 2330 kg/m³, 700 J/(kg·K), 5e4 W/m², after 0.25 s [K]',
      computed: surfaceStepRise(5e4, 0.25, 148, 2330, 700),
      published: 1.81567,
      tolerance: 0.00001,
      why: 'last digit',
      source: 'Carslaw and Jaeger, Conduction of Heat in Solids, section 2.9, worked by hand',
      tier: 'C',
    },
    ...equalRungFigures,
    figure(
      'ladder of 1 K/W, 1 s and 1 K/W, 10 s: first resistance [K/W]',
      exactLadder[0].resistance,
      121 / 101,
      1e-15,
      'exact fractions by hand',
      'C',
    ),
    figure('the same: first capacity [J/K]', exactLadder[0].capacity, 10 / 11, 1e-15, 'exact fractions by hand', 'C'),
    figure(
      'the same: second resistance [K/W]',
      exactLadder[1].resistance,
      81 / 101,
      1e-15,
      'exact fractions by hand',
      'C',
    ),
    figure(
      'the same: second capacity [J/K]',
      exactLadder[1].capacity,
      10201 / 891,
      1e-14,
      'exact fractions by hand',
      'C',
    ),
    ...moduleRungs.flatMap(([resistance, capacity], i) => [
      figure(
        `module: resistance ${i + 1} of the ladder [mK/W]`,
        1e3 * moduleLadder[i].resistance,
        resistance,
        1e-7,
        module,
        'C',
      ),
      figure(
        `module: capacity ${i + 1} of the ladder [J/K]`,
        moduleLadder[i].capacity,
        capacity,
        1e-6 * capacity,
        module,
        'C',
      ),
    ]),
    ...[
      [0.01, 1.90133],
      [0.1, 5.41585],
      [1, 7.69374],
      [10, 8.59057],
    ].map(([time, published]) =>
      figure(`module: Zth(${time} s) [mK/W]`, 1e3 * stepImpedance(moduleStages, time), published, 1e-5, module, 'C'),
    ),
    figure(
      'module: highest rise in pulses of 10 ms, every 100 ms [mK/W]',
      1e3 * pulseTrainImpedance(moduleStages, 0.01, 0.1),
      2.31151,
      1e-5,
      'two thousand pulses one after the other, an independent program',
      'C',
    ),
    ...sinkFoster.flatMap(([resistance, timeConstant, digit], i) => [
      figure(`cooler: resistance ${i + 1} [K/W]`, sinkStages[i].resistance, resistance, 1e-7, sink, 'C'),
      figure(`cooler: time constant ${i + 1} [s]`, sinkStages[i].timeConstant, timeConstant, digit, sink, 'C'),
    ]),
    ...[
      [0.01, 0.016527],
      [0.1, 0.058382],
      [1, 0.135515],
      [10, 0.243665],
      [100, 0.56062],
      [1000, 0.799928],
    ].map(([time, published]) =>
      figure(`cooler: Zth(${time} s) [K/W]`, stepImpedance(sinkStages, time), published, 1e-6, sink, 'C'),
    ),
    ...rodAt.map(([time, published]) =>
      figure(
        `uniform rod: Zth/R at t = ${time}·R·C [1]`,
        stepImpedance(rod, time),
        published,
        2e-5,
        'series of the uniform rod by an independent program; 20 000 stages here leave 1e-5',
        'C',
      ),
    ),
    figure('uniform rod: first resistance [1]', rodStages(1, 1, 1)[0].resistance, 0.810569, 1e-6, '8/π²', 'C'),
    figure('uniform rod: first time constant [1]', rodStages(1, 1, 1)[0].timeConstant, 0.405285, 1e-6, '4/π²', 'C'),
    figure('kernel of a time constant: its peak [1]', spectrumKernel(0), 0.367879, 1e-6, '1/e', 'C'),
    figure('kernel: left of the peak at half height [1]', spectrumKernel(-1.461186), 0.1839397, 1e-6, '1/(2e)', 'C'),
    figure('kernel: right of the peak at half height [1]', spectrumKernel(0.9852), 0.1839397, 1e-6, '1/(2e)', 'C'),
  ],
  unchecked: [
    'the point where two structure functions part, after JESD51-14: its annex could not be read',
    'a published pulse train with its junction temperature: none was found',
  ],
};
