import type { StepPlan } from '../steps/step-plan.ts';
import { UncertaintyBudget } from './budget-table.tsx';
import { CopyButton } from './copy.tsx';
import { FaultList } from './faults.tsx';
import { LimitersTable } from './limiters-table.tsx';
import { MarginsTable } from './margins-table.tsx';
import { OpenLimits } from './open-limits.tsx';
import { isWhatIf, shownPlan } from './plans.ts';
import { StateWord } from './state-word.tsx';
import {
  bareFigure,
  bindingMargin,
  holderWord,
  methodWord,
  noOperatingPoint,
  openWord,
  powerLimiter,
  stepState,
} from './words.ts';

/** Everything the study says about the chosen step. */
export function StepDetail() {
  const plan = shownPlan.value;
  if (!plan) return null;
  return (
    <section aria-labelledby="step-heading" class="step-detail">
      <div class="heading">
        <h2 id="step-heading">
          {plan.title}
          {isWhatIf.value && <span class="what-if">what if</span>}
        </h2>
        {plan.operating && <p class="method">{methodWord(plan)}</p>}
      </div>
      {plan.about && <p class="about">{plan.about}</p>}
      {plan.operating ? <Solved plan={plan} /> : <Unsolved plan={plan} />}
      <Changes plan={plan} />
      <Solution plan={plan} />
    </section>
  );
}

function Solved({ plan }: { plan: StepPlan }) {
  return (
    <>
      <Headline plan={plan} />
      <MarginsTable plan={plan} />
      <UncertaintyBudget />
      <OpenLimits open={plan.open} />
      <LimitersTable limiters={plan.limiters} />
    </>
  );
}

function Unsolved({ plan }: { plan: StepPlan }) {
  return (
    <div class="unsolved">
      <p class="large">
        <StateWord state="none" word={noOperatingPoint(plan.ending)} />
      </p>
      <p>There are no figures for this step, because no state of the board satisfies its equations.</p>
      <FaultList faults={plan.faults} />
    </div>
  );
}

/** The few figures that are read from a metre away. */
function Headline({ plan }: { plan: StepPlan }) {
  const limiter = powerLimiter(plan);
  const binding = bindingMargin(plan);
  const { state, word } = stepState(plan);
  return (
    <dl class="headline">
      {limiter && (
        <Large
          name="Real power"
          figure={bareFigure(limiter.real)}
          copied={limiter.real.text}
          under={`held by ${holderWord(plan)}`}
        />
      )}
      {limiter && (
        <Large
          name="It reads"
          figure={bareFigure(limiter.reads)}
          copied={limiter.reads.text}
          under={`allowed ${bareFigure(limiter.allowed)}`}
        />
      )}
      {binding && (
        <Large
          name="Binding margin"
          figure={bareFigure(binding.margin)}
          copied={binding.margin.text}
          under={binding.title}
        />
      )}
      {binding && (
        <Large
          name="Exceeded with"
          figure={binding.exceed.text.split(' (')[0]!}
          copied={binding.exceed.text}
          under="probability"
        />
      )}
      <div>
        <dt>State</dt>
        <dd class="large">
          <StateWord state={state} word={word} />
        </dd>
        <dd class="under">{openWord(plan) || 'nothing unknown'}</dd>
      </div>
    </dl>
  );
}

function Large(props: { name: string; figure: string; copied: string; under: string }) {
  return (
    <div>
      <dt>{props.name}</dt>
      <dd class="large">
        {props.figure} <CopyButton text={() => props.copied} label={`Copy ${props.copied}`} />
      </dd>
      <dd class="under">{props.under}</dd>
    </div>
  );
}

function Changes({ plan }: { plan: StepPlan }) {
  return (
    <>
      <h3>Changed at this step</h3>
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
    </>
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
