import { liquidCapacitorLife } from '../../src/physics/electrical/capacitor-life.ts';
import type { Figure, Topic } from '../topic.ts';

const cosel = 'technical note A0057, COSEL, life of electrolytic capacitors';
const wuerth = 'Würth Elektronik, capacitor life rules, pages 18–19: twice for each 10 K (liquid electrolyte)';

const lives: [rated: number, at: number, published: number, source: string][] = [
  [1000, 45, 64_000, cosel],
  [1000, 55, 32_000, cosel],
  [1000, 65, 16_000, cosel],
  [2000, 95, 4000, wuerth],
];

export const topic: Topic = {
  title: 'Life of electrolytic capacitors',
  field: 'electrical',
  figures: lives.map(([rated, at, published, source]): Figure => {
    return {
      what: `life of ${rated} h at 105 °C, at ${at} °C [h]`,
      computed: liquidCapacitorLife(rated, 105, at),
      published,
      tolerance: 1e-6,
      why: 'the figure is exact to the digits printed',
      source,
      tier: 'B',
    };
  }),
};
