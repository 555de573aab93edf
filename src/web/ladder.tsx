import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type LadderRow, ladderChart } from '../charts/ladder-chart.ts';
import type { StepPlan } from '../steps/step-plan.ts';
import { DataTable } from './data-table.tsx';
import { drawnMargin } from './drawn-margin.ts';
import { Picture } from './picture.tsx';
import { chooseStep, chosenStep, isWhatIf, plans, shownPlan } from './plans.ts';
import { StateWord } from './state-word.tsx';
import { tableText } from './table-text.ts';
import {
  bareFigure,
  bindingMargin,
  holderWord,
  intervalOf,
  noOperatingPoint,
  openWord,
  powerLimiter,
  stepState,
} from './words.ts';

/** Where the study stands: each step with its real power and its binding margin. */
export function Ladder() {
  const rows = plans.value.map((plan) => (plan.id === chosenStep.value ? (shownPlan.value ?? plan) : plan));
  return (
    <section aria-labelledby="ladder-heading">
      <div class="heading">
        <h2 id="ladder-heading">Ladder</h2>
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
  const whatIf = chosen && isWhatIf.value ? 'what if · ' : '';
  return {
    id: plan.id,
    title: plan.title,
    power: plan.operating && limiter ? bareFigure(limiter.real) : '',
    note: plan.operating && limiter ? `${whatIf}reads ${bareFigure(limiter.reads)} · ${holderWord(plan)}` : '',
    margin: binding && drawnMargin(binding),
    binding: plan.operating ? (binding?.title ?? 'no limit has data') : noOperatingPoint(plan.ending),
    state,
    stateWord: word,
    openWord: openWord(plan),
    chosen,
  };
}

const COLUMNS = [
  { name: 'Step' },
  { name: 'Real power', figure: true },
  { name: 'Reads', figure: true },
  { name: 'Held by' },
  { name: 'What binds' },
  { name: 'Margin', figure: true },
  { name: '95 % interval', figure: true },
  { name: 'Exceeded with', figure: true },
  { name: 'Unknown', figure: true },
  { name: 'State' },
];

/** What stands between a step's name and its state. */
function cells(plan: StepPlan): readonly string[] {
  const limiter = powerLimiter(plan);
  const binding = bindingMargin(plan);
  if (!plan.operating) return ['', '', '', noOperatingPoint(plan.ending), '', '', '', ''];
  return [
    limiter?.real.text ?? '',
    limiter?.reads.text ?? '',
    holderWord(plan),
    binding?.title ?? 'no limit has data',
    binding?.margin.text ?? '',
    binding ? intervalOf(binding) : '',
    binding ? binding.exceed.text : '',
    String(plan.open.length),
  ];
}

function LadderTable({ rows }: { rows: readonly StepPlan[] }) {
  const text = () =>
    tableText(
      COLUMNS.map(({ name }) => name),
      rows.map((plan) => [plan.title, ...cells(plan), stepState(plan).word]),
    );
  return (
    <DataTable
      name="Steps in figures"
      columns={COLUMNS}
      rows={rows.map((plan) => {
        const chosen = plan.id === chosenStep.value;
        return {
          key: plan.id,
          chosen,
          cells: [
            <button type="button" class="choose" aria-pressed={chosen} onClick={() => chooseStep(plan.id)}>
              {plan.title}
            </button>,
            ...cells(plan),
            <StateWord {...stepState(plan)} />,
          ],
        };
      })}
      text={text}
    />
  );
}
