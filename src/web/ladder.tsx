import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type LadderRow, ladderChart } from '../charts/ladder-chart.ts';
import type { StepPlan } from '../steps/step-plan.ts';
import { drawnMargin } from './drawn-margin.ts';
import { Picture } from './picture.tsx';
import { chooseStep, chosenStep, isWhatIf, plans, shownPlan } from './plans.ts';
import { SamplingState } from './sampling-state.tsx';
import { StateWord } from './state-word.tsx';
import { TableFrame } from './table-frame.tsx';
import { tableText } from './table-text.ts';
import { bareFigure, bindingMargin, holderWord, noOperatingPoint, openWord, powerLimiter, stepState } from './words.ts';

/** Where the study stands: each step with its real power and its binding margin. */
export function Ladder() {
  const rows = plans.value.map((plan) => (plan.id === chosenStep.value ? (shownPlan.value ?? plan) : plan));
  return (
    <section aria-labelledby="ladder-heading">
      <div class="heading">
        <h2 id="ladder-heading">Ladder</h2>
        <SamplingState />
      </div>
      <LadderPicture rows={rows} />
      <LadderTable rows={rows} />
    </section>
  );
}

function LadderPicture({ rows }: { rows: readonly StepPlan[] }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useSignal(0);
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      width.value = Math.floor(entry!.contentRect.width);
    });
    observer.observe(frame.current!);
    return () => observer.disconnect();
  }, [width]);
  const choose = (event: MouseEvent) => {
    const id = (event.target as Element).closest('[data-step]')?.getAttribute('data-step');
    if (id) chooseStep(id);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: a shortcut for the pointer; the table's buttons do the same
    <div ref={frame} class="ladder-picture" onClick={choose}>
      {width.value > 0 && (
        <Picture
          svg={ladderChart(rows.map(ladderRow), { width: width.value, title: 'Steps and their binding margins' })}
        />
      )}
    </div>
  );
}

function ladderRow(plan: StepPlan): LadderRow {
  const binding = bindingMargin(plan);
  const limiter = powerLimiter(plan);
  const { state, word } = stepState(plan);
  const chosen = plan.id === chosenStep.value;
  const whatIf = chosen && isWhatIf.value ? 'what if: ' : '';
  return {
    id: plan.id,
    title: plan.title,
    power: limiter ? bareFigure(limiter.real) : '',
    note: plan.operating && limiter ? `${whatIf}reads ${bareFigure(limiter.reads)} · held by ${holderWord(plan)}` : '',
    margin: binding && drawnMargin(binding),
    binding: plan.operating ? (binding?.title ?? 'no limit has data') : noOperatingPoint(plan.ending),
    state,
    stateWord: word,
    openWord: openWord(plan),
    chosen,
  };
}

const HEAD = [
  'Step',
  'Real power',
  'Reads',
  'Held by',
  'What binds',
  'Margin',
  '95 % interval',
  'Exceeded with',
  'Unknown',
  'State',
];

function cells(plan: StepPlan): readonly string[] {
  const limiter = powerLimiter(plan);
  const binding = bindingMargin(plan);
  if (!plan.operating) return ['', '', noOperatingPoint(plan.ending), '', '', '', '', '', ''];
  return [
    limiter?.real.text ?? '',
    limiter?.reads.text ?? '',
    holderWord(plan),
    binding?.title ?? 'no limit has data',
    binding?.margin.text ?? '',
    binding ? `${binding.interval.low.text} … ${binding.interval.high.text}` : '',
    binding?.exceed.text ?? '',
    String(plan.open.length),
  ];
}

/** Which columns hold words; the others are figures and line up on the right. */
const WORDS = new Set([2, 3]);

function LadderTable({ rows }: { rows: readonly StepPlan[] }) {
  const text = () =>
    tableText(
      HEAD,
      rows.map((plan) => [plan.title, ...cells(plan), stepState(plan).word]),
    );
  return (
    <TableFrame name="Steps in figures" text={text}>
      <thead>
        <tr>
          {HEAD.map((name, at) => (
            <th key={name} scope="col" class={at === 0 || at === 9 || WORDS.has(at - 1) ? undefined : 'figure'}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((plan) => {
          const { state, word } = stepState(plan);
          const chosen = plan.id === chosenStep.value;
          return (
            <tr key={plan.id} class={chosen ? 'chosen' : undefined}>
              <th scope="row">
                <button type="button" class="choose" aria-pressed={chosen} onClick={() => chooseStep(plan.id)}>
                  {plan.title}
                </button>
              </th>
              {cells(plan).map((cell, at) => (
                <td key={HEAD[at + 1]} class={WORDS.has(at) ? 'words' : 'figure'}>
                  {cell}
                </td>
              ))}
              <td>
                <StateWord state={state} word={word} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </TableFrame>
  );
}
