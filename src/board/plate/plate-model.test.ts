import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeFault } from '../../fault/fault.ts';
import { budget } from '../../metrology/budget.ts';
import { evaluateAt, startValues } from '../../metrology/evaluate.ts';
import { sensitivities } from '../../metrology/sensitivity.ts';
import { readStudy } from '../../study/read.ts';
import type { Study } from '../../study/study.ts';
import { assembleBoard } from '../assemble.ts';
import { assemblePlate } from './plate-model.ts';

const example = readFileSync('examples/cooler/study.yaml', 'utf8');

function study(text: string): Study {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error(reading.faults.map(writeFault).join('\n'));
  return reading.study;
}

/** The example with another plate. */
function withPlate(plate: string, change: (text: string) => string = (text) => text): Study {
  const [before] = example.split('\n# The plate from above');
  return study(change(`${before}\n${plate}\nsteps:\n  - id: as-delivered\n`));
}

/**
 * Worked by hand. The plate's underside lies level at 2 mm. Pads: 1 mm thick on parts 1.3 mm high are compressed by 0.3 mm, a strain of 30 %: half of 200 kPa on
 * 1 cm² is 10 N each. Die: 1.985 mm and 0.05 mm of layer are compressed by 35 µm; 1 MPa over 50 µm makes 20 GPa/m, so 700 kPa on 120 mm²: 84 N.
 * Together 104 N: four screws of 26 N.
 */
const worked = `
plate:
  screws:
    a: { x: -30 mm, y: 20 mm, force: 26 N ± 5 % }
    b: { x: 30 mm, y: 20 mm, force: 26 N ± 5 % }
    c: { x: -30 mm, y: -20 mm, force: 26 N ± 5 % }
    d: { x: 30 mm, y: -20 mm, force: 26 N ± 5 % }
  pads:
    left: &pad
      { x: -20 mm, y: 0 mm, width: 10 mm, depth: 10 mm, height: 1.3 mm ± 1 %, thickness: 1 mm ± 1 %, curve: [{ strain: 30 %, pressure: 200 kPa }], share: 0.4..0.6 }
    right:
      { x: 20 mm, y: 0 mm, width: 10 mm, depth: 10 mm, height: 0.8 mm ± 1 %, step: 0.5 mm ± 1 %, thickness: 1 mm ± 1 %, curve: [{ strain: 30 %, pressure: 200 kPa }], share: 0.4..0.6 }
  dies:
    processor:
      { x: 0 mm, y: 0 mm, width: 12 mm, depth: 10 mm, height: 1.985 mm ± 1 %, layer: { thickness: 50 um ± 1 %, modulus: 1 MPa ± 1 % }, force-limit: 100 N, pressure-limit: open }
`.replace('&pad', '');

describe('a plate worked by hand', () => {
  const model = assemblePlate(withPlate(worked).steps[0])!;
  const { y, status } = evaluateAt(model, startValues(model));
  const of = (id: string) => y[model.outputs.findIndex((output) => output.id === id)];

  test('lies level at 2 mm and is in balance', () => {
    expect(status.ending).toBe('solved');
    expect(of('plate.height')).toBeCloseTo(2e-3, 12);
    expect(of('plate.tilt-x')).toBeCloseTo(0, 9);
    expect(of('plate.tilt-y')).toBeCloseTo(0, 9);
    expect(of('plate.pull')).toBeCloseTo(104, 9);
  });

  test('presses each pad with 10 N at a strain of 30 %, a step of the plate counting as height of the part', () => {
    for (const pad of ['left', 'right']) {
      expect(of(`plate.pads.${pad}.force`)).toBeCloseTo(10, 6);
      expect(of(`plate.pads.${pad}.strain`)).toBeCloseTo(0.3, 9);
      expect(of(`plate.pads.${pad}.compression`)).toBeCloseTo(0.3e-3, 11);
      expect(of(`plate.pads.${pad}.pressure`)).toBeCloseTo(100e3, 2);
    }
  });

  test('presses the die with 84 N, evenly, at 700 kPa', () => {
    expect(of('plate.dies.processor.force')).toBeCloseTo(84, 6);
    for (const pressure of ['mean', 'highest', 'lowest'])
      expect(of(`plate.dies.processor.${pressure}-pressure`)).toBeCloseTo(700e3, 1);
    expect(of('plate.dies.processor.contact')).toBeCloseTo(1, 12);
    expect(of('plate.dies.processor.gap')).toBe(0);
  });

  test('is held against the maker’s limit on force, and a limit without data is open', () => {
    expect(of('plate.dies.processor.force-limit.margin')).toBeCloseTo(16, 6);
    expect(model.open.map(({ id }) => id)).toEqual(['plate.dies.processor.pressure-limit']);
  });
});

