import { z } from 'zod';
import { change } from './change.ts';
import { correlation, sharedNumber } from './common-causes.ts';
import { day, gate } from './gate.ts';
import { heatPath } from './heat.ts';
import { name, quantity } from './leaf.ts';
import { limiter } from './limiters.ts';
import { part } from './parts.ts';
import { plate } from './plate.ts';

const demand = z
  .strictObject({
    scale: quantity('ratio', 'what the processor would take if nothing held it, as a multiple of scale 1'),
    crest: quantity('ratio', 'peak over average of the power', 'one-or-more'),
  })
  .describe('what the processor would take if nothing held it');

const addedLimit = z.strictObject({
  title: z.string().optional(),
  of: z.string().describe('output that is held, by its id: `uprate plan --json` lists them'),
  under: z.union([z.string(), z.number()]).optional().describe('highest value allowed, or open'),
  over: z.union([z.string(), z.number()]).optional().describe('lowest value allowed, or open'),
  reason: z.string().describe('why it is a limit'),
});

const instrument = z.strictObject({
  title: z.string().optional(),
  channel: z.string().describe('column of the recordings'),
  shows: z.string().describe('output of the board that it measures, by its id'),
  uncertainty: z
    .union([z.string(), z.number()])
    .transform(String)
    .describe('standard uncertainty of a reading beside its noise, such as 0.5 K'),
  repeatability: z
    .union([z.string(), z.number()])
    .transform(String)
    .optional()
    .describe(
      'how far a steady value comes back when everything is the same again, as standard uncertainty; none when left out',
    ),
  calibrated: day.optional().describe('day of its last calibration, such as 2026-03-01'),
  note: z.string().optional(),
});

const learning = z.strictObject({
  from: z.array(name).min(1).describe('runs whose windows are learnt from'),
  at: z.record(name, name).optional().describe('step at which a run was recorded, by run; the first one when left out'),
  learn: z.array(z.string()).min(1).describe('paths of the numbers to be learnt'),
  'power-channel': z.string().describe('instrument whose measured power sets the board’s power in each window'),
  limiter: name.describe('the limiter whose real power that channel shows'),
  'ambient-drift': quantity(
    'temperature-difference',
    'standard uncertainty of ambient from one run to the next',
    'not-negative',
  ).optional(),
});

const advice = z.strictObject({
  measurements: z
    .array(
      z.strictObject({
        of: z.string().describe('what is measured: the path of a number, or an output of the board by its id'),
        by: z.string().describe('how, such as "four-wire ohmmeter"'),
        uncertainty: z
          .union([z.string(), z.number()])
          .transform(String)
          .describe('standard uncertainty that it would have, such as 0.3 % or 0.2 K'),
        effort: quantity('time', 'what it takes, such as 30 min', 'positive'),
      }),
    )
    .optional()
    .describe('measurements that could be made, with your own means; each stands for the usual one of that number'),
  never: z.array(z.string()).optional().describe('paths and outputs that can’t be measured here'),
});

const step = z.strictObject({
  id: name,
  title: z.string().optional(),
  about: z.string().optional(),
  changes: z.array(change).optional().describe('on the step before; none for the board as delivered'),
});

/** The board at one step: everything a step's changes may touch. */
export const boardFields = {
  demand,
  parts: z.record(name, part).describe('the power path: each part names what feeds it'),
  limiters: z.record(name, limiter).describe('what holds, trips or warns'),
  heat: heatPath,
  plate: plate.optional(),
  limits: z.record(name, addedLimit).optional().describe('limits of your own beside those the parts bring'),
  shared: z
    .record(name, sharedNumber)
    .optional()
    .describe('numbers behind several fields, such as the calibration of the meter that measured them'),
  correlations: z.array(correlation).optional().describe('numbers whose uncertainties go together'),
};

export const board = z.strictObject(boardFields);

export const studySchema = z.strictObject({
  uprate: z.literal(1).describe('version of this file’s format'),
  title: z.string().min(1).describe('what this board is called'),
  about: z.string().optional().describe('what this board is and where its numbers come from'),
  ...boardFields,
  instruments: z.record(name, instrument).optional().describe('channels of the recordings'),
  learning: learning.optional().describe('what `uprate fit` learns and from which runs'),
  advice: advice.optional().describe('what `uprate advise` may propose to measure'),
  gate: gate.optional().describe('how much risk `uprate gate` lets a step carry'),
  steps: z.array(step).min(1).describe('the ladder, first the board as delivered'),
});

export type Board = z.output<typeof board>;
export type StudyFile = z.output<typeof studySchema>;
