import { z } from 'zod';
import { count, definition, name, quantity, rating } from './leaf.ts';

const title = z.string().optional().describe('what people call it');
const source = z.string().optional().describe('where this part’s numbers come from, unless a number says otherwise');
const note = z.string().optional().describe('anything a reader should know');
const fedBy = name.describe('the part or supply that feeds this one');
const heats = name.describe('heat node that takes the loss; `ambient` when it leaves the device at once');

/** Rating is full up to `from` and falls on a straight line to nothing at `end`. */
export const derating = z
  .strictObject({
    from: definition('temperature', 'full rating up to here', 'any'),
    end: definition('temperature', 'nothing left here', 'any'),
  })
  .describe('falls on a straight line with temperature');

const supplyPart = z.strictObject({
  kind: z.literal('supply').describe('an external adapter or another source of power'),
  title,
  source,
  note,
  voltage: quantity('voltage', 'voltage at no load'),
  resistance: quantity('resistance', 'source resistance, as droop per ampere', 'not-negative'),
  efficiency: quantity('ratio', 'power out over power from the wall, at the loads of this study', 'share'),
  'rated-power': rating('power', 'rated power out'),
  'rated-current': rating('current', 'rated current out'),
  'over-current': rating('current', 'peak current at which it switches off'),
  heats,
});

const conductorPart = z.strictObject({
  kind: z.literal('conductor').describe('a cable, connector, fuse, trace or plane'),
  title,
  source,
  note,
  'fed-by': fedBy,
  resistance: quantity(
    'resistance',
    'resistance at 20 °C, both ways where current returns through it',
    'not-negative',
  ).optional(),
  wire: z
    .strictObject({
      gauge: definition('length', 'conductor diameter, or AWG'),
      length: quantity('length', 'length of conductor, both ways'),
    })
    .optional()
    .describe('copper wire, instead of a resistance'),
  'temperature-coefficient': quantity('temperature-coefficient', 'of its resistance, from 20 °C', 'any').optional(),
  'rated-current': rating('current', 'rated current'),
  derating: derating.optional(),
  heats,
});

/** One resistor of a sense point. */
export const fittedResistor = z.strictObject({
  title,
  source,
  resistance: quantity('resistance', 'at 20 °C'),
  joint: quantity('resistance', 'its solder joints, where the sense lines include them', 'not-negative').optional(),
  'temperature-coefficient': quantity('temperature-coefficient', 'of its resistance, from 20 °C', 'any').optional(),
  'rated-power': rating('power', 'rated dissipation'),
  derating: derating.optional(),
});

const sensePart = z.strictObject({
  kind: z.literal('sense').describe('a sense point: one resistor, or several in parallel, in series with the current'),
  title,
  source,
  note,
  'fed-by': fedBy,
  fitted: z.array(fittedResistor).min(1).describe('the resistors soldered there, in parallel'),
  divider: z
    .strictObject({
      series: quantity('resistance', 'all series resistance in the two sense lines'),
      parallel: quantity('resistance', 'resistor across the sense lines at the amplifier'),
      input: quantity('resistance', 'the amplifier’s own input resistance').optional(),
    })
    .optional()
    .describe('divider on the sense lines'),
  heats,
});

const lossesByParts = z.strictObject({
  by: z.literal('parts').describe('losses added up from the parts of one phase'),
  'high-side': quantity('resistance', 'on-resistance of the high-side switch at 25 °C'),
  'low-side': quantity('resistance', 'on-resistance of the low-side switch at 25 °C'),
  'on-coefficient': quantity('temperature-coefficient', 'of both on-resistances, from 25 °C', 'any'),
  'switching-time': quantity('time', 'rise plus fall time of the high side'),
  'output-charge': quantity('charge', 'output charge of both switches', 'not-negative'),
  'recovery-charge': quantity('charge', 'reverse recovery charge of the low side', 'not-negative'),
  'gate-charge': quantity('charge', 'gate charge of both switches', 'not-negative'),
  'drive-voltage': quantity('voltage', 'gate drive voltage'),
  'dead-time': quantity('time', 'both dead times of one period', 'not-negative'),
  'diode-voltage': quantity('voltage', 'body diode drop in the dead times'),
  winding: quantity('resistance', 'inductor winding at 25 °C'),
  'winding-coefficient': quantity('temperature-coefficient', 'of the winding, from 25 °C', 'any').optional(),
  core: quantity('power', 'inductor core loss', 'not-negative'),
});

