import { z } from 'zod';
import { anyQuantity, quantity } from './leaf.ts';

const common = {
  title: z.string().optional(),
  source: z.string().optional(),
  note: z.string().optional(),
  of: z.array(z.string()).min(1).describe('paths of the numbers it enters'),
};

/** One number behind several fields, such as the calibration of the meter that measured them. */
export const sharedNumber = z.union([
  z.strictObject({ ...common, factor: quantity('ratio', 'each of the numbers is multiplied by it') }),
  z.strictObject({ ...common, offset: anyQuantity('it is added to each of the numbers') }),
]);

/** Two numbers whose uncertainties go together. */
export const correlation = z.strictObject({
  between: z.tuple([z.string(), z.string()]).describe('paths of the two numbers'),
  coefficient: z.number().min(-1).max(1).describe('correlation coefficient, −1 to 1'),
  reason: z.string().optional().describe('why they go together'),
});
