import type { PlanJob, PlanWord } from './plan-words.ts';

/** One background worker that samples one job at a time. */
export class Sampler {
  #worker: Worker | null = null;
  #busy = false;

  /** Gives up the job under way, if any, and starts this one; `hear` is called until it is done or given up. */
  start(job: PlanJob, hear: (word: PlanWord) => void): void {
    this.cancel();
    this.#worker ??= new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
    this.#busy = true;
    this.#worker.onmessage = ({ data }: MessageEvent<PlanWord>) => {
      if (data.kind === 'done') this.#busy = false;
      hear(data);
    };
    this.#worker.postMessage(job);
  }

  /** A worker in the middle of a job hears nothing: it is ended, and the next job gets a new one. */
  cancel(): void {
    if (!this.#busy) return;
    this.#worker?.terminate();
    this.#worker = null;
    this.#busy = false;
  }
}
