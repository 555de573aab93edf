import { dialSampling, progress, SAMPLES, shownPlan } from './plans.ts';
import { grouped, methodWord } from './words.ts';

/** How the figures were made so far: first order at once, samples as they come. */
export function SamplingState() {
  const under = progress.value;
  const plan = shownPlan.value;
  if (!plan?.operating && !under) return null;
  const share = under && (under.done + under.share) / under.of;
  const sampling = under || dialSampling.value;
  const made = [plan?.operating && methodWord(plan), sampling && `sampling ${grouped(SAMPLES)} draws a step`];
  return (
    <p class="method">
      {made.filter(Boolean).join(' · ')} {share !== null && <progress aria-label="Sampling" value={share} max={1} />}
    </p>
  );
}
