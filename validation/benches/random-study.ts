import { assembleBoard } from '../../src/board/assemble.ts';
import { evaluateAt, startValues } from '../../src/metrology/evaluate.ts';
import { type RandomStream, randomStream } from '../../src/numeric/random.ts';
import { readStudy } from '../../src/study/read.ts';
import type { Study } from '../../src/study/study.ts';

/** Real power over allowed at each step after the first, as it is aimed at. */
type Ladder = readonly number[];

interface Sketch {
  readonly graphics: boolean;
  readonly byParts: boolean;
  readonly phases: number;
  readonly paste: boolean;
  readonly ladder: Ladder;
  readonly instruments: ReadonlySet<string>;
  /** Base values by name; each drawn around an ordinary board's. */
  readonly at: (name: string, usual: number, unit: string, uncertainty: string) => string;
  readonly value: (name: string) => number;
}

/** A study of an invented board, drawn at random: its build, its numbers, its instruments and its ladder of four steps. */
export function randomStudy(seed: number, added: readonly string[] = []): Study {
  const random = randomStream(seed);
  const drawn = sketchOf(random);
  const sketch = { ...drawn, instruments: new Set([...drawn.instruments, ...added]) };
  // Twice: the ratings are set from what the board takes, so that some ladders are safe to the end and some are not.
  const blank = read(studyText(sketch, () => 'none'));
  const demands = blank.steps.map((step) => {
    const assembly = assembleBoard(step);
    if (!assembly.ok) throw new Error('a random board that cannot be assembled');
    const { y } = evaluateAt(assembly.board, startValues(assembly.board));
    return (output: string) => y[assembly.board.indexOfOutput(output)];
  });
  // Most limits lie well beyond the last step; one or two come in the way somewhere between the second step and the end.
  const beyond = Object.fromEntries(rated.map((output) => [output, 1.15 + 0.6 * random.uniform()]));
  const inTheWay = new Set(
    Array.from(
      { length: 1 + Math.floor(2 * random.uniform()) },
      () => rated[Math.floor(rated.length * random.uniform())],
    ),
  );
  const reach = 0.3 + random.uniform();
  const rating = (output: string, unit: string) => {
    const last = demands[demands.length - 1](output);
    const first = demands[0](output);
    if (!Number.isFinite(last) || !Number.isFinite(first)) return 'none';
    const ambient = unit === 'degC' ? 298.15 : 0;
    const way = 1.03 * (first + (last - first) * reach - ambient);
    const rise = inTheWay.has(output) ? Math.max(way, 1.05 * (first - ambient)) : beyond[output] * (last - ambient);
    return `${(ambient + rise - (unit === 'degC' ? 273.15 : 0)).toPrecision(4)} ${unit}`;
  };
  return read(studyText(sketch, rating));
}

const rated = [
  'parts.adapter.power',
  'parts.adapter.peak-current',
  'parts.cable.current',
  'parts.core-vr.phase-current',
  'parts.core-vr.inductor-peak',
  'parts.core-vr.capacitor-ripple',
  'parts.core.current',
  'heat.nodes.die.temperature',
  'heat.nodes.stages.temperature',
  'heat.nodes.memory.temperature',
  'heat.nodes.case.temperature',
];

