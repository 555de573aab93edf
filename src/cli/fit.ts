import { assembleBoard } from '../board/assemble.ts';
import { type Fault, Refusal, refuse, writeFault } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import { writeForFile } from '../quantity/write-for-file.ts';
import { listRuns } from '../runs/read-run.ts';
import { type Learnt, learn, learntInputs, type MeasuredWindow, quantityAt } from '../steps/learn.ts';
import { type BentInput, bentInputs, type SampledInputs, samplePosterior } from '../steps/posterior.ts';
import { editStudy } from '../study/edit.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';
import { measuredWindows } from './measured-windows.ts';
import { replaceStudy } from './replace-study.ts';
import { writeTable } from './text-table.ts';

export interface FitCommandOptions {
  readonly write?: boolean;
  /** Outliers pull no harder than a reading at 1.345 of its uncertainty. */
  readonly robust?: boolean;
  /** Draws from the posterior. */
  readonly posterior?: number;
  readonly seed?: number;
}

/** The `fit` verb: learns the study's inputs from the settled windows of its runs; `--write` puts them into the study with their source. */
export async function runFit(studyArgument: string, options: FitCommandOptions): Promise<Outcome> {
  const { study, text, path, folder } = await loadStudy(studyArgument);
  const learnt = await learnFromRuns(study, folder, options);
  const inputs = learntInputs(study, learnt);
  const { fit } = learnt;
  const residuals = residualsWithUnit(study, learnt);
  const bent = bentInputs(study, learnt);
  const faults = bent.length === 0 ? fit.faults : [...fit.faults, warnBent(bent.map(({ path: id }) => id))];
  const { posterior: samples, seed = 1 } = options;
  const sample = samples === undefined ? null : samplePosterior(study, learnt, { samples, seed });
  const lines = [
    `learnt from ${runNames(study)}: ${learnt.used.length} observations, ${fit.inputs.length} uncertain inputs`,
    writeTable(
      [
        { heading: 'input' },
        { heading: 'before', align: 'right' },
        { heading: 'after', align: 'right' },
        { heading: 'determined by the data' },
      ],
      inputs.map((input) => [input.path, input.before.text, input.after.text, input.determined]),
      '  ',
    ),
    writeTable(
      [
        { heading: 'observation' },
        { heading: 'measured − fitted', align: 'right' },
        { heading: 'in uncertainties', align: 'right' },
        { heading: 'leverage', align: 'right' },
        ...(options.robust ? [{ heading: 'counts', align: 'right' as const }] : []),
      ],
      residuals.map(({ observation, difference, unit, size, leverage, weight }) => [
        observation,
        `${difference.toFixed(3)} ${unit}`,
        size === null ? 'nothing else speaks about it' : size.toFixed(2),
        leverage.toFixed(2),
        ...(options.robust ? [weight.toFixed(2)] : []),
      ]),
      '  ',
    ),
    sayChiSquare(fit),
    ...learnt.leftOut.map(({ window, instrument, why }) => `left out: ${window}, ${instrument}: ${why}`),
    ...faults.map(writeFault),
    ...(bent.length > 0 ? [bentTable(bent)] : []),
    ...(fit.misfit ? [explanations(fit.misfit)] : []),
    ...(sample ? [sampleTable(sample)] : []),
  ];
  if (options.write) {
    await writeInto(path, text, study, inputs);
    lines.push(
      `written into ${path}; what was stated before stays beside each number, and the next fit starts from it`,
    );
  } else lines.push('nothing written; --write puts these values into the study');
  const json = {
    inputs,
    residuals,
    chiSquare: fit.chiSquare,
    chiSquareParts: fit.chiSquareParts,
    degreesOfFreedom: fit.degreesOfFreedom,
    chance: fit.chance,
    misfit: fit.misfit,
    bent,
    posterior: sample,
    used: learnt.used,
    leftOut: learnt.leftOut,
  };
  return { text: lines.join('\n\n'), json, exit: 0 };
}

/** Fits the study to the runs it names. Throws a Refusal when the fit has no result. */
export async function learnFromRuns(
  study: Study,
  folder: string,
  options: { readonly robust?: boolean } = {},
): Promise<Learnt> {
  if (!study.learning) throw new Refusal(refuse('fit/no-learning', { file: study.file }));
  const known = (await listRuns(folder)).map(({ id }) => id);
  const unknown = study.learning.from.filter((run) => !known.includes(run));
  if (unknown.length > 0)
    throw new Refusal(unknown.map((run) => refuse('fit/no-such-run', { run, known, near: nearest(run, known) })));
  const windows = (await Promise.all(study.learning.from.map((id) => windowsOfRun(study, folder, id)))).flat();
  const learnt = learn(study, study.steps[0], windows, options);
  if (learnt.fit.ending !== 'converged') throw new Refusal(learnt.fit.faults);
  return learnt;
}

