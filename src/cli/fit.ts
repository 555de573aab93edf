import { assembleBoard } from '../board/assemble.ts';
import { Refusal, refuse, writeFault } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import { writeForFile } from '../quantity/write-for-file.ts';
import { listRuns } from '../runs/read-run.ts';
import { type Learnt, learn, learntInputs } from '../steps/learn.ts';
import { editStudy } from '../study/edit.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';
import { measuredWindows } from './measured-windows.ts';
import { replaceStudy } from './replace-study.ts';
import { writeTable } from './text-table.ts';

export interface FitCommandOptions {
  readonly write?: boolean;
}

/** The `fit` verb: learns the study's inputs from the settled windows of its runs; `--write` puts them into the study with their source. */
export async function runFit(studyArgument: string, options: FitCommandOptions): Promise<Outcome> {
  const { study, text, path, folder } = await loadStudy(studyArgument);
  const learnt = await learnFromRuns(study, folder);
  const inputs = learntInputs(study, study.steps[0], learnt);
  const { fit } = learnt;
  const residuals = residualsWithUnit(study, learnt);
  const lines = [
    `learnt from ${runNames(study)}: ${learnt.used.length} observations, ${fit.inputs.length} uncertain inputs, ${fit.passes} passes`,
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
      ],
      residuals.map(({ observation, difference, unit, size }) => [
        observation,
        `${difference.toFixed(3)} ${unit}`,
        size === null ? 'nothing else speaks about it' : size.toFixed(2),
      ]),
      '  ',
    ),
    `chi-square ${fit.chiSquare.toFixed(2)} with ${fit.degreesOfFreedom} degrees of freedom${fit.chance === null ? '' : ` (probability ${fit.chance.toFixed(2)})`}`,
    ...learnt.leftOut.map(({ window, instrument, why }) => `left out: ${window}, ${instrument}: ${why}`),
    ...fit.faults.map(writeFault),
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
    degreesOfFreedom: fit.degreesOfFreedom,
    used: learnt.used,
    leftOut: learnt.leftOut,
  };
  return { text: lines.join('\n\n'), json, exit: 0 };
}

/** Fits the study to the runs it names. Throws a Refusal when the fit has no result. */
export async function learnFromRuns(study: Study, folder: string): Promise<Learnt> {
  if (!study.learning) throw new Refusal(refuse('fit/no-learning', { file: study.file }));
  const known = (await listRuns(folder)).map(({ id }) => id);
  const unknown = study.learning.from.filter((run) => !known.includes(run));
  if (unknown.length > 0)
    throw new Refusal(unknown.map((run) => refuse('fit/no-such-run', { run, known, near: nearest(run, known) })));
  const windows = (await Promise.all(study.learning.from.map((id) => measuredWindows(folder, id)))).flat();
  const learnt = learn(study, study.steps[0], windows);
  if (learnt.fit.ending !== 'converged') throw new Refusal(learnt.fit.faults);
  return learnt;
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
  const quantities = [...study.steps[0].quantities];
  const edits = inputs.map(({ path: at, after, spread, unit, kind }) => {
    const quantity = quantities.find(([, address]) => address === at)![0];
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
