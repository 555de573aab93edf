import { mixedCoefficient } from '../../src/physics/electrical/copper-share.ts';
import { innerTrace, outerTrace, traceCurrent, traceWidth } from '../../src/physics/electrical/trace-current.ts';
import { barResistance, copperResistivity, copperThickness } from '../../src/physics/electrical/trace-resistance.ts';
import { traceFits, traceRise, traceRiseCurrent } from '../../src/physics/electrical/trace-rise.ts';
import { wireResistance } from '../../src/physics/electrical/wire-gauge.ts';
import type { Figure, Topic, Trap } from '../topic.ts';

const mil = 25.4e-6;
const ounce = copperThickness(1);
const lastDigit = 'half of the last printed digit';
const ipc = 'IPC-2221, chart of conductor sizes, as its published fit; worked out independently';

/** Current [A], rise [K], widths of one-ounce traces outside and inside [mil]. */
const widths: [current: number, rise: number, outer: number, inner: number][] = [
  [1, 20, 7.76, 20.2],
  [2, 20, 20.2, 52.55],
  [3, 10, 53.82, 140.01],
  [5, 20, 71.49, 185.97],
  [10, 10, 283.23, 736.81],
  [20, 20, 483.8, 1258.6],
];

const brooks = 'Brooks and Adam, Trace Currents and Temperatures Revisited, 2015, table 3-1';
const tests = `${brooks}; values from the tests of an open-source board-design calculator`;
const rises: [what: string, current: number, ounces: number, fit: keyof typeof traceFits][] = [
  ['outer, one ounce', 1.4164291025677085, 1, 'outer'],
  ['inner, one ounce', 1.513124408404138, 1, 'inner, one ounce'],
  ['inner, two ounces', 2.208736063285966, 2, 'inner, two ounces'],
];

const unread = 'only the fit’s constants were published, so this is the equation worked out by hand';
const byHand: [fit: keyof typeof traceFits, thickness: number, published: number][] = [
  ['inner, half ounce', 10, 1.1514],
  ['inner, three ounces', 10, 2.0945],
];

const squareMils = (current: number, rise: number, layer: number) => traceWidth(current, mil, rise, layer) / mil;
const generator = 'a published table of trace widths, said to follow IPC-2221';
const misfit = 'it does not follow from the fit that is given beside it';
const traps: Trap[] = [
  {
    what: 'section for 2 A inside, 10 K [square mil]',
    computed: squareMils(2, 10, innerTrace),
    published: 135.9,
    tolerance: 0.05,
    why: lastDigit,
    source: generator,
    reason: misfit,
  },
  {
    what: 'section for 3 A inside, 10 K [square mil]',
    computed: squareMils(3, 10, innerTrace),
    published: 251.26,
    tolerance: 0.005,
    why: lastDigit,
    source: generator,
    reason: misfit,
  },
  {
    what: 'width for 1 A outside, one ounce, 10 K [mil]',
    computed: traceWidth(1, ounce, 10, outerTrace) / mil,
    published: 20,
    tolerance: 0.5,
    why: lastDigit,
    source: 'a published quick table for makers of boards',
    reason: 'rounded up to a handy width and passed on as the standard’s',
  },
];

