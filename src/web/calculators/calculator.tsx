import { useComputed, useSignal } from '@preact/signals';
import { sayFault } from '../../fault/fault.ts';
import { type Formula, validRange } from '../../physics/formula.ts';
import type { CalculatedOutput } from '../../physics/results.ts';
import { kinds } from '../../quantity/kind.ts';
import { writeValue } from '../../quantity/write.ts';
import { CopyButton } from '../copy.tsx';
import { FaultList } from '../faults.tsx';
import { withMinus } from '../words.ts';
import { answerTo, type Result } from './answer.ts';
import { TakeIntoStudy } from './take-into-study.tsx';

/** One formula with its fields: the answer follows every key, with its uncertainty and what makes it. */
export function Calculator({ formula, back }: { formula: Formula; back: () => void }) {
  const written = useSignal<Record<string, string>>({ ...formula.example.result, ...formula.example.inputs });
  const unknown = useSignal<string | null>(null);
  const goal = useSignal(formula.outputs[0].name);
  const answer = useComputed(() => answerTo(formula, written.value, unknown.value, goal.value));
  const write = (name: string, text: string) => {
    written.value = { ...written.value, [name]: text };
  };
  const asked = formula.inputs.filter(({ name }) => name !== unknown.value);
  const target = formula.outputs.find(({ name }) => name === goal.value)!;
  return (
    <article class="calculator">
      <button type="button" class="quiet" onClick={back}>
        ← All formulas
      </button>
      <h3>{formula.name.replaceAll('-', ' ')}</h3>
      <p class="about">{formula.title}</p>
      <p class="equation">{formula.equation}</p>
      <form onSubmit={(event) => event.preventDefault()}>
        {asked.map(({ name, symbol, title, kind }) => (
          <Field
            key={name}
            label={`${symbol}, ${title}`}
            example={kinds[kind].example}
            value={written.value[name] ?? ''}
            write={(text) => write(name, text)}
          />
        ))}
        <label class="solve-for">
          <span>Look for</span>
          <select
            value={unknown.value ?? ''}
            onChange={(event) => {
              unknown.value = event.currentTarget.value || null;
            }}
          >
            <option value="">the results</option>
            {formula.inputs
              .filter(({ kind }) => kind !== 'count')
              .map(({ name, symbol, title }) => (
                <option key={name} value={name}>
                  {symbol}, {title}
                </option>
              ))}
          </select>
        </label>
        {unknown.value && (
          <>
            {formula.outputs.length > 1 && (
              <label class="solve-for">
                <span>from a given</span>
                <select
                  value={goal.value}
                  onChange={(event) => {
                    goal.value = event.currentTarget.value;
                  }}
                >
                  {formula.outputs.map(({ name, title }) => (
                    <option key={name} value={name}>
                      {title}
                    </option>
                  ))}
                </select>
              </label>
            )}
            <Field
              label={`${target.title}, given`}
              example={kinds[target.kind].example}
              value={written.value[target.name] ?? ''}
              write={(text) => write(target.name, text)}
            />
          </>
        )}
      </form>
      <section aria-live="polite" aria-label="Result">
        <AnswerView answer={answer.value} formula={formula} />
      </section>
      <dl class="formula-about">
        {formula.valid.length > 0 && (
          <>
            <dt>Known to hold for</dt>
            <dd>{validRange(formula)}</dd>
          </>
        )}
        <dt>Source</dt>
        <dd>{formula.source}</dd>
        <dt>Published example</dt>
        <dd>{formula.example.source}</dd>
      </dl>
    </article>
  );
}

interface FieldShown {
  readonly label: string;
  readonly example: string;
  readonly value: string;
  readonly write: (text: string) => void;
}

function Field({ label, example, value, write }: FieldShown) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type="text"
        spellcheck={false}
        autocomplete="off"
        placeholder={example}
        value={value}
        onInput={(event) => write(event.currentTarget.value)}
      />
    </label>
  );
}

function AnswerView({ answer, formula }: { answer: ReturnType<typeof answerTo>; formula: Formula }) {
  if (answer.state === 'waiting')
    return <p class="about">Fill in {answer.missing.join(', ')}, each with its unit: 5 mΩ ± 1 %.</p>;
  if (answer.state === 'refused') return <FaultList faults={answer.faults} />;
  return (
    <>
      {answer.results.length > 1 && <p class="about">{answer.results.length} values give this result:</p>}
      {answer.results.map((result, at) => (
        <ResultView key={at} result={result} formula={formula} />
      ))}
    </>
  );
}

function ResultView({ result, formula }: { result: Result; formula: Formula }) {
  return (
    <div class="result">
      {result.outputs.map((output) => (
        <OutputView key={output.name} output={output} formula={formula} />
      ))}
      {result.warnings.map((fault, at) => (
        <p key={at} class="result-warning">
          {sayFault(fault).found}
        </p>
      ))}
    </div>
  );
}

function OutputView({ output, formula }: { output: CalculatedOutput; formula: Formula }) {
  const { title, value, u, unit, kind, interval, budget } = output;
  const shown = withMinus(writeValue(value, u, unit, kind));
  const largest = budget?.rows.filter(({ share }) => share >= 0.01).slice(0, 4) ?? [];
  return (
    <div class="output">
      <p class="output-title">{title}</p>
      <p class="output-value">
        {shown} <CopyButton text={() => shown} label={`Copy ${title}`} />
      </p>
      {interval && (
        <p class="about">
          95 %: {withMinus(writeValue(interval.low, null, unit, kind))} to{' '}
          {withMinus(writeValue(interval.high, null, unit, kind))}
          {largest.length > 0 &&
            `; uncertain because of ${largest.map(({ input, share }) => `${input} (${Math.round(100 * share)} %)`).join(', ')}`}
        </p>
      )}
      <TakeIntoStudy output={output} source={`calculated: ${formula.name}`} />
    </div>
  );
}
