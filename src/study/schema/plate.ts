import { z } from 'zod';
import { definition, name, quantity, rating } from './leaf.ts';

const said = {
  title: z.string().optional().describe('what people call it'),
  source: z.string().optional().describe('where its numbers come from'),
  note: z.string().optional(),
};

const place = {
  x: definition('length', 'its centre, in the plane of the board', 'any'),
  y: definition('length', 'its centre, in the plane of the board', 'any'),
};

const sides = {
  width: definition('length', 'its side along x'),
  depth: definition('length', 'its side along y'),
};

const step = quantity('length', 'how far the plate comes down over it; negative for a hollow', 'any').optional();

const screw = z.strictObject({
  ...said,
  ...place,
  force: quantity('force', 'pull on the plate', 'not-negative'),
  spring: z
    .strictObject({
      rate: quantity('stiffness', 'growth of the pull for every metre that the plate stands higher'),
      at: quantity('length', 'height of the plate’s underside over the board at which the pull is as stated', 'any'),
    })
    .optional()
    .describe('where a spring pulls; without it the pull is constant'),
});

const pad = z.strictObject({
  ...said,
  ...place,
  ...sides,
  height: quantity('length', 'top of its component over the board', 'not-negative'),
  step,
  thickness: quantity('length', 'of the free pad'),
  curve: z
    .array(
      z.strictObject({
        strain: definition('ratio', 'compression over free thickness', 'share'),
        pressure: definition('pressure', 'that it takes'),
      }),
    )
    .min(1)
    .describe('compression curve of its data sheet; strains and pressures rise'),
  share: quantity(
    'ratio',
    'part of the curve’s pressure that this pad really gives: scatter, and what is left after it has relaxed',
  ),
});

const die = z.strictObject({
  ...said,
  ...place,
  ...sides,
  height: quantity('length', 'its top over the board, without the interface layer', 'not-negative'),
  step,
  layer: z
    .strictObject({
      thickness: quantity('length', 'before it is pressed by the plate'),
      modulus: quantity('pressure', 'pressure over strain; it decides how uneven a tilted plate presses'),
    })
    .describe('interface material between die and plate'),
  'force-limit': rating('force', 'highest force on it, by its maker'),
  'pressure-limit': rating('pressure', 'highest pressure at its edge'),
});

const stop = z.strictObject({
  ...said,
  ...place,
  height: quantity('length', 'over the board', 'not-negative'),
  stiffness: quantity('stiffness', 'of what gives way: the standoff, the plate above it'),
});

/** A cooler's plate: what pulls it down and what carries it. */
export const plate = z
  .strictObject({
    ...said,
    screws: z.record(name, screw).describe('what pulls'),
    pads: z.record(name, pad).optional().describe('components with a gap pad on them'),
    dies: z.record(name, die).optional().describe('dies and packages that the plate rests on'),
    stops: z.record(name, stop).optional().describe('hard points: standoffs, shoulders'),
  })
  .describe('the cooler’s plate: screws, pads, dies and stops, with their places and heights');

export type PlateSection = z.output<typeof plate>;
