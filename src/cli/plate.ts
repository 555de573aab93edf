import { writeFile } from 'node:fs/promises';
import { Refusal, refuse, writeFault } from '../fault/fault.ts';
import { balancePlate, type PlateBalance } from '../steps/plate-balance.ts';
import type { Outcome } from './envelope.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { drawPlate, padWords } from './plate-drawing.ts';
import { writeTable } from './text-table.ts';

export interface PlateCommandOptions {
  readonly step?: string;
  readonly svg?: string;
  readonly samples?: number;
  readonly seed?: number;
}

/** The `plate` verb: who carries the force of the cooler's screws, at every step or one; as a picture when a file is named. */
export async function runPlate(studyArgument: string, options: PlateCommandOptions): Promise<Outcome> {
  const { study } = await loadStudy(studyArgument);
  const { samples = 4000, seed = 1, svg } = options;
  const steps = options.step === undefined ? study.steps.map(({ id }) => id) : [namedStep(study, options.step)];
  const balances = steps.flatMap((id) => balancePlate(study, id, { samples, seed }) ?? []);
  if (balances.length === 0) throw new Refusal(refuse('command/no-plate', { study: study.title }));
  const last = balances[balances.length - 1];
  if (svg !== undefined) {
    if (last.ending !== 'solved') throw new Refusal(last.faults);
    await writeFile(svg, drawPlate(last));
  }
  const drawn = samples >= 2 ? `${samples} draws with seed ${seed}` : 'first order only';
  const text = [
    `${study.title}\n${drawn}. ± is one standard uncertainty.`,
    ...balances.map(describe),
    ...(svg === undefined ? [] : [`picture of step ${last.id}: ${svg}`]),
    cautions,
  ].join('\n\n');
  const solved = balances.every(({ ending }) => ending === 'solved');
  return { text, json: jsonSafe({ steps: balances, svg: svg ?? null }), exit: solved ? 0 : 1 };
}

const cautions = `Never press a bare die unevenly: tighten in a cross, in small turns; it is the edge pressure that breaks silicon.
The makers' limits of force on die, package, board and socket win over these figures. Pads relax: an hour later they push less.`;

function describe(balance: PlateBalance): string {
  const head = `── ${balance.id}: ${balance.title}`;
  const { pull, height, tiltX, tiltY, solution, sampling } = balance;
  if (!pull || !height || !tiltX || !tiltY || !solution) return [head, ...balance.faults.map(writeFault)].join('\n\n');
  const lines = [
    head,
    balance.changed.length > 0 ? `changed: ${balance.changed.join(', ')}` : 'nothing changed on the plate',
    `screws pull ${pull.text}; the plate stands ${height.text} over the board's origin, tilted ${tiltX.text} along x and ${tiltY.text} along y`,
    '',
    carriers(balance),
  ];
  if (balance.pads.length > 0) lines.push('', padTable(balance));
  if (balance.dies.length > 0) lines.push('', dieTable(balance));
  if (balance.margins.length > 0) lines.push('', limitTable(balance));
  if (balance.open.length > 0) {
    lines.push('', '  open: limits without data (unknown is not safe)');
    for (const open of balance.open) lines.push(`    ${open.title}: ${open.value?.text ?? ''}; fill in ${open.field}`);
  }
  if (sampling && sampling.failed > 0)
    lines.push(
      '',
      `  in ${sampling.failed} of ${sampling.samples} draws the plate finds no rest; they count as no contact and as exceeding every limit`,
    );
  lines.push('', `  balanced to ${solution.residual.toExponential(1)} of the pull in ${solution.passes} passes`);
  return lines.join('\n');
}

function carriers({ screws, pads, dies, stops, pull }: PlateBalance): string {
  const share = (force: number) => (pull && pull.value > 0 ? `${((100 * force) / pull.value).toFixed(0)} %` : '');
  const rows = [
    ...screws.map(({ id, title, force }) => [`screw ${id}`, title, force.text, '']),
    ...dies.map(({ id, title, force }) => [`die ${id}`, title, force.text, share(force.value)]),
    ...pads.map(({ id, title, force }) => [`pad ${id}`, title, force.text, share(force.value)]),
    ...stops.map(({ id, title, force }) => [`stop ${id}`, title, force.text, share(force.value)]),
  ];
  const force = { heading: 'force', align: 'right' } as const;
  return writeTable(
    [{ heading: 'part' }, { heading: 'is' }, force, { heading: 'carries', align: 'right' }],
    rows,
    '  ',
  );
}

function padTable({ pads }: PlateBalance): string {
  const right = (heading: string) => ({ heading, align: 'right' }) as const;
  return writeTable(
    [
      { heading: 'pad' },
      right('compressed by'),
      right('strain'),
      right('at its worst corner'),
      right('pressure'),
      right('no contact'),
      { heading: '' },
    ],
    pads.map((pad) => [
      pad.id,
      pad.compression.text,
      pad.strain.text,
      pad.largestStrain.text,
      pad.pressure.text,
      pad.noContact?.text ?? '',
      padWords[pad.state],
    ]),
    '  ',
  );
}

function dieTable({ dies }: PlateBalance): string {
  const right = (heading: string) => ({ heading, align: 'right' }) as const;
  return writeTable(
    [
      { heading: 'die' },
      right('mean pressure'),
      right('highest'),
      right('lowest'),
      right('touched'),
      right('gap left'),
      right('no contact'),
      right('only in part'),
    ],
    dies.map((die) => [
      die.id,
      die.touches ? die.meanPressure.text : 'no contact',
      die.highestPressure.text,
      die.lowestPressure.text,
      `${(100 * die.contact.value).toFixed(0)} %`,
      die.touches ? 'none' : die.gap.text,
      die.noContact?.text ?? '',
      die.partContact?.text ?? '',
    ]),
    '  ',
  );
}

function limitTable({ margins }: PlateBalance): string {
  const right = (heading: string) => ({ heading, align: 'right' }) as const;
  return writeTable(
    [{ heading: 'limit' }, right('value'), right('limit'), right('margin'), right('exceeded'), { heading: 'state' }],
    margins.map(({ id, value, limit, margin, exceed, state }) => [
      id,
      value.text,
      `≤ ${limit.text}`,
      margin.text,
      exceed.text,
      state,
    ]),
    '  ',
  );
}