/** The windows of a run, each with the step at which the study says it was recorded. */
export async function windowsOfRun(study: Study, folder: string, run: string): Promise<MeasuredWindow[]> {
  const step = study.learning?.at?.[run];
  return (await measuredWindows(folder, run)).map((window) => ({ ...window, step }));
}

function sayChiSquare({ chiSquare, chiSquareParts, degreesOfFreedom, chance }: Learnt['fit']): string {
  const { observations, stated } = chiSquareParts;
  const parts = `${observations.toFixed(2)} from the observations, ${stated.toFixed(2)} from the stated values`;
  const probability = chance === null ? '' : ` (probability ${chance.toFixed(2)})`;
  return `chi-square ${chiSquare.toFixed(2)} with ${degreesOfFreedom} degrees of freedom${probability}: ${parts}`;
}

function warnBent(inputs: readonly string[]): Fault {
  return { code: 'fit/bent', severity: 'warning', data: { inputs } };
}

function bentTable(bent: readonly BentInput[]): string {
  const side = (figure: BentInput['below']) => figure?.text ?? 'no end';
  return writeTable(
    [{ heading: 'bent' }, { heading: 'u below', align: 'right' }, { heading: 'u above', align: 'right' }],
    bent.map(({ path, below, above }) => [path, side(below), side(above)]),
    '  ',
  );
}

const kindsOfChange = {
  observation: 'this reading is wrong',
  stated: 'its stated value is wrong',
  exact: 'it is not exact',
} as const;

function explanations({ explanations: list }: NonNullable<Learnt['fit']['misfit']>): string {
  const columns = [
    { heading: 'single change' },
    { heading: 'to' },
    { heading: 'off chi-square', align: 'right' as const },
    { heading: 'probability then', align: 'right' as const },
  ];
  return writeTable(
    columns,
    list
      .slice(0, 8)
      .map(({ kind, id, takes, chance }) => [
        kindsOfChange[kind],
        id,
        takes.toFixed(1),
        chance === null ? '' : chance.toFixed(3),
      ]),
    '  ',
  );
}

function sampleTable({ inputs, effective, samples, seed }: SampledInputs): string {
  const worth = `${samples} draws from the posterior (seed ${seed}), worth ${effective.toFixed(0)} independent ones`;
  const few = effective < 100 ? '; too few for an interval, ask for more draws' : '';
  const columns = [
    { heading: 'input' },
    { heading: 'mean', align: 'right' as const },
    { heading: '95 %', align: 'right' as const },
  ];
  const rows = inputs.map(({ path, mean, low, high }) => [path, mean.text, `${low.text} to ${high.text}`]);
  return `${worth}${few}\n${writeTable(columns, rows, '  ')}`;
}

/** Each residual with the SI unit of its difference: an observation is named by its window and its instrument. */
function residualsWithUnit(study: Study, { fit }: Learnt) {
  const assembly = assembleBoard(study.steps[0]);
  if (!assembly.ok) throw new Refusal(assembly.faults);
  const { outputs, indexOfOutput } = assembly.board;
  return fit.residuals.map((residual) => {
    const instrument = residual.observation.slice(residual.observation.lastIndexOf(': ') + 2);
    const { kind } = outputs[indexOfOutput(study.instruments[instrument].shows)];
    return { ...residual, unit: kinds[kind].siUnit };
  });
}

function runNames(study: Study): string {
  const { from } = study.learning!;
  return `${from.length === 1 ? 'run' : 'runs'} ${from.join(', ')}`;
}

/** Writes the learnt values beside what was stated before, so that a second fit doesn't count the same data twice. */
async function writeInto(
  path: string,
  text: string,
  study: Study,
  inputs: ReturnType<typeof learntInputs>,
): Promise<void> {
  const source = `fit of ${runNames(study)}`;
  const edits = inputs.map(({ path: at, after, spread, unit, kind }) => {
    const quantity = quantityAt(study, at)!;
    const value = shortest(after.value, spread, unit, kind);
    return { path: at, value, source, before: quantity.before ? undefined : quantity.text };
  });
  const edited = editStudy(text, path, edits);
  if (!edited.ok) throw new Refusal(edited.faults);
  await replaceStudy(path, text, edited.text);
}

/** The value with the digits its uncertainty deserves: nobody reads 17 digits in a study. */
function shortest(
  value: number,
  spread: Parameters<typeof writeForFile>[1],
  unit: string,
  kind: Parameters<typeof writeForFile>[3],
): string {
  if (spread?.shape === 'normal') return `${writeValue(value, spread.u, unit, kind)} (k=1)`;
  if (spread?.shape !== 'log-normal') return writeForFile(value, spread, unit, kind);
  const [median] = writeValue(value, spread.sigma * value, unit, kind).split(' ± ');
  return `${median} (sigma=${Number(spread.sigma.toPrecision(2))})`;
}
