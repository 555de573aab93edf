import type { StepPlan } from '../steps/step-plan.ts';
import type { PlanJob, PlanWord } from './plan-words.ts';

interface Question {
  readonly job: PlanJob;
  readonly hear: (plan: StepPlan) => void;
}

/** Solves in the background behind a dial that is being turned: one question at a time, and of those that wait only the newest. */
export class Follower {
  #worker: Worker | null = null;
  #asked: Question | null = null;
  #waiting: Question | null = null;

  ask(job: PlanJob, hear: (plan: StepPlan) => void): void {
    this.#waiting = { job, hear };
    if (!this.#asked) this.#next();
  }

  /** The question that waits is no longer of interest; the one under way still answers, so that uncertainties follow a hand that never rests. */
  forget(): void {
    this.#waiting = null;
  }

  #next(): void {
    const question = this.#waiting;
    this.#asked = question;
    this.#waiting = null;
    if (!question) return;
    this.#worker ??= this.#start();
    this.#worker.postMessage(question.job);
  }

  #start(): Worker {
    const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PlanWord>) => {
      if (data.kind === 'plan') this.#asked?.hear(data.plan);
      if (data.kind === 'done') this.#next();
    };
    return worker;
  }
}
