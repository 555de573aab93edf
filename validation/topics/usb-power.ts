import { type UsbCable, usbPower } from '../../src/physics/electrical/usb-power.ts';
import type { Figure, Topic } from '../topic.ts';

const standard = 'IEC 62680-1-2, USB Power Delivery revision 3.1, 2021, as summarised in published articles';

const levels: [voltage: number, cable: UsbCable, watts: number][] = [
  [5, '3 A', 15],
  [9, '3 A', 27],
  [15, '3 A', 45],
  [20, '3 A', 60],
  [20, '5 A', 100],
  [20, 'extended', 100],
  [28, 'extended', 140],
  [36, 'extended', 180],
  [48, 'extended', 240],
  [15, '5 A', 45],
  [15, 'extended', 45],
  [9, '5 A', 27],
  [5, 'extended', 15],
  [9, 'extended', 27],
  [5, '5 A', 15],
];

export const topic: Topic = {
  title: 'USB power levels',
  field: 'electrical',
  figures: levels.map(([voltage, cable, published]): Figure => {
    const found = usbPower(voltage, cable);
    return {
      what: `${voltage} V through a cable rated "${cable}" [W]`,
      computed: found.ok ? found.power : Number.NaN,
      published,
      tolerance: 1e-9,
      why: 'a table',
      source: standard,
      tier: 'A',
    };
  }),
  unchecked: [
    'the text of the specification itself; adjustable voltages (15 V to 48 V in steps of 100 mV) are not in the table',
  ],
};
