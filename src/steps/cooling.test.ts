import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';
import { coolingOf, kindOf } from './cooling.ts';
import { stackOfStep } from './cooling-stack.ts';
import { planStep } from './plan.ts';
import { withoutChanges } from './without-change.ts';

function study(text: string): Study {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error(reading.faults.map(writeFault).join('\n'));
  return reading.study;
}

const examples = ['cooler', 'mini-pc', 'accelerator'].map((name) =>
  study(readFileSync(`examples/${name}/study.yaml`, 'utf8')),
);
const cooler = examples[0];
const steps = examples.flatMap((each) => each.steps.map((step) => ({ name: `${each.title}: ${step.id}`, step })));

describe.each(steps)('the stack of $name', ({ step }) => {
  const stack = stackOfStep(step)!;
  const temperature = (node: string) => stack.nodes.find(({ id }) => id === node)!.temperature.value;

  test('drops over the layers of a way add up to the difference of its ends, and so do those of the whole path', () => {
    for (const { from, to, drop, layers } of stack.ways) {
      const sum = layers.reduce((total, layer) => total + layer.drop.value, 0);
      expect(sum).toBeCloseTo(temperature(from) - temperature(to), 9);
      expect(drop.value).toBeCloseTo(sum, 9);
    }
    const { start, rise, layers } = stack.path;
    const sum = layers.reduce((total, layer) => total + layer.drop.value, 0);
    expect(sum).toBeCloseTo(temperature(start) - temperature('ambient'), 9);
    expect(rise.value).toBeCloseTo(sum, 9);
    layers.forEach((layer, i) => {
      expect(layer.from).toBeCloseTo(i === 0 ? temperature(start) : layers[i - 1].to, 9);
    });
  });

  test('what leaves each node goes in elsewhere: only nodes that parts heat give more than they take', () => {
    const heated = new Set(
      Object.values(step.board.parts).flatMap(({ heats }) =>
        typeof heats === 'string' ? heats : Object.values(heats),
      ),
    );
    for (const { id } of stack.nodes) {
      if (heated.has(id) || id === 'ambient') continue;
      const links = stack.ways.reduce(
        (sum, { from, to, heat }) => sum + (from === id ? heat.value : to === id ? -heat.value : 0),
        0,
      );
      const air = stack.air.reduce((sum, { to, heat }) => sum + (to === id ? heat.value : 0), 0);
      expect(links + air).toBeCloseTo(0, 8);
    }
  });
});

test('the way follows the largest flow of heat, and air back to where it came from', () => {
  const { path } = stackOfStep(examples[1].steps[0])!;
  expect(path.start).toBe('die');
  expect(path.layers.map(({ title }) => title)).toEqual([
    'Die to plate',
    'Die to plate',
    'Heat pipes',
    'Fins to air',
    'Blower',
    'Blower',
  ]);
  expect(path.layers.map(({ what }) => what).slice(-2)).toEqual(['air from air-board', 'air from ambient']);
});

/** A processor of 30 W on two resistances in series, everything else outside: 0.5 K/W to the plate, 0.9 K/W to the room. */
const bare = `${readFileSync('test/broken-studies/heat-element-unknown.yaml', 'utf8')}`
  .replace('- past: { area: 100 mm^2 }', '- resistance: 0.5 K/W ± 10 %')
  .replace('rated-ripple: 3 A\n    heats: die', 'rated-ripple: 3 A\n    heats: ambient')
  .split('  - id: stacked')[0];

const better = `${bare}  - id: better
    changes:
      - { at: heat.links.interface.through.0.resistance, becomes: 0.3 K/W ± 10 % }
      - { at: heat.links.fins.through.0.resistance, becomes: 0.8 K/W ± 10 % }
`;

test('a change buys its difference of resistance times the heat, at the same power; together they add up', () => {
  const both = study(better);
  const power = planStep(both, 'better', { samples: 0, seed: 1 }).operating!.processorPower.value;
  const { changes, power: held } = coolingOf(both, 'better');
  const gain = (at: number) => changes[at].gains.find(({ node }) => node === 'die')!.gain;
  expect(held?.real.value).toBeCloseTo((30 * 5) / 5.1, 1);
  expect(changes.map(({ compared }) => compared)).toEqual(['alone', 'alone', 'together']);
  expect(gain(0).value).toBeCloseTo(0.2 * power, 6);
  expect(gain(1).value).toBeCloseTo(0.1 * power, 6);
  expect(gain(2).value).toBeCloseTo(0.3 * power, 6);
  // The rectangle's half widths 10 % of 0.5 and of 0.3 K/W, as standard uncertainties over √3; the power's own part is small beside them.
  expect(gain(0).u! / power).toBeGreaterThan(Math.hypot(0.05, 0.03) / Math.sqrt(3) - 1e-6);
  expect(gain(0).u! / power).toBeLessThan(1.1 * (Math.hypot(0.05, 0.03) / Math.sqrt(3)));
});

