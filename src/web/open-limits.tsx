import type { OpenLimit } from '../steps/step-plan.ts';
import { StateWord } from './state-word.tsx';

/** Limits that exist but have no data, each with the field that would close it. */
export function OpenLimits({ open }: { open: readonly OpenLimit[] }) {
  if (open.length === 0) return null;
  return (
    <section>
      <h2>
        <StateWord state="open" word={`Not known: ${open.length} ${open.length === 1 ? 'limit' : 'limits'}`} />
      </h2>
      <p class="about">Unknown is not safe. Each of these holds the step until its field in the study is filled in.</p>
      <ul class="open-limits">
        {open.map((limit) => (
          <li key={limit.id}>
            <span>
              {limit.title}
              {limit.value && <span class="now"> now {limit.value.text}</span>}
            </span>
            <span>
              fill in <code>{limit.field}</code>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
