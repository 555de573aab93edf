import { writeFile } from 'node:fs/promises';
import { Refusal, refuse, writeFault } from '../fault/fault.ts';
import { writeValue } from '../quantity/write.ts';
import { writeForFile } from '../quantity/write-for-file.ts';
import { type Learnt, learn, learntInputs } from '../steps/learn.ts';
import { editStudy } from '../study/edit.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';
import { measuredWindows } from './measured-windows.ts';
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
      fit.residuals.map(({ observation, difference, size }) => [
        observation,
        // Every observation here is a temperature or a power: its difference is in the SI unit of the instrument.
        difference.toFixed(3),
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
    residuals: fit.residuals,
    chiSquare: fit.chiSquare,
    degreesOfFreedom: fit.degreesOfFreedom,
    used: learnt.used,
    leftOut: learnt.leftOut,
  };
  return { text: lines.join('\n\n'), json: JSON.parse(JSON.stringify(json)), exit: 0 };
}

/** Fits the study to the runs it names. Throws a Refusal when the fit has no result. */
export async function learnFromRuns(study: Study, folder: string): Promise<Learnt> {
  if (!study.learning) throw new Refusal(refuse('fit/no-learning', { file: study.file }));
  const windows = (await Promise.all(study.learning.from.map((id) => measuredWindows(folder, id)))).flat();
  const learnt = learn(study, study.steps[0], windows);
  if (learnt.fit.ending !== 'converged') throw new Refusal(learnt.fit.faults);
  return learnt;
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
  await writeFile(path, edited.text);
}

/** The value with the digits its uncertainty deserves: nobody reads 17 digits in a study. */
function shortest(
  value: number,
  spread: Parameters<typeof writeForFile>[1],
  unit: string,
  kind: Parameters<typeof writeForFile>[3],
): string {
  if (spread?.shape !== 'normal') return writeForFile(value, spread, unit, kind);
  return `${writeValue(value, spread.u, unit, kind)} (k=1)`;
}
