import { z } from 'zod';
import { definition, name, quantity } from './leaf.ts';

const common = {
  title: z.string().optional(),
  source: z.string().optional(),
  note: z.string().optional(),
  acts: z
    .literal(['regulate', 'trip', 'warn'])
    .describe('regulate: the processor gives way; trip: the machine switches off; warn: it only says so'),
};

/** Reads sense points and holds their sum. */
const powerLimiter = z.strictObject({
  ...common,
  allowed: definition('power', 'the reading it holds'),
  takes: z.literal(['average', 'peak']).describe('average over its time constant, or the peak: average times crest'),
  reads: z
    .array(
      z.strictObject({
        sense: name.describe('sense point'),
        assumed: definition('resistance', 'what the firmware believes is soldered there'),
        gain: quantity('ratio', 'of the amplifier against its nominal; 1 when left out').optional(),
        offset: quantity('voltage', 'of the amplifier, at its input', 'any').optional(),
      }),
    )
    .min(1),
});

/** Holds the temperature of a node. */
const temperatureLimiter = z.strictObject({
  ...common,
  'allowed-temperature': definition('temperature', 'held temperature', 'any'),
  node: name.describe('heat node it reads'),
});

export const limiter = z.union([powerLimiter, temperatureLimiter]);

export type PowerLimiter = z.output<typeof powerLimiter>;
export type TemperatureLimiter = z.output<typeof temperatureLimiter>;