test('a temperature limiter that would give way without the change doesn’t regulate in the comparison', () => {
  const held = study(
    better.replace(
      'limiters:\n',
      'limiters:\n  die-limit: { acts: regulate, allowed-temperature: 60 degC, node: die }\n',
    ),
  );
  const free = coolingOf(study(better), 'better').changes[2].gains.find(({ node }) => node === 'die')!;
  const { without, gain } = coolingOf(held, 'better').changes[2].gains.find(({ node }) => node === 'die')!;
  expect(without.value).toBeGreaterThan(273.15 + 60);
  expect(gain.value).toBeCloseTo(free.gain.value, 6);
});

test('it doesn’t matter at which end a link begins', () => {
  const path = (text: string) => stackOfStep(study(text).steps[0])!.path.layers;
  const turned = path(bare.replace('between: [die, plate]', 'between: [plate, die]'));
  const straight = path(bare);
  expect(turned.map(({ drop }) => drop.value)).toEqual(straight.map(({ drop }) => drop.value));
  expect(turned[0].drop.value).toBeCloseTo(0.5 * turned[0].heat.value, 9);
  expect(turned[0].heat.value).toBeGreaterThan(20);
});

test('a change that others build on is told as that, and the added way is judged', () => {
  const { changes } = coolingOf(cooler, 'second-plate');
  expect(changes.map(({ untold }) => untold)).toEqual(['built-on', null, null, null]);
  expect(changes[3].gains.find(({ node }) => node === 'board')!.gain.value).toBeGreaterThan(0);
});

test('thicker pads take pressure off the die: it gets hotter, by the plate alone', () => {
  const { changes } = coolingOf(cooler, 'thick-pads');
  const pads = changes.find(({ paths }) => paths[0] === 'plate.pads.stages.thickness')!;
  expect(pads.kind).toBe('pads');
  expect(pads.gains[0]).toMatchObject({ node: 'die' });
  expect(pads.gains[0].gain.value).toBeLessThan(0);
});

test('the first step, and one that leaves the cooling alone, have no changes to judge', () => {
  expect(coolingOf(cooler, 'as-delivered')).toMatchObject({ before: null, power: null, changes: [] });
});

test('the stack of the step before is taken at this step’s power, along the same way', () => {
  const { before, stack } = coolingOf(cooler, 'liquid-metal');
  const ids = (layers: readonly { readonly id: string }[]) => layers.map(({ id }) => id);
  expect(ids(before!.path.layers)).toEqual(ids(stack!.path.layers));
  expect(before!.path.layers[0].drop.value).toBeGreaterThan(stack!.path.layers[0].drop.value);
});

test.each([
  ['plate.screws.back-left.force', 'plate force'],
  ['plate.pads.memory.thickness', 'pads'],
  ['plate.dies.processor.height', 'plate'],
  ['heat.streams.fan.flow', 'airflow'],
  ['heat.ambient', 'ambient'],
  ['heat.links.die-plate.through.0', 'interface material'],
  ['heat.links.die-plate.through.0.bond-line.surfaces', 'plating'],
  ['heat.links.die-plate.through.0.bond-line.pressure', 'plate force'],
  ['heat.links.stages-plate.through.0.layer.thickness', 'pads'],
  ['heat.links.plate-air.through.0.fins.film', 'heat path'],
  ['heat.links.another', 'heat way'],
])('a change at %s is one of %s', (path, kind) => {
  expect(kindOf(path, cooler.steps[0].board)).toBe(kind);
});

describe('a step without one of its changes', () => {
  const listed = study(`${bare}  - id: two
    changes:
      - { at: heat.links.interface.through.1, becomes: { resistance: 0.1 K/W ± 10 % } }
      - { at: heat.links.fins.through.0, becomes: { resistance: 0.7 K/W ± 10 % } }
  - id: one
    changes:
      - { at: heat.links.interface.through.0, removed: true }
`);
  const [first, two, one] = listed.steps;
  const sizes = (step: typeof first | null) =>
    step!.board.heat.links.interface.through.map((element) => ('resistance' in element ? element.resistance.value : 0));

  test('has what was appended taken off, what was removed put back, and what was replaced as before, each under its old address', () => {
    const path = 'heat.links.interface.through.1';
    const without = withoutChanges(two, first, [path])!;
    expect(sizes(without)).toEqual([0.5]);
    expect(without.changed).toEqual(['heat.links.fins.through.0']);
    expect(sizes(withoutChanges(one, two, ['heat.links.interface.through.0']))).toEqual([0.5, 0.1]);
    const replaced = withoutChanges(two, first, ['heat.links.fins.through.0'])!;
    expect([...replaced.quantities.values()]).toContain('heat.links.fins.through.0.resistance');
    expect([...replaced.quantities.values()]).not.toContain('heat.links.fins.through.0.resistance#two');
    expect([...two.quantities.values()]).toContain('heat.links.fins.through.0.resistance#two');
  });
});
