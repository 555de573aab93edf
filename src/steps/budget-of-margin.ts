import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type Budget, budget } from '../metrology/budget.ts';
import { budgetByGroup } from '../metrology/budget-groups.ts';
import { secondOrder } from '../metrology/second-order.ts';
import { type Sensitivities, sensitivities } from '../metrology/sensitivity.ts';
import { indexGroups, sobolIndices } from '../metrology/sobol-indices.ts';
import { degreesOfFreedom } from '../quantity/spread.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { groupOf } from './input-groups.ts';
import { boardDial, stepOf } from './plan.ts';
import type { BendBudget, BudgetGroups, BudgetRow, Dial, GlobalBudget, Grouping } from './step-plan.ts';

/** Why a margin is uncertain: every input with its share, largest first. `null`: no such limit at this step, or no solution. */
export function budgetOfMargin(study: Study, stepId: string, limitId: string, dial?: Dial): BudgetRow[] | null {
  const found = marginOf(study, stepId, limitId, dial);
  if (!found?.made) return null;
  const { board, made, output } = found;
  return made.rows.map((row) => {
    const input = board.inputs[board.indexOfInput(row.input)];
    return {
      input: row.input,
      value: figure(input.value, row.u, input.kind, input.unit),
      source: input.source,
      sensitivity: row.sensitivity,
      contribution: figure(Math.abs(row.contribution), null, output.kind, output.unit),
      share: row.share,
      degreesOfFreedom: finiteOrNull(input.spread ? degreesOfFreedom(input.spread) : Number.POSITIVE_INFINITY),
    };
  });
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** The same by part of the board, or by where the numbers come from. */
export function budgetGroupsOfMargin(
  study: Study,
  stepId: string,
  limitId: string,
  by: Grouping,
  dial?: Dial,
): BudgetGroups | null {
  const found = marginOf(study, stepId, limitId, dial);
  if (!found?.made) return null;
  const { board, made, output } = found;
  const { groups, between } = budgetByGroup(made, (id) => groupOf(by, board.inputs[board.indexOfInput(id)]));
  return {
    by,
    groups: groups.map(({ group, inputs, u, share }) => ({
      group,
      inputs,
      contribution: figure(u, null, output.kind, output.unit),
      share,
    })),
    between,
  };
}

/** What second order adds where a margin bends; null where that can't be told. */
export function bendsOfMargin(study: Study, stepId: string, limitId: string): BendBudget | null {
  const found = marginOf(study, stepId, limitId, undefined);
  if (!found) return null;
  const { board, output } = found;
  const made = secondOrder(board, [output.id]).get(output.id);
  if (!made) return null;
  const { expectation, u, terms } = made;
  return {
    u: figure(u, null, output.kind, output.unit),
    mean: figure(expectation, u, output.kind, output.unit),
    terms,
  };
}

/** The same without a straight line: what each input accounts for over its whole distribution, alone and together with others. */
export function globalBudgetOfMargin(
  study: Study,
  stepId: string,
  limitId: string,
  seed: number,
  dial?: Dial,
): GlobalBudget | null {
  const found = marginOf(study, stepId, limitId, dial);
  const groups = found && indexGroups(found.board, found.output.id, found.sens);
  if (!groups) return null;
  const { board, output } = found;
  const { rows, interaction, interactionU, u, evaluations, lost } = sobolIndices(board, output.id, groups, { seed });
  return {
    rows: rows.map(({ name, inputs, first, firstU, total, totalU }) => ({
      group: name,
      inputs,
      first: { share: first, u: firstU },
      total: { share: total, u: totalU },
    })),
    interaction: { share: interaction, u: interactionU },
    u: figure(u, null, output.kind, output.unit),
    evaluations,
    lost,
    seed,
  };
}

interface MarginFound {
  readonly board: BoardModel;
  readonly output: BoardModel['outputs'][number];
  readonly sens: Sensitivities;
  readonly made: Budget | null;
}

function marginOf(study: Study, stepId: string, limitId: string, dial: Dial | undefined): MarginFound | null {
  const assembly = assembleBoard(stepOf(study, stepId), dial && boardDial(dial));
  if (!assembly.ok) return null;
  const { board } = assembly;
  const limit = board.limits.find(({ id }) => id === limitId);
  if (!limit) return null;
  const output = board.outputs[limit.marginOutput];
  const sens = sensitivities(board);
  return { board, output, sens, made: budget(board, output.id, sens) };
}
