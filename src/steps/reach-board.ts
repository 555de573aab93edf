import type { Step, Study } from '../study/study.ts';

/** A heat path that occurs in a study: where the heat goes, plate and pads included. */
export interface Cooling {
  /** The first step that has it. */
  readonly step: string;
  readonly title: string;
  /** Every step that has it. */
  readonly steps: readonly string[];
  /** Fields of the heat path that its first step changes; none for the board as delivered. */
  readonly changed: readonly string[];
}

/** The different heat paths of a study's steps, in the order in which they come. */
export function coolingsOf(study: Study): readonly Cooling[] {
  const alike = new Map<string, Step[]>();
  for (const step of study.steps) {
    const written = JSON.stringify([step.board.heat, step.board.plate]);
    alike.set(written, [...(alike.get(written) ?? []), step]);
  }
  return [...alike.values()].map((steps) => ({
    step: steps[0].id,
    title: steps[0].title,
    steps: steps.map(({ id }) => id),
    changed: steps[0].changed.filter(isOfHeatPath),
  }));
}

/**
 * A step's power path on the heat path of `cooling`, its power to be set at `limiter`. Whatever else would hold the processor only watches, so that what lies
 * beyond it can be seen; it stands among the limits.
 */
export function stepToReach(step: Step, cooling: Step, limiter: string): Step {
  const { heat, plate } = cooling.board;
  const limiters = Object.entries(step.board.limiters).map(([id, entry]) => [
    id,
    id !== limiter && entry.acts === 'regulate' ? { ...entry, acts: 'warn' as const } : entry,
  ]);
  return {
    ...step,
    board: { ...step.board, heat, plate, limiters: Object.fromEntries(limiters) },
    quantities: new Map([
      ...[...step.quantities].filter(([, path]) => !isOfHeatPath(path)),
      ...[...cooling.quantities].filter(([, path]) => isOfHeatPath(path)),
    ]),
  };
}

/** Places with heat of a step that another heat path doesn't have. */
export function placesMissing(step: Step, cooling: Step): readonly string[] {
  return Object.keys(step.board.heat.nodes).filter((id) => !(id in cooling.board.heat.nodes));
}

export function isOfHeatPath(path: string): boolean {
  return /^(heat|plate)\b/.test(path);
}