export const topic: Topic = {
  title: 'Traces, planes and joints',
  field: 'electrical',
  figures: [
    ...widths.flatMap(([current, rise, outer, inner]): Figure[] =>
      (
        [
          ['outside', outerTrace, outer],
          ['inside', innerTrace, inner],
        ] as const
      ).map(([where, layer, published]) => {
        return {
          what: `width for ${current} A ${where}, ${rise} K, one ounce [mil]`,
          computed: traceWidth(current, ounce, rise, layer) / mil,
          published,
          tolerance: published > 1000 ? 0.05 : 0.005,
          why: lastDigit,
          source: ipc,
          tier: 'C',
        };
      }),
    ),
    {
      what: 'width for 1 A outside, 10 K, one ounce [mil]',
      computed: traceWidth(1, ounce, 10, outerTrace) / mil,
      published: 11.83,
      tolerance: 0.005,
      why: lastDigit,
      source: 'polestark.com, trace width after IPC-2221, its worked case',
      tier: 'C',
    },
    {
      what: 'width for 1 A inside, 10 K, one ounce [mil]',
      computed: traceWidth(1, ounce, 10, innerTrace) / mil,
      published: 30.76,
      tolerance: 0.005,
      why: lastDigit,
      source: 'polestark.com, trace width after IPC-2221, its worked case',
      tier: 'C',
    },
    ...(
      [
        ['outside', outerTrace, 35],
        ['inside', innerTrace, 17.5],
      ] as const
    ).map(([where, layer, published]): Figure => {
      return {
        what: `current of 400 mil ${where}, one ounce, at 100 K: the corner of the chart [A]`,
        computed: traceCurrent(400 * mil, ounce, 100, layer),
        published,
        tolerance: 0.015 * published,
        why: 'the chart ends at a round number',
        source: 'IPC-2221, stated range of its chart',
        tier: 'A',
        coarse: 'the end of a chart is a round number',
      };
    }),
    ...rises.map(([what, published, ounces, fit]): Figure => {
      return {
        what: `current of 20 mil ${what}, 10 K [A]`,
        computed: traceRiseCurrent(10, 20 * mil, copperThickness(ounces), traceFits[fit]),
        published,
        tolerance: 1e-9,
        why: 'printed in full',
        source: tests,
        tier: 'C',
      };
    }),
    ...byHand.map(([fit, thickness, published]): Figure => {
      return {
        what: `rise of 10 mil by ${thickness} mil at 2 A, fit for ${fit} [K]`,
        computed: traceRise(2, 10 * mil, thickness * mil, traceFits[fit]),
        published,
        tolerance: 0.002 * published,
        why: unread,
        source: brooks,
        tier: 'C',
      };
    }),
    {
      what: 'trace of 100 mm by 0.5 mm by 35 µm [mΩ]',
      computed: 1e3 * barResistance(copperResistivity, 0.1, 0.5e-3 * 35e-6),
      published: 98.3,
      tolerance: 0.3,
      why: 'it takes copper as 1.72e-8 Ω·m, a quarter of a per cent below 1/58 Ω·mm²/m',
      source: 'hypercode, PCB design course, lesson 1, trace resistance',
      tier: 'B',
    },
    {
      what: 'trace of 4 mm by 0.2 mm by 35 µm [mΩ]',
      computed: 1e3 * barResistance(copperResistivity, 4e-3, 0.2e-3 * 35e-6),
      published: 10,
      tolerance: 0.2,
      why: 'printed as a round number',
      source: 'terminal block maker’s note on measuring resistances, article 106',
      tier: 'B',
      coarse: 'printed as a round number',
    },
    {
      what: 'copper of 0.3 mm diameter, 10 mm long [mΩ]',
      computed: 1e3 * wireResistance(0.3e-3, 10e-3),
      published: 2.4,
      tolerance: 0.05,
      why: lastDigit,
      source: 'terminal block maker’s note on measuring resistances, article 106',
      tier: 'B',
      coarse: 'printed with two digits',
    },
    {
      what: 'one square of one-ounce copper [mΩ]',
      computed: 1e3 * barResistance(copperResistivity, 1, ounce),
      published: 0.5,
      tolerance: 0.01,
      why: 'said to be about half a milliohm',
      source: 'note on the resistance of joints and boards, 2014, one ounce of copper',
      tier: 'B',
      coarse: 'said to be about so',
    },
    {
      what: 'solder joint of 13 µΩ·cm, 0.13 mm by 3.0 mm² [µΩ]',
      computed: 1e6 * barResistance(13e-8, 0.13e-3, 3e-6),
      published: 5.6,
      tolerance: 0.05,
      why: lastDigit,
      source: 'note on the resistance of joints and boards, 2014, through-hole joint',
      tier: 'B',
      coarse: 'printed with two digits',
    },
    {
      what: 'one-ounce copper [µm]',
      computed: 1e6 * copperThickness(1),
      published: 35,
      tolerance: 0.05,
      why: 'foil is sold as 35 µm',
      source: 'common practice in board fabrication',
      tier: 'B',
    },
    {
      what: 'coefficient of a resistor of no coefficient with 24 % of copper in it [ppm/K]',
      computed: 1e6 * mixedCoefficient(0.24, 0, 3.93e-3),
      published: 943,
      tolerance: 0.5,
      why: lastDigit,
      source: 'share of copper times 3930 ppm/K, worked out by hand',
      tier: 'C',
    },
    {
      what: 'coefficient of a resistor of no coefficient with 2 % of copper in it [ppm/K]',
      computed: 1e6 * mixedCoefficient(0.02, 0, 3.93e-3),
      published: 80,
      tolerance: 2,
      why: 'printed as a round number',
      source: 'note on copper in the terminals of current-sense resistors',
      tier: 'B',
      coarse: 'printed as a round number',
    },
    {
      what: 'coefficient of half a resistor of 50 ppm/K and half of copper [ppm/K]',
      computed: 1e6 * mixedCoefficient(0.5, 50e-6, 3.93e-3),
      published: 1990,
      tolerance: 0.5,
      why: 'the mean of 50 and 3930',
      source: 'worked out by hand',
      tier: 'C',
    },
  ],
  traps,
  unchecked: ['points of the IPC-2221 chart itself, and of IPC-2152: only their fits could be read'],
};
