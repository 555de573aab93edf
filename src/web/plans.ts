import { computed, effect, signal } from '@preact/signals';
import { planStep } from '../steps/plan.ts';
import type { Dial, Figure, StepPlan } from '../steps/step-plan.ts';
import { readStudy } from '../study/read.ts';
import type { Study, StudyReading } from '../study/study.ts';
import { readAddress, writeAddress } from './address.ts';
import { Follower } from './follower.ts';
import { Sampler } from './sampler.ts';
import { studySource } from './study-source.ts';
import { TurningBoard } from './turning-board.ts';
import { powerLimiter } from './words.ts';

/** Draws of a Monte Carlo run, and the seed that makes them repeatable. */
export const SAMPLES = 20_000;
export const SEED = 1;
/** Steps that are sampled at the same time, one a core: each step's draws are the same wherever they are made. */
const MOST_SAMPLERS = 4;
/** How long the dial rests before sampling starts [ms]. */
const REST = 150;

/** The study as it reads now: understood, or the faults in it; null before it is here. */
export const reading = computed<StudyReading | null>(() => {
  const source = studySource.value;
  return source.state === 'here' ? readStudy(source.text, source.file) : null;
});

export const study = computed(() => (reading.value?.ok ? reading.value.study : null));

const fromAddress = readAddress(location.hash);
const wantedStep = signal(fromAddress.step);
/** Real power the dial stands at [W]; null: the firmware's own. */
export const dialPower = signal(fromAddress.dial);

/** The step looked at: the wanted one, or the first where there is none of that name. */
export const chosenStep = computed(() => {
  const steps = study.value?.steps ?? [];
  return (steps.find(({ id }) => id === wantedStep.value) ?? steps[0])?.id ?? null;
});

export function chooseStep(id: string): void {
  wantedStep.value = id;
}

/** Every step at the firmware's own operating point, by first order: at hand at once. */
const firstOrder = computed(() => {
  const read = study.value;
  return read ? read.steps.map(({ id }) => planStep(read, id, { samples: 0, seed: SEED })) : [];
});

const sampled = signal<ReadonlyMap<string, StepPlan>>(new Map());

/** Every step at the firmware's own operating point, sampled as far as sampling has come. */
export const plans = computed(() => firstOrder.value.map((plan) => sampled.value.get(plan.id) ?? plan));

/** The chosen step at the firmware's own operating point. */
export const ownPlan = computed(() => plans.value.find(({ id }) => id === chosenStep.value) ?? null);

/** What the dial turns. */
interface DialTarget {
  readonly limiter: string;
  readonly title: string;
  /** Where the firmware's own operating point is; null for a step that has none. */
  readonly own: Figure | null;
  /** Where the dial starts from [W]. */
  readonly start: number;
}

/** The limiter whose real power the dial sets. A step without an operating point starts from what its limiter allows: at less it may have one. */
export const dialTarget = computed<DialTarget | null>(() => {
  const plan = ownPlan.value;
  const limiter = plan && powerLimiter(plan);
  if (!limiter) return null;
  const own = plan.operating ? limiter.real : null;
  return { limiter: limiter.id, title: limiter.title, own, start: (own ?? limiter.allowed).value };
});

/** What the dial asks for; null where it rests on the firmware’s own. */
export const dial = computed<Dial | null>(() =>
  dialPower.value !== null && dialTarget.value
    ? { limiter: dialTarget.value.limiter, realPower: dialPower.value }
    : null,
);

/** The last whole solution at a dialled power: of which step of which study, and at what dial. */
const dialled = signal<{ readonly plan: StepPlan; readonly at: Dial; readonly of: Study } | null>(null);

export const isWhatIf = computed(() => dial.value !== null);

/** The step as the study has it, put together once for the many powers of a turning dial. */
const dialledBoard = computed(() => {
  const step = study.value?.steps.find(({ id }) => id === chosenStep.value);
  const limiter = dialTarget.value?.limiter;
  return step && limiter ? new TurningBoard(step, limiter) : null;
});