/**
 * Worked by hand. Springs of 10 N/mm pull with 20 N at 3 mm; at 2.9 mm that is 19 N each, 76 N. The plate comes down by 0.4 mm over the die of 2.475 mm with 0.05 mm
 * of layer, which is compressed by 25 µm: 500 kPa, 60 N. Two stops of 2.908 mm and 1 kN/mm give way by 8 µm: 8 N each.
 */
test('springs, a step of the plate over the die and stops, worked by hand', () => {
  const spring = 'force: 20 N ± 5 %, spring: { rate: 10 N/mm ± 5 %, at: 3 mm ± 1 % }';
  const stop = 'height: 2.908 mm ± 0.1 %, stiffness: 1 kN/mm ± 5 %';
  const model = assemblePlate(
    withPlate(`
plate:
  screws:
    a: { x: -30 mm, y: 20 mm, ${spring} }
    b: { x: 30 mm, y: 20 mm, ${spring} }
    c: { x: -30 mm, y: -20 mm, ${spring} }
    d: { x: 30 mm, y: -20 mm, ${spring} }
  dies:
    processor:
      { x: 0 mm, y: 0 mm, width: 12 mm, depth: 10 mm, height: 2.475 mm ± 1 %, step: 0.4 mm ± 1 %, layer: { thickness: 50 um ± 1 %, modulus: 1 MPa ± 1 % }, force-limit: none, pressure-limit: none }
  stops:
    left: { x: -30 mm, y: 0 mm, ${stop} }
    right: { x: 30 mm, y: 0 mm, ${stop} }
`).steps[0],
  )!;
  const { y } = evaluateAt(model, startValues(model));
  const of = (id: string) => y[model.outputs.findIndex((output) => output.id === id)];
  expect(of('plate.height')).toBeCloseTo(2.9e-3, 12);
  expect(of('plate.screws.a.force')).toBeCloseTo(19, 7);
  expect(of('plate.dies.processor.force')).toBeCloseTo(60, 6);
  expect(of('plate.stops.left.force')).toBeCloseTo(8, 6);
  expect(of('plate.stops.right.force')).toBeCloseTo(8, 6);
});

test('a joint pressed by the plate is the same as one with that pressure written down', () => {
  const temperature = (text: Study) => {
    const assembly = assembleBoard(text.steps[0]);
    if (!assembly.ok) throw new Error('no board');
    const { board } = assembly;
    return evaluateAt(board, startValues(board)).y[board.indexOfOutput('heat.nodes.die.temperature')];
  };
  const byPlate = temperature(withPlate(worked));
  const written = temperature(
    withPlate(worked, (text) => text.replace('pressed-by: processor', 'pressure: 700 kPa ± 1 %')),
  );
  const less = temperature(
    withPlate(worked, (text) => text.replace('pressed-by: processor', 'pressure: 350 kPa ± 1 %')),
  );
  expect(byPlate).toBeCloseTo(written, 7);
  expect(less).toBeGreaterThan(written + 0.1);
});

