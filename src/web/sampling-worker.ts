import './no-eval.ts';
import { planStep } from '../steps/plan.ts';
import { readStudy } from '../study/read.ts';
import type { SamplingJob, SamplingWord } from './sampling-words.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

scope.addEventListener('message', ({ data }: MessageEvent<SamplingJob>) => {
  const { file, text, steps, samples, seed, dial } = data;
  const say = (word: SamplingWord) => scope.postMessage(word);
  const reading = readStudy(text, file);
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
