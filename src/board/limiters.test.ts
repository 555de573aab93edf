import { expect, test } from 'vitest';
import { evaluateAt } from '../metrology/evaluate.ts';
import { readStudy } from '../study/read.ts';
import { assembleBoard } from './assemble.ts';
import { package54, processor, sense, sketchText, supply } from './sketch.test-data.ts';

test.each(['regulate', 'trip', 'warn'])('a limiter on a temperature that acts as %s reads its node', (acts) => {
  // 54 W over 2 K/W above 25 °C, and no part whose loss asks for that temperature.
  const hot = `hot: {acts: ${acts}, allowed-temperature: 165 degC, node: spot}`;
  const reading = readStudy(
    sketchText({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 100)],
      limiters: package54().replace(/}$/, `, ${hot}}`),
    }),
    'hot.yaml',
  );
  if (!reading.ok) throw new Error('the sketch reads');
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error('the sketch is a board');
  const { board } = assembly;
  const { y } = evaluateAt(board);
  const reads = y[board.indexOfOutput('limiters.hot.reads')];
  expect(reads).toBeCloseTo(273.15 + 25 + 2 * 54, 6);
  const held = board.limits.find(({ id }) => id === 'limiters.hot');
  expect(held === undefined).toBe(acts === 'regulate');
  if (held) expect(y[held.marginOutput]).toBeCloseTo(165 - 133, 6);
});
