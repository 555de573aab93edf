import type { StepPlan } from '../steps/step-plan.ts';
import { CopyButton } from './copy.tsx';
import { FaultList } from './faults.tsx';
import { isWhatIf, shownPlan } from './plans.ts';
import { SamplingState } from './sampling-state.tsx';
import { StateWord } from './state-word.tsx';
import {
  bareFigure,
  bindingMargin,
  holderWord,
  intervalOf,
  noOperatingPoint,
  openWord,
  powerLimiter,
  stepState,
  uncertaintyOf,
  withMinus,
} from './words.ts';

/** How the chosen step stands, in the few figures that are read from a metre away: what binds, by how much, how sure, what is open. */
export function Verdict() {
  const plan = shownPlan.value;
  if (!plan) return null;
  return (
    <section aria-labelledby="step-heading" class="verdict">
      <div class="heading">
        <h2 id="step-heading">
          {plan.title}
          {isWhatIf.value && <span class="what-if">what if</span>}
        </h2>
        <SamplingState />
      </div>
      {plan.operating ? <Headline plan={plan} /> : <Unsolved plan={plan} />}
    </section>
  );
}

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
          sure={uncertaintyOf(limiter.real)}
          about={`held by ${holderWord(plan)}`}
        />
      )}
      {binding && (
        <Large
          name="Binding margin"
          figure={bareFigure(binding.margin)}
          copied={binding.margin.text}
          sure={uncertaintyOf(binding.margin)}
          about={binding.title}
        />
      )}
      {binding && (
        <Large
          name="Exceeded with"
          figure={binding.exceed.text}
          copied={binding.exceed.text}
          sure="probability"
          about={`95 %: ${withMinus(intervalOf(binding))}`}
        />
      )}
      <div>
        <dt>State</dt>
        <dd class="large">
          <StateWord state={state} word={word} />
        </dd>
        <dd class="under">{openWord(plan) || 'nothing unknown'}</dd>
      </div>
      {limiter && (
        <Large
          name="It reads"
          figure={bareFigure(limiter.reads)}
          copied={limiter.reads.text}
          sure={uncertaintyOf(limiter.reads)}
          about={`allowed ${bareFigure(limiter.allowed)}`}
        />
      )}
    </dl>
  );
}

function Large(props: { name: string; figure: string; copied: string; sure: string; about: string }) {
  return (
    <div>
      <dt>{props.name}</dt>
      <dd class="large">{props.figure}</dd>
      <dd class="sure">
        {props.sure} <CopyButton text={() => props.copied} label={`Copy ${props.copied}`} />
      </dd>
      <dd class="under">{props.about}</dd>
    </div>
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
