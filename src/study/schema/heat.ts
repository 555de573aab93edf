import { z } from 'zod';
import { interfaceMetals, surfaces } from '../../physics/chemistry/compatibility.ts';
import { count, name, quantity, rating } from './leaf.ts';

const area = quantity('area', 'area the heat passes through');
const conductivity = quantity('thermal-conductivity', 'of the material');

const keys = <T extends string>(table: Readonly<Record<T, unknown>>) => Object.keys(table) as T[];

/** What lies between two surfaces, and what they are made of: for `check` to say whether they bear each other. */
const joint = {
  material: z
    .literal(['paste', 'putty', 'pad', 'phase-change', 'graphite', ...keys(interfaceMetals)])
    .optional()
    .describe('interface material'),
  surfaces: z
    .array(z.literal(keys(surfaces)))
    .min(1)
    .optional()
    .describe('every surface that it touches or may reach'),
};

/** One element of the way from node to node; several in series make a stack. */
export const heatElement = z.union([
  z.strictObject({ resistance: quantity('thermal-resistance', 'given or measured') }),
  z.strictObject({
    layer: z
      .strictObject({ thickness: quantity('length', 'along the heat'), conductivity, area, ...joint })
      .describe('a slab: t/(k·A)'),
  }),
  z.strictObject({
    contact: z
      .strictObject({ resistance: quantity('area-thermal-resistance', 'resistance times area'), area, ...joint })
      .describe('a contact or an interface material by its data sheet'),
  }),
  z.strictObject({
    'bond-line': z
      .strictObject({
        'yield-stress': quantity('pressure', 'of the interface material'),
        pressure: quantity('pressure', 'on the interface').optional(),
        'pressed-by': name.optional().describe('die of the plate, instead of a pressure: its mean pressure is taken'),
        conductivity,
        area,
        ...joint,
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
