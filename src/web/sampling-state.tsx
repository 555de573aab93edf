import { dialSampling, plans, progress, SAMPLES, shownPlan } from './plans.ts';
import { grouped, methodWord } from './words.ts';

/** How far the figures are: first order at once, samples as they come. */
export function SamplingState() {
  const under = progress.value;
  if (under) {
    const share = (under.done + under.share) / under.of;
    return (
      <p class="method">
        <label>
          first order; sampling {grouped(SAMPLES)} draws a step <progress value={share} max={1} />
        </label>
      </p>
    );
  }
  if (dialSampling.value) return <p class="method">first order; sampling {grouped(SAMPLES)} draws …</p>;
  const plan = [shownPlan.value, ...plans.value].find((each) => each?.operating);
  return plan ? <p class="method">{methodWord(plan)}</p> : null;
}
