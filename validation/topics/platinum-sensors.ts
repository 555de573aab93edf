import { rtdResistance, rtdTemperature } from '../../src/physics/sensing/rtd.ts';
import { rtdTolerance } from '../../src/physics/sensing/rtd-tolerance.ts';
import { pt100Tens } from '../tables/platinum.ts';
import type { Figure, Topic } from '../topic.ts';

const table = 'IEC 60751:2008, table 1';
const rows = [...pt100Tens.map((ohms, i) => [10 * i - 200, ohms] as const), [850, 390.48] as const];

export const topic: Topic = {
  title: 'Platinum sensors',
  field: 'sensing',
  figures: [...resistanceFigures(), ...temperatureFigures(), ...constantFigures(), ...toleranceFigures()],
};

function resistanceAt(celsius: number, atZero = 100): number {
  return rtdResistance(atZero, celsius + 273.15)!;
}

function resistanceFigures(): Figure[] {
  return rows.map(([celsius, published]) => ({
    what: `Pt100 at ${celsius} °C [Ω]`,
    computed: resistanceAt(celsius),
    published,
    tolerance: 0.00501,
    why: 'printed to 0.01 Ω',
    source: table,
    tier: 'A',
  }));
}

function temperatureFigures(): Figure[] {
  const away = rows.filter(([celsius]) => Math.abs(celsius) >= 20);
  return away.map(([published, ohms]) => ({
    what: `Pt100 at ${ohms} Ω [°C]`,
    computed: rtdTemperature(100, ohms)! - 273.15,
    published,
    tolerance: 0.005 / (published < 700 ? 0.31 : 0.29),
    why: 'resistance printed to 0.01 Ω',
    source: table,
    tier: 'A',
  }));
}

function constantFigures(): Figure[] {
  const alpha = (resistanceAt(100) - 100) / 1e4;
  const exact = [
    [-200, 18.52008],
    [-100, 60.25584],
    [-40, 84.270652032],
    [850, 390.481125],
  ] as const;
  return [
    {
      what: 'mean coefficient from 0 °C to 100 °C [1/°C]',
      computed: alpha,
      published: 0.00385055,
      tolerance: 5e-9,
      why: 'printed to 1e-8',
      source: 'instrument manual of a reference thermometer: α of IEC 60751 sensors',
      tier: 'B',
    },
    ...exact.map(
      ([celsius, published]): Figure => ({
        what: `Pt100 at ${celsius} °C, exact [Ω]`,
        computed: resistanceAt(celsius),
        published,
        tolerance: 1e-8,
        why: 'exact decimals of the polynomial',
        source: 'IEC 60751:2008, equation, in decimal arithmetic',
        tier: 'C',
      }),
    ),
    {
      what: 'Pt1000 at 100 °C [Ω]',
      computed: resistanceAt(100, 1000),
      published: 1385.055,
      tolerance: 1e-6,
      why: 'exact decimals of the polynomial',
      source: 'IEC 60751:2008, equation, in decimal arithmetic',
      tier: 'C',
    },
  ];
}

function toleranceFigures(): Figure[] {
  const at100 = [
    ['A', 100, 0.35],
    ['B', 100, 0.8],
    ['A', -200, 0.55],
    ['B', 500, 2.8],
    ['AA', 150, 0.355],
    ['AA', 0, 0.1],
    ['C', 600, 6.6],
    ['C', 0, 0.6],
  ] as const;
  const inOhms = (tolerance: 'A' | 'B') => rtdTolerance(tolerance, 373.15) * (resistanceAt(100.5) - resistanceAt(99.5));
  return [
    ...at100.map(
      ([tolerance, celsius, published]): Figure => ({
        what: `tolerance of class ${tolerance} at ${celsius} °C, ± [K]`,
        computed: rtdTolerance(tolerance, celsius + 273.15),
        published,
        tolerance: 1e-9,
        why: 'exact',
        source:
          tolerance === 'A' || tolerance === 'B' ? 'IEC 60751:2008, table 3' : 'IEC 60751:2008, table 3, from memory',
        tier: 'A',
      }),
    ),
    {
      what: 'tolerance of class A at 100 °C, ± [Ω]',
      computed: inOhms('A'),
      published: 0.1327,
      tolerance: 1e-4,
      why: 'four digits',
      source: '0.35 K times the slope of the IEC 60751:2008 equation at 100 °C, closed form (tables print 0.13)',
      tier: 'C',
    },
    {
      what: 'tolerance of class B at 100 °C, ± [Ω]',
      computed: inOhms('B'),
      published: 0.3034,
      tolerance: 1e-4,
      why: 'four digits',
      source: '0.8 K times the slope of the IEC 60751:2008 equation at 100 °C, closed form',
      tier: 'C',
    },
  ];
}
