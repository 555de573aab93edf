import { expect, test } from 'vitest';
import { budget } from '../metrology/budget.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import { readStudy } from '../study/read.ts';
import { assembleBoard, type BoardModel } from './assemble.ts';
import { processor, sense, sketchText, supply } from './sketch.test-data.ts';

const cable = (name: string, feeder: string, milliohms: string) =>
  `  ${name}: {kind: conductor, fed-by: ${feeder}, resistance: ${milliohms} mohm, temperature-coefficient: 0 1/K, rated-current: none, heats: ambient}`;

function boardOf(first: string, second: string, more = ''): BoardModel {
  const text = sketchText({
    parts: [
      supply('adapter', 20),
      cable('first', 'adapter', first),
      cable('second', 'first', second),
      sense('second'),
      processor('point', 60),
    ],
  });
  const reading = readStudy(`${text}${more}`, 'study.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error(JSON.stringify(assembly.faults));
  return assembly.board;
}

function outputOf(board: BoardModel, output: string, changed: Record<string, number> = {}): number {
  const x = Float64Array.from(board.inputs, ({ id, value }) => changed[id] ?? value);
  const y = new Float64Array(board.outputs.length);
  expect(board.evaluate(x, y).ending).toBe('solved');
  return y[board.indexOfOutput(output)];
}

const [a, b] = ['parts.first.resistance', 'parts.second.resistance'];
const uOf = (board: BoardModel, output: string) => budget(board, output, sensitivities(board))!.u;

test('a shared factor and a shared offset enter every number that they are said to', () => {
  const byFactor = boardOf('20', '30', `shared: {meter: {factor: 100 % ± 1 %, of: [${a}, ${b}]}}\n`);
  const byOffset = boardOf('20', '30', `shared: {leads: {offset: 0 mohm ± 1 mohm, of: [${a}, ${b}]}}\n`);
  const plain = boardOf('20', '30');
  const output = 'parts.point.voltage';
  expect(outputOf(byFactor, output, { 'shared.meter.factor': 1.01 })).toBe(
    outputOf(plain, output, { [a]: 0.0202, [b]: 0.0303 }),
  );
  expect(outputOf(byOffset, output, { 'shared.leads.offset': 0.001 })).toBeCloseTo(
    outputOf(plain, output, { [a]: 0.021, [b]: 0.031 }),
    14,
  );
  expect(outputOf(byFactor, output)).toBe(outputOf(plain, output));
});

// GUM 5.2.2, note 1: perfectly correlated contributions add up by themselves, not as squares.
test('two resistances measured with one meter have the uncertainty of their sum', () => {
  const output = 'parts.point.voltage';
  const together = boardOf('20', '30', `shared: {meter: {factor: 100 % ± 1 %, of: [${a}, ${b}]}}\n`);
  const one = boardOf('50 ± 0.5', '0');
  const apart = boardOf('20 ± 0.2', '30 ± 0.3');
  const correlated = boardOf('20 ± 0.2', '30 ± 0.3', `correlations: [{between: [${a}, ${b}], coefficient: 1}]\n`);
  expect(uOf(together, output) / uOf(one, output)).toBeCloseTo(1, 6);
  expect(uOf(correlated, output) / uOf(one, output)).toBeCloseTo(1, 6);
  expect(uOf(apart, output) / uOf(one, output)).toBeCloseTo(Math.hypot(0.2, 0.3) / 0.5, 4);
});
