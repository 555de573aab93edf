import { z } from 'zod';
import { count, name, quantity, rating } from './leaf.ts';

const area = quantity('area', 'area the heat passes through');
const conductivity = quantity('thermal-conductivity', 'of the material');

/** One element of the way from node to node; several in series make a stack. */
export const heatElement = z.union([
  z.strictObject({ resistance: quantity('thermal-resistance', 'given or measured') }),
  z.strictObject({
    layer: z
      .strictObject({ thickness: quantity('length', 'along the heat'), conductivity, area })
      .describe('a slab: t/(k·A)'),
  }),
  z.strictObject({
    contact: z
      .strictObject({ resistance: quantity('area-thermal-resistance', 'resistance times area'), area })
      .describe('a contact or an interface material by its data sheet'),
  }),
  z.strictObject({
    'bond-line': z
      .strictObject({
        'yield-stress': quantity('pressure', 'of the interface material'),
        pressure: quantity('pressure', 'on the interface'),
        conductivity,
        area,
      })
      .describe('interface material under pressure, by the scaling law'),
  }),
  z.strictObject({
    spreading: z
      .strictObject({
        'source-area': quantity('area', 'where the heat enters'),
        'plate-area': quantity('area', 'of the plate'),
        thickness: quantity('length', 'of the plate'),
        conductivity,
        film: quantity('film-coefficient', 'on the plate’s far side'),
      })
      .describe('spreading from a source into a plate, closed form'),
  }),
  z.strictObject({
    'heat-pipes': z
      .strictObject({ count: count('in parallel'), each: quantity('thermal-resistance', 'one pipe, end to end') })
      .describe('heat pipes in parallel'),
  }),
  z.strictObject({
    fins: z
      .strictObject({
        count: count('fins'),
        height: quantity('length', 'from root to tip'),
        width: quantity('length', 'along the air'),
        thickness: quantity('length', 'of one fin'),
        conductivity,
        film: quantity('film-coefficient', 'between fin and air'),
      })
      .describe('straight fins with their efficiency'),
  }),
  z.strictObject({
    film: z.strictObject({
      coefficient: quantity('film-coefficient', 'of the surface, convection and radiation together'),
      area,
    }),
  }),
]);

const node = z.strictObject({
  title: z.string().optional().describe('what people call it'),
  limit: rating('temperature', 'highest temperature allowed'),
  source: z.string().optional().describe('where the limit comes from'),
  note: z.string().optional(),
});

const link = z.strictObject({
  title: z.string().optional(),
  source: z.string().optional().describe('where its numbers come from'),
  note: z.string().optional(),
  between: z.tuple([name, name]).describe('two nodes; `ambient` is the surroundings'),
  through: z.array(heatElement).min(1).describe('elements in series'),
});

const stream = z.strictObject({
  title: z.string().optional(),
  source: z.string().optional(),
  note: z.string().optional(),
  flow: quantity('volume-flow', 'air moved, as measured at ambient temperature'),
  through: z.array(name).min(1).describe('air nodes in the order the air passes them, from ambient back to ambient'),
});

export const heatPath = z
  .strictObject({
    ambient: quantity('temperature', 'air around the device', 'any'),
    nodes: z.record(name, node).describe('places with one temperature each'),
    links: z.record(name, link).describe('ways for heat between nodes'),
    streams: z.record(name, stream).optional().describe('moving air'),
  })
  .describe('where the heat goes: ambient, nodes, links');

export type HeatPath = z.output<typeof heatPath>;
export type HeatElement = z.output<typeof heatElement>;
