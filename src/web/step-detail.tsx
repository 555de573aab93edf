import type { StepPlan } from '../steps/step-plan.ts';
import { UncertaintyBudget } from './budget-table.tsx';
import { FaultList } from './faults.tsx';
import { LimitersTable } from './limiters-table.tsx';
import { MarginsTable } from './margins-table.tsx';
import { OpenLimits } from './open-limits.tsx';
import { shownPlan } from './plans.ts';
import { bareFigure } from './words.ts';

/** Everything the study says about the chosen step. */
export function StepDetail() {
  const plan = shownPlan.value;
  if (!plan) return null;
  return (
    <>
      {plan.operating && <MarginsTable plan={plan} />}
      {plan.operating && <UncertaintyBudget />}
      <OpenLimits open={plan.open} />
      <Notes plan={plan} />
      <LimitersTable limiters={plan.limiters} />
      <Changes plan={plan} />
      <Solution plan={plan} />
    </>
  );
}

/** Where the figures lean on data that ends before them. */
function Notes({ plan: { notes } }: { plan: StepPlan }) {
  if (notes.length === 0) return null;
  return (
    <section class="notes">
      <h2>Beyond the data</h2>
      <FaultList faults={notes} />
    </section>
  );
}

function Changes({ plan }: { plan: StepPlan }) {
  return (
    <section>
      <h2>Changed at this step</h2>
      {plan.about && <p class="about">{plan.about}</p>}
      {plan.changed.length === 0 ? (
        <p>Nothing: the board as delivered.</p>
      ) : (
        <ul class="paths">
          {plan.changed.map((path) => (
            <li key={path}>
              <code>{path}</code>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** How well the equations are met: what someone who doubts the figures looks at first. */
function Solution({ plan: { solution, sampling } }: { plan: StepPlan }) {
  if (!solution) return null;
  return (
    <p class="solution">
      Solved to {solution.residual.toExponential(0)}. From the wall {bareFigure(solution.wallPower)}, leaving as heat{' '}
      {bareFigure(solution.heat)}: out of balance by {(100 * solution.imbalance).toPrecision(1)} %.
      {sampling && sampling.failed > 0 && ` ${sampling.failed} of ${sampling.samples} draws found no operating point.`}
    </p>
  );
}