function read(text: string): Study {
  const reading = readStudy(text, 'random.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults.slice(0, 3)));
  return reading.study;
}

function sketchOf(random: RandomStream): Sketch {
  const chance = (p: number) => random.uniform() < p;
  const values = new Map<string, number>();
  const forms = new Map<string, string>();
  const optional = ['case', 'board', 'memory', 'ambient'].filter(() => chance(0.7));
  const first = 1.1 + 0.15 * random.uniform();
  const second = first * (1.08 + 0.12 * random.uniform());
  return {
    graphics: chance(0.5),
    byParts: chance(0.5),
    phases: 2 + Math.floor(5 * random.uniform()),
    paste: chance(0.5),
    ladder: [first, second, second * (1.06 + 0.12 * random.uniform())],
    instruments: new Set(optional),
    value: (name) => values.get(name)!,
    at(name, usual, unit, uncertainty) {
      if (!values.has(name)) {
        values.set(name, usual * Math.exp(0.2 * (2 * random.uniform() - 1)));
        // Half of the tolerances are guesses of the same size instead.
        const tolerance = /^± ([\d.]+) %$/.exec(uncertainty)?.[1];
        const guess =
          tolerance !== undefined && chance(0.5)
            ? `~ ${(Number(tolerance) / Math.sqrt(3)).toPrecision(2)} %`
            : uncertainty;
        forms.set(name, guess);
      }
      return `${values.get(name)!.toPrecision(4)} ${unit} ${forms.get(name)}`.trim();
    },
  };
}

/** A steady value comes back to within a tenth of the instrument's uncertainty (common practice, no source). */
const repeats = (u: string) => u.replace(/[\d.]+/, (size) => `${Number(size) / 10}`);

/** Resistance that, stacked on the original, makes real power `factor` times what is read [mΩ]. */
const stacked = (original: number, factor: number) => (original / (factor - 1)).toPrecision(3);

function studyText(sketch: Sketch, rating: (output: string, unit: string) => string): string {
  const { graphics, byParts, phases, paste, ladder, instruments, at } = sketch;
  const phaseWatts = 12;
  const lossByParts = `
        by: parts
        high-side: ${at('high', 5, 'mohm', '± 15 %')}
        low-side: ${at('low', 1.6, 'mohm', '± 15 %')}
        on-coefficient: 0.4 %/K ~ 15 %
        switching-time: ${at('edges', 9, 'ns', '~ 25 %')}
        output-charge: 8 nC ~ 20 %
        recovery-charge: 5 nC ~ 30 %
        gate-charge: 14 nC ~ 20 %
        drive-voltage: 5 V ± 4 %
        dead-time: 20 ns ~ 30 %
        diode-voltage: 0.8 V ± 10 %
        winding: ${at('winding', 0.7, 'mohm', '± 10 %')}
        winding-coefficient: 0.393 %/K
        core: 0.08 W ~ 40 %`;
  const lossByCurve = `
        by: curve
        points:
          - { current: 0 A, loss: ${at('curve0', 0.35, 'W', '± 10 %')} }
          - { current: 6 A, loss: ${at('curve1', 0.85, 'W', '± 10 %')} }
          - { current: 14 A, loss: ${at('curve2', 2.0, 'W', '± 8 %')} }
          - { current: 28 A, loss: ${at('curve3', 5.2, 'W', '± 8 %')} }
          - { current: 45 A, loss: ${at('curve4', 11.5, 'W', '± 8 %')} }
        at-temperature: 85 degC
        loss-coefficient: 0.25 %/K ~ 30 %`;
  const regulator = (id: string, feeder: string, count: number, heats: string, rate: boolean) => `
  ${id}:
    kind: regulator
    fed-by: ${feeder}
    output: ${at(`${id} output`, 1.05, 'V', '± 1 %')}
    phases: ${count}
    imbalance: ${count === 1 ? '0 ± 0.001' : '4 % ± 3 %'}
    frequency: 600 kHz ± 5 %
    inductance: 220 nH ± 15 %
    losses:${byParts ? lossByParts : lossByCurve}
    fixed: 0.25 W ± 20 %
    stage: { rated-current: ${rate ? rating('parts.core-vr.phase-current', 'A') : 'none'}, junction-limit: none, junction-rise: ${at(`${id} rise`, 4, 'K/W', '± 20 %')} }
    inductor: { saturation-current: ${rate ? rating('parts.core-vr.inductor-peak', 'A') : 'none'}, heating-current: none }
    input-capacitors: { count: ${2 * count}, rated-ripple: ${rate ? rating('parts.core-vr.capacitor-ripple', 'A') : 'none'} }
    heats: ${heats}`;
  const sense = (id: string, feeder: string) => `
  ${id}:
    kind: sense
    fed-by: ${feeder}
    fitted:
      - { resistance: 5 mohm ± 1 %, joint: 0.1 mohm ± 0.06 mohm, temperature-coefficient: 50 ppm/K ~ 30 %, rated-power: none }
    heats: board`;
  const load = (id: string, feeder: string, watts: number, heats: string, follows: boolean, limit: string) => `
  ${id}:
    kind: load
    fed-by: ${feeder}
    power: ${at(`${id} power`, watts, 'W', '± 8 %')}${follows ? '\n    follows: processor' : ''}
    rated-current: ${limit}
    heats: ${heats}`;
  const node = (id: string) => `    ${id}: { limit: ${rating(`heat.nodes.${id}.temperature`, 'degC')} }`;
  const points = graphics ? ['core-sense', 'graphics-sense'] : ['core-sense'];
  const watts = phases * phaseWatts;
  const allowed = Math.round((graphics ? 1.25 : 1) * watts);
  const reads = points
    .map((id) => `\n      - { sense: ${id}, assumed: 5 mohm, gain: 1 ± 0.005, offset: 0 uV ± 30 uV }`)
    .join('');
  const shows = [
    ['processor-power', 'limiters.package.real', '0.4 W'],
    ['reported-power', 'limiters.package.reads', '0.1 W'],
    ['machine-power', 'parts.adapter.power', '0.8 W'],
    ['phase-current', 'parts.core-vr.phase-current', '0.4 A'],
    ['die', 'heat.nodes.die.temperature', '1 K'],
    ['stages', 'heat.nodes.stages.temperature', '1.5 K'],
    ...[...instruments].map((id) => [id, `heat.nodes.${id}.temperature`, id === 'ambient' ? '0.5 K' : '1.2 K']),
  ];
  const steps = ladder.map((factor, k) => {
    const changes = points.map((id) =>
      k === 0
        ? `\n      - at: parts.${id}.fitted.1\n        becomes: { resistance: ${stacked(5, factor)} mohm ± 1 %, joint: 0.1 mohm ± 0.06 mohm, temperature-coefficient: 75 ppm/K ~ 30 %, rated-power: none }`
        : `\n      - { at: parts.${id}.fitted.1.resistance, becomes: ${stacked(5, factor)} mohm ± 1 % }`,
    );
    if (paste && k === 1)
      changes.push(
        '\n      - at: heat.links.die-plate.through.0.bond-line\n        becomes: { yield-stress: 80 Pa ~ 30 %, pressure: 300 kPa ± 15 %, conductivity: 5.5 W/(m*K) ± 15 %, area: 120 mm^2 ± 3 % }',
      );
    return `\n  - id: step-${k + 1}\n    changes:${changes.join('')}`;
  });
  return `uprate: 1
title: Random board, invented
demand: { scale: 3 ± 0.2, crest: 1.08 ± 0.03 }
parts:
  adapter:
    kind: supply
    voltage: 19.5 V ± 2 %
    resistance: 30 mohm ± 30 %
    efficiency: 0.89 ± 0.02
    rated-power: ${rating('parts.adapter.power', 'W')}
    rated-current: none
    over-current: ${rating('parts.adapter.peak-current', 'A')}
    heats: ambient
  cable:
    kind: conductor
    fed-by: adapter
    resistance: ${at('cable', 25, 'mohm', '± 20 %')}
    temperature-coefficient: 0.393 %/K
    rated-current: ${rating('parts.cable.current', 'A')}
    heats: air-board${sense('core-sense', 'cable')}${regulator('core-vr', 'core-sense', phases, '{ stages: stages, inductors: board }', true)}${load('core', 'core-vr', watts / 1.15, 'die', true, rating('parts.core.current', 'A'))}${graphics ? sense('graphics-sense', 'cable') + regulator('graphics-vr', 'graphics-sense', 1, 'stages', false) + load('graphics', 'graphics-vr', watts / 5, 'die', true, 'none') : ''}${load('memory', 'cable', 5, 'memory', false, 'none')}${load('rest', 'cable', 6, 'board', false, 'none')}
limiters:
  package:
    acts: regulate
    allowed: ${allowed} W
    takes: average
    reads:${reads}
heat:
  ambient: 25 degC ± 2 K
  nodes:
${['die', 'stages', 'memory', 'case'].map(node).join('\n')}
    plate: { limit: none }
    fins: { limit: none }
    board: { limit: none }
    air-board: { limit: none }
    air-fins: { limit: none }
  links:
    die-plate:
      between: [die, plate]
      through:
        - bond-line: { yield-stress: 200 Pa ~ 40 %, pressure: ${at('pressure', 200, 'kPa', '± 25 %')}, conductivity: ${at('paste', 2, 'W/(m*K)', '~ 20 %')}, area: 120 mm^2 ± 3 % }
        - spreading: { source-area: 120 mm^2 ± 3 %, plate-area: 1500 mm^2 ± 5 %, thickness: 2 mm ± 5 %, conductivity: 390 W/(m*K) ± 3 %, film: 9000 W/(m^2*K) ~ 30 % }
    plate-fins: { between: [plate, fins], through: [ { heat-pipes: { count: 2, each: ${at('pipe', 0.25, 'K/W', '± 25 %')} } } ] }
    fins-air:
      between: [fins, air-fins]
      through:
        - fins: { count: ${30 + 10 * phases}, height: 14 mm ± 4 %, width: 40 mm ± 3 %, thickness: 0.3 mm ± 10 %, conductivity: 200 W/(m*K) ± 10 %, film: ${at('fin film', 45, 'W/(m^2*K)', '~ 15 %')} }
    stages-board: { between: [stages, board], through: [ { resistance: ${at('stages-board', 6 / phases, 'K/W', '~ 20 %')} } ] }
    stages-air: { between: [stages, air-board], through: [ { film: { coefficient: 35 W/(m^2*K) ~ 20 %, area: 9 cm^2 ± 10 % } } ] }
    board-air: { between: [board, air-board], through: [ { film: { coefficient: ${at('board film', 30, 'W/(m^2*K)', '~ 20 %')}, area: 200 cm^2 ± 10 % } } ] }
    memory-air: { between: [memory, air-board], through: [ { resistance: ${at('memory-air', 5, 'K/W', '~ 20 %')} } ] }
    memory-board: { between: [memory, board], through: [ { resistance: ${at('memory-board', 9, 'K/W', '~ 30 %')} } ] }
    board-case: { between: [board, case], through: [ { layer: { thickness: 5 mm ± 20 %, conductivity: 0.12 W/(m*K) ~ 30 %, area: 160 cm^2 ± 10 % } } ] }
    plate-case: { between: [plate, case], through: [ { contact: { resistance: 9000 K*mm^2/W ~ 30 %, area: 1500 mm^2 ± 5 % } } ] }
    case-ambient: { between: [case, ambient], through: [ { film: { coefficient: 11 W/(m^2*K) ~ 15 %, area: 450 cm^2 ± 5 % } } ] }
  streams:
    blower: { flow: ${at('flow', 8 + 2 * phases, 'CFM', '± 15 %')}, through: [air-board, air-fins] }
instruments:
${shows.map(([id, output, u]) => `  ${id}: { channel: ${id}, shows: ${output}, uncertainty: ${u}, repeatability: ${repeats(u)} }`).join('\n')}
learning:
  from: [as-delivered]
  learn: [heat.ambient]
  power-channel: processor-power
  limiter: package
steps:
  - id: as-delivered${steps.join('')}
`;
}
