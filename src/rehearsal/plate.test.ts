import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readStudy } from '../study/read.ts';
import { noDepartures } from './departures.ts';
import { VirtualBoard } from './virtual-board.ts';

// One screw over the middle of a die of 120 mm²: 84 N are 700 kPa.
const plate = `
plate:
  screws:
    middle: { x: 0 mm, y: 0 mm, force: 84 N ± 5 % }
  dies:
    processor:
      { x: 0 mm, y: 0 mm, width: 12 mm, depth: 10 mm, height: 2 mm ± 1 %, layer: { thickness: 50 um ± 1 %, modulus: 1 MPa ± 1 % }, force-limit: 100 N, pressure-limit: none }
steps:
  - id: as-delivered
`;
const example = readFileSync('examples/cooler/study.yaml', 'utf8').split('\n# The plate from above')[0] + plate;

/** Temperature of the die of a virtual board that behaves as the study has it [K]. */
function die(text: string): number {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error('the study has faults');
  const board = new VirtualBoard(reading.study.steps[0], {
    hidden: new Map(),
    departures: noDepartures,
    faults: [],
    seed: 1,
  });
  expect(board.settle()).toBe(true);
  return board.outputs.get('heat.nodes.die.temperature')!;
}

test('a virtual board’s joint is pressed by its plate', () => {
  const written = (pressure: string) => die(example.replace('pressed-by: processor', `pressure: ${pressure}`));
  expect(die(example)).toBeCloseTo(written('700 kPa ± 5 %'), 7);
  expect(written('350 kPa ± 5 %')).toBeGreaterThan(written('700 kPa ± 5 %') + 0.1);
});
