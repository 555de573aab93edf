import './no-eval.ts';
import { planStep } from '../steps/plan.ts';
import { readStudy } from '../study/read.ts';
import type { StudyReading } from '../study/study.ts';
import type { PlanJob, PlanWord } from './plan-words.ts';

/** The study last asked about: a dial that is turned asks about the same one again and again. */
let known: { readonly text: string; readonly file: string; readonly reading: StudyReading } | null = null;

function readOnce(text: string, file: string): StudyReading {
  if (known?.text !== text || known.file !== file) known = { text, file, reading: readStudy(text, file) };
  return known.reading;
}

const scope = self as unknown as DedicatedWorkerGlobalScope;

scope.addEventListener('message', ({ data }: MessageEvent<PlanJob>) => {
  const { file, text, steps, samples, seed, dial } = data;
  const say = (word: PlanWord) => scope.postMessage(word);
  const reading = readOnce(text, file);
  if (reading.ok) {
    for (const step of steps) {
      let told = 0;
      const progress = (done: number, total: number) => {
        if (done / total - told < 0.04) return;
        told = done / total;
        say({ kind: 'progress', step, share: told });
      };
      say({ kind: 'plan', plan: planStep(reading.study, step, { samples, seed, dial, progress }) });
    }
  }
  say({ kind: 'done' });
});
