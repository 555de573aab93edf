import type { Failed } from '../sense/failures.ts';
import type { OptionStep } from '../sense/option.ts';
import type { SensePlan } from '../sense/plan-sense.ts';
import { figure } from '../steps/figure.ts';

/** A sense plan as data for programs. */
export function senseJson(plan: SensePlan, { stock, meter }: { stock: string; meter: string }): unknown {
  const { limiter, title, step, present, allowed, options, looked } = plan;
  return {
    limiter,
    title,
    step,
    allowed: watts(allowed),
    present: watts(present),
    stock,
    meter,
    looked,
    options: options.map(({ points, steps }) => ({ points, steps: steps.map(ofStep) })),
  };
}

function ofStep(step: OptionStep) {
  const {
    target,
    real,
    u,
    error,
    work,
    changes,
    dissipations,
    failures,
    check,
    corrections,
    correction,
    others,
    open,
    whole,
  } = step;
  return {
    target: watts(target),
    real: watts(real, u),
    interval: { low: watts(real - 1.96 * u), high: watts(real + 1.96 * u) },
    error,
    work,
    changes,
    dissipations: dissipations.map(({ sense, part, power, rating }) => ({
      sense,
      part,
      power: figure(power, null, 'power', 'mW'),
      rating: rating === null ? null : watts(rating),
    })),
    failures: failures.map(ofFailure),
    check: check && {
      real: watts(check.real),
      reads: watts(check.reads),
      band: watts(check.band),
      before: watts(check.before),
      misses: check.misses.map(({ sense, part, mode }) => ({ sense, part, mode })),
    },
    corrections: corrections.map(({ sense, factor, u: uFactor }) => ({
      sense,
      factor: figure(factor, uFactor, 'ratio', ''),
    })),
    correction: figure(correction.factor, correction.u, 'ratio', ''),
    others: others.map((other) => ({
      ...other,
      allowed: watts(other.allowed),
      before: other.before === null ? null : watts(other.before),
      after: other.after === null ? null : watts(other.after),
      actedAt: other.actedAt === null ? null : watts(other.actedAt),
      actsAt: other.actsAt === null ? null : watts(other.actsAt),
    })),
    open,
    whole: whole && { ...whole, real: watts(whole.real) },
  };
}

function ofFailure({ sense, part, mode, isOriginal, direction, real, holder, passed }: Failed) {
  return { sense, part, mode, isOriginal, direction, real: real === null ? null : watts(real), holder, passed };
}

function watts(value: number, u: number | null = null) {
  return figure(value, u, 'power', 'W');
}
