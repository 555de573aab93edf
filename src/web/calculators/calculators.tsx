import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { listFormulas } from '../../physics/calc.ts';
import type { Formula } from '../../physics/formula.ts';
import { Calculator } from './calculator.tsx';

const search = signal('');
const chosen = signal<Formula | null>(null);

/** The catalogue of formulas by room; one of them at a time opens as a calculator. */
export function Calculators() {
  const formula = chosen.value;
  return formula ? (
    <Calculator
      key={formula.name}
      formula={formula}
      back={() => {
        chosen.value = null;
      }}
    />
  ) : (
    <FormulaList />
  );
}

function FormulaList() {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const found = listFormulas(search.value);
  const rooms = [...new Set(found.map(({ room }) => room))];
  return (
    <>
      <label class="formula-search">
        <span>Search by name, room or quantity</span>
        <input
          ref={field}
          type="search"
          value={search.value}
          onInput={(event) => {
            search.value = event.currentTarget.value;
          }}
        />
      </label>
      <p class="visually-hidden" role="status">
        {found.length} formulas
      </p>
      {found.length === 0 && <p class="about">No formula holds all of these words. Fewer letters find more.</p>}
      {rooms.map((room) => (
        <section key={room} class="formula-room">
          <h3>{room}</h3>
          <ul>
            {found
              .filter((formula) => formula.room === room)
              .map((formula) => (
                <li key={formula.name}>
                  <button
                    type="button"
                    onClick={() => {
                      chosen.value = formula;
                    }}
                  >
                    <strong>{formula.name.replaceAll('-', ' ')}</strong>
                    <span>{formula.title}</span>
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}
