import { touchLimit } from '../../src/physics/thermal/touch-temperature.ts';
import type { Figure, Topic } from '../topic.ts';

const source =
  'IEC 62368-1:2018, table 38, class TS1, as quoted by members of the committee in the IEEE product safety list, messages 77021 to 77023';

const rows: readonly [seconds: number, says: string, published: number][] = [
  [0.5, 'that need not be touched', 94],
  [5, 'touched for 1 s to 10 s', 77],
  [600, 'held for long', 48],
];

export const topic: Topic = {
  title: 'Temperatures that may be touched',
  field: 'thermal',
  figures: rows.map(([seconds, says, published]): Figure => {
    return {
      what: `plastic ${says} [°C]`,
      computed: touchLimit('plastic', seconds) - 273.15,
      published,
      tolerance: 1e-9,
      why: 'a limit, not a measurement',
      source,
      tier: 'A',
    };
  }),
  unchecked: [
    'IEC 62368-1, table 38: every other value is from memory; have it checked against the standard before it decides anything',
    'burn thresholds of EN ISO 13732-1: not read',
  ],
};
