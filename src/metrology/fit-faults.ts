import type { Fault } from '../fault/fault.ts';
import type { Fit } from './fit.ts';

/** What a person has to know about a fit before using it. */
export function complaintsOf(fit: Omit<Fit, 'faults'>): readonly Fault[] {
  const faults: Fault[] = [];
  for (const { observation, size } of fit.residuals) {
    if (size !== null && Math.abs(size) > 3) {
      faults.push({ code: 'fit/residual', severity: 'warning', data: { observation, size: round(size) } });
    }
  }
  for (const { id, pull, held, outside, value } of fit.inputs) {
    if (pull !== null && Math.abs(pull) > 3) {
      faults.push({ code: 'fit/input-far', severity: 'warning', data: { input: id, size: round(pull) } });
    }
    const end = held ?? outside;
    if (end !== null) {
      const data = {
        input: id,
        end: end === 'low' ? 'lower' : 'upper',
        value: Number(value.toPrecision(6)),
        how: held === null ? 'fitted' : 'held there,',
      };
      faults.push({ code: 'fit/outside', severity: 'warning', data });
    }
  }
  const { chance, chiSquare, degreesOfFreedom } = fit;
  if (chance !== null && chance < 0.01) {
    const data = { chiSquare: round(chiSquare), degreesOfFreedom, probability: Number(chance.toPrecision(1)) };
    faults.push({ code: 'fit/chi-square', severity: 'warning', data });
  }
  const first = fit.misfit?.explanations[0];
  if (first) {
    const { kind, id, takes, chance: left } = first;
    const data = { kind, id, takes: round(takes), chiSquare: round(chiSquare), left: left ?? '' };
    if (left !== null) data.left = Number(left.toPrecision(1));
    faults.push({ code: 'fit/explained', severity: 'warning', data });
  }
  return faults;
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
