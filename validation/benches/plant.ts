import type { Planted } from '../../src/rehearsal/planted.ts';
import type { Study } from '../../src/study/study.ts';

/** Hidden faults of a campaign; `pick` from 0 to 1 chooses among the places where one can be. */
export const plants: Readonly<Record<Planted['kind'], (study: Study, pick: number) => Planted>> = {
  // The pads that instruments can feel: under the stages, and the die's paste.
  'detached-pad': (_, pick) => ({ kind: 'detached-pad', link: pick < 0.5 ? 'stages-board' : 'die-plate' }),
  'wrong-sense': (_, pick) => ({ kind: 'wrong-sense', part: 'core-sense', factor: pick < 0.5 ? 0.9 : 1.1 }),
  'dead-phase': () => ({ kind: 'dead-phase', part: 'core-vr' }),
  'swapped-channels': (study, pick) => {
    const temperatures = Object.keys(study.instruments).filter((id) =>
      study.instruments[id].shows.startsWith('heat.nodes.'),
    );
    const one = Math.floor(pick * temperatures.length);
    const other = (one + 1) % temperatures.length;
    return { kind: 'swapped-channels', instruments: [temperatures[one], temperatures[other]] };
  },
};