/**
 * The chosen step as the dial stands. While the whole solution for a turned dial is under way, its values are already right,
 * and its uncertainties are the last ones known.
 */
export const shownPlan = computed(() => {
  const at = dial.value;
  if (!at) return ownPlan.value;
  const last = dialled.value;
  const known = last?.of === study.value && last?.plan.id === chosenStep.value ? last : null;
  if (known?.at.limiter === at.limiter && known.at.realPower === at.realPower) return known.plan;
  const base = known?.plan ?? ownPlan.value;
  return base && (dialledBoard.value?.turn(base, at.realPower) ?? base);
});

/** How far sampling is: steps done and the shares of those under way, added up; null when nothing is under way. */
export const progress = signal<{ readonly done: number; readonly of: number; readonly share: number } | null>(null);
export const dialSampling = signal(false);

/** Keeps samples and address in step with the study, the chosen step and the dial. */
export function followPlans(): void {
  const ladderSamplers = Array.from(
    { length: Math.min(MOST_SAMPLERS, navigator.hardwareConcurrency || 1) },
    () => new Sampler(),
  );
  const dialSampler = new Sampler();
  const follower = new Follower();

  effect(() => {
    const source = studySource.value;
    if (source.state !== 'here') return;
    // Asked about no step, the worker starts and reads the study: the first turn of the dial then doesn't wait for that.
    follower.ask({ file: source.file, text: source.text, steps: [], samples: 0, seed: SEED }, () => {});
  });

  effect(() => {
    const source = studySource.value;
    const chosen = chosenStep.peek();
    const all = study.value?.steps.map(({ id }) => id) ?? [];
    const steps = [...all.filter((id) => id === chosen), ...all.filter((id) => id !== chosen)];
    sampled.value = new Map();
    progress.value = null;
    for (const sampler of ladderSamplers) sampler.cancel();
    if (source.state !== 'here' || steps.length === 0) return;
    let done = 0;
    progress.value = { done, of: steps.length, share: 0 };
    const shares = ladderSamplers.map(() => 0);
    ladderSamplers.forEach((sampler, k) => {
      const own = steps.filter((_, i) => i % ladderSamplers.length === k);
      if (own.length === 0) return;
      sampler.start({ file: source.file, text: source.text, steps: own, samples: SAMPLES, seed: SEED }, (word) => {
        if (word.kind === 'plan') {
          done += 1;
          sampled.value = new Map(sampled.peek()).set(word.plan.id, word.plan);
        }
        shares[k] = word.kind === 'progress' ? word.share : 0;
        const share = shares.reduce((sum, each) => sum + each);
        progress.value = done === steps.length ? null : { done, of: steps.length, share };
      });
    });
  });

  effect(() => {
    const [source, of, step, at] = [studySource.value, study.value, chosenStep.value, dial.value];
    dialSampling.value = false;
    dialSampler.cancel();
    if (source.state !== 'here' || !of || !step || !at) return;
    const job = { file: source.file, text: source.text, steps: [step], samples: 0, seed: SEED, dial: at };
    let samplesAreIn = false;
    follower.ask(job, (plan) => {
      const stale = studySource.peek() !== source || chosenStep.peek() !== step || dial.peek() === null;
      if (!stale && !samplesAreIn) dialled.value = { plan, at, of };
    });
    const timer = setTimeout(() => {
      dialSampling.value = true;
      dialSampler.start({ ...job, samples: SAMPLES }, (word) => {
        if (word.kind === 'plan') {
          samplesAreIn = true;
          dialled.value = { plan: word.plan, at, of };
        }
        if (word.kind === 'done') dialSampling.value = false;
      });
    }, REST);
    return () => {
      follower.forget();
      clearTimeout(timer);
    };
  });

  effect(() => {
    const hash = writeAddress({ step: wantedStep.value, dial: dialPower.value });
    if (hash !== location.hash) history.replaceState(null, '', hash === '#' ? location.pathname : hash);
  });
  addEventListener('hashchange', () => {
    const { step, dial: power } = readAddress(location.hash);
    wantedStep.value = step;
    dialPower.value = power;
  });
}
