import { expect, test } from 'vitest';
import { assembleBoard } from '../board/assemble.ts';
import { package54, processor, sense, sketchText, supply } from '../board/sketch.test-data.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import type { Input } from '../metrology/model.ts';
import { readStudy } from '../study/read.ts';
import { measuredBoard } from './measured-board.ts';

const reading = readStudy(
  sketchText({ parts: [supply('adapter', 20), sense('adapter'), processor('point', 100)], limiters: package54() }),
  'measured.yaml',
);
if (!reading.ok) throw new Error('no study');
const realPower = { kind: 'power', value: 1, unit: 'W', spread: null, text: '1 W' } as const;
const assembly = assembleBoard(reading.study.steps[0], { limiter: 'package', realPower });
if (!assembly.ok) throw new Error('no board');

const instruments = [
  { id: 'meter', title: 'meter', channel: 'p', shows: 'limiters.package.real', u: 0.5, repeatability: 0 },
  { id: 'probe', title: 'probe', channel: 't', shows: 'heat.nodes.spot.temperature', u: 1, repeatability: 0 },
];
const input = (id: string, value: number): Input => ({
  id,
  kind: 'power',
  unit: 'W',
  value,
  spread: { shape: 'normal', u: 0.1 },
  source: '',
});

function shown(changed: Readonly<Record<string, number>>, ambient: number | null = null) {
  const board = assembly.ok ? assembly.board : null;
  const model = measuredBoard(
    board!,
    instruments,
    { instrument: 'meter', input: input('power', 30) },
    ambient === null ? input('drift', 0) : null,
    ambient === null ? null : { instrument: 'probe', input: input('read', ambient) },
  );
  const x = startValues(model);
  for (const [id, value] of Object.entries(changed)) x[model.inputs.findIndex((each) => each.id === id)] = value;
  const { y } = evaluateAt(model, x);
  return { meter: y[0], probe: y[1] - 298.15, inputs: model.inputs };
}

// All of the power heats the spot, 2 K/W above 25 °C ambient.
test.each([
  [{}, 30, 60],
  [{ power: 20 }, 20, 40],
  [{ drift: 3 }, 30, 63],
  [{ 'instruments.probe.error': 1.5 }, 30, 61.5],
  // A meter that shows 2 W too much still shows what it showed; the board had 28 W.
  [{ 'instruments.meter.error': 2 }, 30, 56],
])('%o: the meter shows %d W, the probe %d K above ambient', (changed, meter, probe) => {
  const seen = shown(changed);
  expect(seen.meter).toBeCloseTo(meter, 9);
  expect(seen.probe).toBeCloseTo(probe, 9);
});

test('the dial is no input of its own any more, and an error of a thermometer is a difference', () => {
  const { inputs } = shown({});
  expect(inputs.map(({ id }) => id)).not.toContain('dial');
  expect(inputs.find(({ id }) => id === 'instruments.probe.error')).toMatchObject({
    kind: 'temperature-difference',
    unit: 'K',
  });
});

test('an ambient that is read stands for the stated one, less the error of what reads it', () => {
  // 60 K above 10 °C; what reads 2 K too much had 8 °C.
  expect(shown({}, 283.15).probe).toBeCloseTo(45, 9);
  expect(shown({ 'instruments.probe.error': 2 }, 283.15).probe).toBeCloseTo(45, 9);
});
