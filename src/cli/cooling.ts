import { writeFile } from 'node:fs/promises';
import { type StackLayer, stackPicture } from '../charts/stack-picture.ts';
import { standalone } from '../charts/standalone.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type CoolingChange, type CoolingStep, coolingOf } from '../steps/cooling.ts';
import type { Stack } from '../steps/cooling-stack.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { writeTable } from './text-table.ts';

export interface CoolingCommandOptions {
  readonly step?: string;
  readonly from?: string;
  readonly svg?: string;
}

/** The `cooling` verb: the temperature lost over each layer, and what each change of the cooling buys at the same power. */
export async function runCooling(studyArgument: string, options: CoolingCommandOptions): Promise<Outcome> {
  const { study } = await loadStudy(studyArgument);
  const { svg, from } = options;
  const ids = options.step === undefined ? study.steps.map(({ id }) => id) : [namedStep(study, options.step)];
  if (from !== undefined) for (const id of ids) refuseUnknownNode(study, id, from);
  const steps = ids.map((id) => coolingOf(study, id, from));
  const last = steps[steps.length - 1];
  if (svg !== undefined) {
    if (!last.stack) throw new Refusal(refuse('board/infeasible', { step: last.id }));
    await writeFile(svg, drawStack(last, last.stack));
  }
  const text = [
    `${study.title}\nfirst order; ± is one standard uncertainty.`,
    ...steps.map(describe),
    ...(svg === undefined ? [] : [`picture of step ${last.id}: ${svg}`]),
    cautions,
  ].join('\n\n');
  const solved = steps.every(({ stack }) => stack !== null);
  return { text, json: jsonSafe({ steps, svg: svg ?? null }), exit: solved ? 0 : 1 };
}

const cautions = `Change one thing at a time, and compare at the old power first. Liquid metals destroy aluminium and short what they reach: \`uprate check\` says so
where a joint names its material and its surfaces. Look at the force on the die with \`uprate plate\` before powering on.`;

function refuseUnknownNode(study: Study, step: string, node: string): void {
  const known = Object.keys(study.steps.find(({ id }) => id === step)!.board.heat.nodes);
  if (!known.includes(node))
    throw new Refusal(refuse('command/no-such-node', { node, known, nearest: nearest(node, known) }));
}

function describe(step: CoolingStep): string {
  const head = `── ${step.id}: ${step.title}`;
  if (!step.stack) return `${head}\n\n  no operating point: \`uprate plan --step ${step.id}\` says why`;
  const { path } = step.stack;
  const nodeTitle = titleOf(step.stack, path.start);
  return [
    head,
    `from ${nodeTitle} to ambient ${path.rise.text}, along the way that carries most heat`,
    '',
    pathTable(step, step.stack),
    '',
    waysTable(step.stack),
    ...(step.changes.length > 0 ? ['', ...changeLines(step)] : []),
  ].join('\n');
}

function titleOf(stack: Stack, node: string): string {
  return stack.nodes.find(({ id }) => id === node)?.title ?? node;
}

const right = (heading: string) => ({ heading, align: 'right' }) as const;

function pathTable({ before }: CoolingStep, { path }: Stack): string {
  const earlier = new Map(before?.path.layers.map(({ id, drop }) => [id, drop.text]));
  const columns = [
    { heading: 'layer' },
    { heading: 'is' },
    right('heat'),
    right('resistance'),
    right('drop'),
    right('of all'),
  ];
  const rows = path.layers.map(({ id, title, what, heat, resistance, drop }) => [
    title,
    what,
    heat.text,
    resistance.text,
    drop.text,
    `${((100 * drop.value) / path.rise.value).toFixed(0)} %`,
    ...(before ? [earlier.get(id) ?? 'none'] : []),
  ]);
  const total = path.layers.reduce((sum, { drop }) => sum + drop.value, 0);
  const last = ['together', '', '', '', `${total.toFixed(1)} K`, '', ...(before ? [before.path.rise.text] : [])];
  return writeTable([...columns, ...(before ? [right('drop without the changes')] : [])], [...rows, last], '  ');
}

function waysTable({ ways, air }: Stack): string {
  return writeTable(
    [{ heading: 'way' }, { heading: 'from' }, { heading: 'to' }, right('heat'), right('drop')],
    [
      ...ways.map(({ title, from, to, heat, drop }) => [title, from, to, heat.text, drop.text]),
      ...air.map(({ stream, from, to, heat, rise }) => [
        `${stream}, air that warms`,
        from,
        to,
        heat.text,
        `+ ${rise.text}`,
      ]),
    ],
    '  ',
  );
}

/** Nodes that a change moves by so little are left out [K]. */
const remarkable = 0.1;
/** Nodes that are shown of each change, those first that it moves most. */
const most = 4;

function changeLines({ changes, power }: CoolingStep): string[] {
  const same = power
    ? `at the same power (${power.real.text} at ${power.limiter})`
    : 'at the same scale of the processor';
  const rows = changes.flatMap((change) => {
    const name = change.compared === 'together' ? 'all of them together' : change.paths[0];
    const untold = untoldWords(change);
    if (untold) return [[name, change.kind, untold, '', '', '']];
    const shown = change.gains.filter(({ gain }, i) => i < most && (i === 0 || Math.abs(gain.value) >= remarkable));
    return shown.map(({ title, without, with: now, gain }, i) => [
      i === 0 ? name : '',
      i === 0 ? change.kind : '',
      title,
      without.text,
      now.text,
      gain.text,
    ]);
  });
  return [
    `  what each change of the cooling buys ${same}, the others made:`,
    writeTable(
      [
        { heading: 'change' },
        { heading: 'kind' },
        { heading: 'node' },
        right('without'),
        right('with'),
        right('cooler by'),
      ],
      rows,
      '  ',
    ),
  ];
}

function untoldWords({ untold }: CoolingChange): string {
  if (untold === 'built-on') return 'not alone: other changes build on it';
  return untold === 'no-solution' ? 'no operating point without it at this power' : '';
}

function drawStack({ title, before, power }: CoolingStep, stack: Stack): string {
  const earlier = new Map(before?.path.layers.map((layer) => [layer.id, layer]));
  const celsius = (kelvins: number) => kelvins - 273.15;
  const span = ({ from, to }: { from: number; to: number }) => ({ from: celsius(from), to: celsius(to) });
  const temperature = (node: string) => stack.nodes.find(({ id }) => id === node)?.temperature.text ?? '';
  const layers = stack.path.layers.map((layer): StackLayer => {
    const then = earlier.get(layer.id);
    return {
      ...span(layer),
      title: layer.title,
      note: `${layer.what}, ${Number(layer.heat.value.toPrecision(3))} W`,
      drop: layer.drop.text,
      before: then ? { ...span(then), drop: then.drop.text } : null,
    };
  });
  const picture = {
    title: `${title}: where the temperature is lost`,
    start: `${titleOf(stack, stack.path.start)}: ${temperature(stack.path.start)}`,
    end: `Ambient: ${temperature('ambient')}`,
    layers,
    before: before
      ? `without this step's changes of the cooling, at the same power${power ? `, ${power.real.text}` : ''}`
      : '',
  };
  return `${standalone(stackPicture(picture, { width: 760 }))}\n`;
}
