import {
  offsetCompensatedResistance,
  reversedResistance,
  thermalVoltage,
} from '../../src/physics/sensing/four-wire.ts';
import { shuntCurrent } from '../../src/physics/sensing/shunt-current.ts';
import type { Topic } from '../topic.ts';

const byHand = { source: 'closed form, worked by hand', tier: 'C' } as const;

export const topic: Topic = {
  title: 'Small resistances and currents',
  field: 'sensing',
  figures: [
    {
      what: '+10.013 mV and −10.007 mV at 10 A: resistance [mΩ]',
      computed: 1e3 * reversedResistance(10.013e-3, -10.007e-3, 10),
      published: 1.001,
      tolerance: 1e-9,
      why: '20.020/20',
      ...byHand,
    },
    {
      what: '+10.013 mV and −10.007 mV: thermal voltage [µV]',
      computed: 1e6 * thermalVoltage(10.013e-3, -10.007e-3),
      published: 3,
      tolerance: 1e-9,
      why: '0.006/2',
      ...byHand,
    },
    {
      what: '10.013 mV with 10 A on, 0.003 mV with it off: resistance [mΩ]',
      computed: 1e3 * offsetCompensatedResistance(10.013e-3, 3e-6, 10),
      published: 1.001,
      tolerance: 1e-9,
      why: '10.010/10',
      ...byHand,
    },
    {
      what: '75 mV over a 1 mΩ shunt [A]',
      computed: shuntCurrent(0.075, 0, 1, 1e-3),
      published: 75,
      tolerance: 1e-9,
      why: "Ohm's law",
      ...byHand,
    },
    {
      what: '2.65 V from a gain of 50 about 1.65 V, 5 mΩ [A]',
      computed: shuntCurrent(2.65, 1.65, 50, 5e-3),
      published: 4,
      tolerance: 1e-9,
      why: '1 V over 50 over 5 mΩ',
      ...byHand,
    },
    {
      what: '3.3 V from a gain of 20 with 82.5 mΩ [A]',
      computed: shuntCurrent(3.3, 0, 20, 0.0825),
      published: 2,
      tolerance: 1e-9,
      why: 'R = 3.3 V/(2 A·20)',
      source: 'electronics.stackexchange.com, question 671145, worked sizing of a shunt',
      tier: 'B',
    },
  ],
  unchecked: ['a published measurement with reversed current: none with its readings was found'],
};