test('a plate that is held off its die lets no heat through, and the board says that it has no operating point', () => {
  const lifted = worked.replace(
    '  dies:',
    '  stops:\n    a: { x: -5 mm, y: -5 mm, height: 2.2 mm ± 1 %, stiffness: 9 kN/mm ± 9 % }\n    b: { x: 5 mm, y: -5 mm, height: 2.2 mm ± 1 %, stiffness: 9 kN/mm ± 9 % }\n    c: { x: 0 mm, y: 8 mm, height: 2.2 mm ± 1 %, stiffness: 9 kN/mm ± 9 % }\n  dies:',
  );
  const assembly = assembleBoard(withPlate(lifted).steps[0]);
  if (!assembly.ok) throw new Error('no board');
  const { board } = assembly;
  expect(evaluateAt(board, startValues(board)).status.ending).toBe('infeasible');
  expect(board.plate?.lifted).toEqual(['processor']);
});

test('numbers that can’t be a plate’s have no solution, and are told apart from a plate that tips over', () => {
  const model = assemblePlate(withPlate(worked).steps[0])!;
  const ending = (id: string, value: number) => {
    const x = startValues(model);
    x[model.inputs.findIndex((input) => input.id === id)] = value;
    return [evaluateAt(model, x).status.ending, model.plate.ending];
  };
  expect(ending('plate.pads.left.share', -0.1)).toEqual(['infeasible', 'impossible']);
  expect(ending('plate.dies.processor.layer.thickness', 0)).toEqual(['infeasible', 'impossible']);
  expect(ending('plate.pads.left.thickness', -1e-3)).toEqual(['infeasible', 'impossible']);
  expect(ending('plate.screws.a.force', -1)).toEqual(['infeasible', 'impossible']);
  expect(ending('plate.screws.a.force', 1000)).toEqual(['infeasible', 'unsupported']);
  expect(ending('plate.screws.a.force', 26)).toEqual(['solved', 'solved']);
});

test('screws that share a cause pull together: the pull is as uncertain as their sum', () => {
  const shared =
    'shared:\n  driver:\n    factor: 100 % ± 10 %\n    of: [plate.screws.a.force, plate.screws.b.force, plate.screws.c.force, plate.screws.d.force]\n';
  const u = (more: string) => {
    const model = assemblePlate(withPlate(worked.replaceAll('26 N ± 5 %', '26 N ± 0.001 %') + more).steps[0])!;
    return budget(model, 'plate.pull', sensitivities(model))!.u;
  };
  expect(u('')).toBeLessThan(0.001);
  expect(u(shared)).toBeCloseTo((104 * 0.1) / Math.sqrt(3), 3);
});

test('draws of the board’s batch see the plate that a single evaluation sees', () => {
  const assembly = assembleBoard(withPlate(worked).steps[0]);
  if (!assembly.ok) throw new Error('no board');
  const { board } = assembly;
  const { batch } = board;
  const forces = [18, 26, 34];
  const at = board.indexOfInput('plate.screws.a.force');
  forces.forEach((force, lane) => {
    startValues(board).forEach((value, i) => {
      batch.inputs[i][lane] = i === at ? force : value;
    });
  });
  batch.evaluate(forces.length);
  const together = forces.map((_, lane) => [
    batch.outputs[board.indexOfOutput('plate.dies.processor.mean-pressure')][lane],
    batch.outputs[board.indexOfOutput('heat.nodes.die.temperature')][lane],
  ]);
  const single = forces.map((force) => {
    const x = startValues(board);
    x[at] = force;
    const { y } = evaluateAt(board, x);
    return [
      y[board.indexOfOutput('plate.dies.processor.mean-pressure')],
      y[board.indexOfOutput('heat.nodes.die.temperature')],
    ];
  });
  together.forEach(([pressure, temperature], lane) => {
    expect(pressure).toBeCloseTo(single[lane][0], 3);
    expect(temperature).toBeCloseTo(single[lane][1], 6);
  });
  expect(new Set(together.map(([pressure]) => Math.round(pressure))).size).toBe(3);
});
