import { junctionFromCase, junctionFromSurface } from '../../src/physics/thermal/junction.ts';
import { layerDrops, parallelThermalResistance, seriesThermalResistance } from '../../src/physics/thermal/stack.ts';
import type { Topic } from '../topic.ts';

const forum = 'Texas Instruments, E2E forum thread 930658, TLV758P';
const notes = 'course notes on heat sinks with a TIP31, dropdoc.ru/doc/754049';
const slides = 'CUI, How to select a heat sink, training slides 9 and 10, 2017';
const power = 75 / 27;

export const topic: Topic = {
  title: 'Junction, case, heat sink, air',
  field: 'thermal',
  figures: [
    {
      what: 'junction by ψJT above the top, 0.51 W, 6.1 K/W [K]',
      computed: junctionFromSurface(95.26, 6.1, 0.51) - 95.26,
      published: 98.37 - 95.26,
      tolerance: 0.006,
      why: 'half of the last printed digit',
      source: forum,
      tier: 'B',
    },
    {
      what: 'junction by ψJT [°C]',
      computed: junctionFromSurface(95.26, 6.1, 0.51),
      published: 98.37,
      tolerance: 0.006,
      why: 'half of the last printed digit',
      source: forum,
      tier: 'B',
    },
    {
      what: 'junction from a case on a heat sink, 3.9 W, 3.125 K/W [K above the case]',
      computed: junctionFromCase(76, 3.125, 3.9, 1) - 76,
      published: 12.19,
      tolerance: 0.005,
      why: '88 °C is printed for 76 °C and the product of its inputs, 12.19 K',
      source: notes,
      tier: 'B',
    },
    {
      what: 'case on a heat sink of 13 K/W, 6 W, above the air [K]',
      computed: layerDrops(6, [13])[0],
      published: 78,
      tolerance: 0.01,
      why: 'the figure is exact',
      source: notes,
      tier: 'B',
    },
    {
      what: 'what is left for the heat sink of 27 K/W in all [K/W]',
      computed: 27 - seriesThermalResistance([0.5, 0.45]),
      published: 26.05,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: slides,
      tier: 'B',
    },
    {
      what: 'junction above 50 °C through 0.5, 0.45 and 19.1 K/W [K]',
      computed: layerDrops(power, [0.5, 0.45, 19.1]).reduce((sum, drop) => sum + drop),
      published: 55.7,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: slides,
      tier: 'B',
    },
    {
      what: 'junction of a regulator, 3.5 W through 5, 1 and 10 K/W above 25 °C [K]',
      computed: 3.5 * seriesThermalResistance([5, 1, 10]),
      published: 56,
      tolerance: 0.01,
      why: 'the figure is exact',
      source: 'thermal design of a linear regulator in TO-220, newsletter.onedfrk.com, 2026',
      tier: 'B',
    },
    {
      what: 'chip of 1e4 W/m² cooled on both sides, one behind epoxy and 8 mm of aluminium, above the air [K]',
      computed: 1e4 * parallelThermalResistance([1 / 100, seriesThermalResistance([0.9e-4, 8e-3 / 239, 1 / 100])]),
      published: 50.31,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 3.2',
      tier: 'B',
    },
  ],
  traps: [
    {
      what: 'junction from the measured top with θJC(top) 98.7 K/W in place of ψJT [°C]',
      computed: junctionFromSurface(95.26, 6.1, 0.51),
      published: 145.6,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: forum,
      reason: 'θJC(top) holds for heat that leaves through the top, and nearly none does on a board',
    },
    {
      what: 'junction from the bare top with θJC(top) 98.7 K/W, 6 % of the heat through it [°C]',
      computed: junctionFromCase(95.26, 98.7, 0.51, 0.06),
      published: 145.6,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: forum,
      reason: 'the whole loss was taken to leave through the top',
    },
  ],
};