const lossesByCurve = z.strictObject({
  by: z.literal('curve').describe('a data sheet’s loss of one phase (stage and inductor together) against its current'),
  points: z
    .array(
      z.strictObject({
        current: definition('current', 'current of one phase', 'not-negative'),
        loss: quantity('power', 'loss of one phase at that current', 'not-negative'),
      }),
    )
    .min(3)
    .describe('rising currents'),
  'at-temperature': definition('temperature', 'junction temperature the curve was taken at', 'any'),
  'loss-coefficient': quantity(
    'temperature-coefficient',
    'relative change of the loss with junction temperature',
    'any',
  ),
});

const regulatorPart = z.strictObject({
  kind: z.literal('regulator').describe('a switching regulator of one or more phases'),
  title,
  source,
  note,
  'fed-by': fedBy,
  output: quantity('voltage', 'output voltage at processor scale 1'),
  'output-exponent': quantity(
    'ratio',
    'output voltage follows scale to this power; 0.33 is the cube law (common practice, no source)',
    'not-negative',
  ).optional(),
  phases: count('active phases'),
  imbalance: quantity('ratio', 'by how much the busiest phase exceeds an equal share', 'not-negative'),
  frequency: quantity('frequency', 'switching frequency of one phase'),
  inductance: quantity('inductance', 'inductance of one phase at its current'),
  losses: z.discriminatedUnion('by', [lossesByParts, lossesByCurve]),
  fixed: quantity('power', 'controller and drivers, whatever the load', 'not-negative'),
  stage: z.strictObject({
    'rated-current': rating('current', 'continuous current of one stage'),
    derating: derating.optional(),
    'junction-limit': rating('temperature', 'highest junction temperature'),
    'junction-rise': quantity(
      'thermal-resistance',
      'junction above its heat node, per watt lost in one stage',
      'not-negative',
    ),
  }),
  inductor: z.strictObject({
    'saturation-current': rating('current', 'peak current at which the inductance has fallen'),
    'heating-current': rating('current', 'rms current for its rated temperature rise'),
  }),
  'input-capacitors': z.strictObject({
    count: count('capacitors in parallel'),
    'rated-ripple': rating('current', 'rated rms ripple current of one'),
  }),
  heats: z
    .union([
      name,
      z.strictObject({
        stages: name.describe('node that takes the switches’ losses'),
        inductors: name.describe('node that takes winding and core losses'),
      }),
    ])
    .describe('one node, or one for the stages and one for the inductors'),
});

const loadPart = z.strictObject({
  kind: z.literal('load').describe('a consumer'),
  title,
  source,
  note,
  'fed-by': fedBy,
  power: quantity('power', 'power taken; for a follower, at processor scale 1', 'not-negative'),
  idle: quantity('power', 'the part of a follower’s power that stays at scale 0', 'not-negative').optional(),
  follows: z
    .literal('processor')
    .optional()
    .describe('rises and falls with the processor’s scale; without it the power is constant'),
  leakage: z
    .strictObject({
      power: quantity(
        'power',
        'leakage at the reference temperature, at the rail’s voltage at scale 1',
        'not-negative',
      ),
      at: definition('temperature', 'reference temperature', 'any'),
      'e-fold': quantity('temperature-difference', 'rise in temperature that multiplies it by e'),
    })
    .optional()
    .describe('extra power that grows with the temperature of its node'),
  'rated-current': rating('current', 'highest current of the rail into this load'),
  heats,
});

/** One part on the power path. */
export const part = z.discriminatedUnion('kind', [supplyPart, conductorPart, sensePart, regulatorPart, loadPart]);

export type Part = z.output<typeof part>;
export type SupplyPart = z.output<typeof supplyPart>;
export type ConductorPart = z.output<typeof conductorPart>;
export type SensePart = z.output<typeof sensePart>;
export type RegulatorPart = z.output<typeof regulatorPart>;
export type LoadPart = z.output<typeof loadPart>;
export type Derating = z.output<typeof derating>;
