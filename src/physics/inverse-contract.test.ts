import { expect, test } from 'vitest';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { readQuantity } from '../quantity/read.ts';
import { catalogue } from './catalogue.ts';
import { asModel, type Formula } from './formula.ts';
import { inputsFor } from './solve-for.ts';

/** Least relative change of a result for one of an input by which the input can be told to nine digits. */
const leastSlope = 1e-5;

/** Every result and every input that it follows, at the worked example. */
function pairsOf(formula: Formula) {
  const model = asModel(
    formula,
    Object.fromEntries(
      formula.inputs.map(({ name, kind }) => {
        const reading = readQuantity(formula.example.inputs[name], kind);
        if (!reading.ok) throw new Error(`example of ${formula.name}: ${name}`);
        return [name, reading.quantity];
      }),
    ),
  );
  const { y } = evaluateAt(model);
  return formula.inputs.flatMap((input, u) =>
    formula.outputs.flatMap((output, o) => {
      const at = (factor: number) => {
        const x = startValues(model);
        x[u] *= factor;
        return evaluateAt(model, x).y[o];
      };
      const slopes = [at(1 - 1e-4) / y[o] - 1, at(1 + 1e-4) / y[o] - 1];
      const follows = slopes[0] * slopes[1] < 0 && slopes.every((slope) => Math.abs(slope) > 1e-4 * leastSlope);
      return follows || (input.kind === 'count' && at(2) !== y[o] && Number.isFinite(at(2)))
        ? [{ input, output, u, o, model, value: model.inputs[u].value, goal: y[o] }]
        : [];
    }),
  );
}

test.each(catalogue.map((formula) => [formula.name, formula] as const))(
  '%s: solving for each input by each result gives the input back to 1e-9',
  (_, formula) => {
    for (const { input, output, u, o, model, value, goal } of pairsOf(formula)) {
      const { roots } = inputsFor(model, input, u, o, goal);
      const nearest = Math.min(...roots.map((root) => Math.abs(root / value - 1)));
      expect(nearest, `${input.name} by ${output.name}: ${roots.join(', ')} for ${value}`).toBeLessThan(1e-9);
    }
  },
);

test('most inputs can be solved for by a result', () => {
  const pairs = catalogue.flatMap(pairsOf);
  const solvable = new Set(pairs.map(({ input }) => input)).size;
  expect(solvable / catalogue.flatMap(({ inputs }) => inputs).length).toBeGreaterThan(0.9);
});
