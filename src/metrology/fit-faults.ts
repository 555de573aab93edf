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
  for (const { id, pull, outside } of fit.inputs) {
    if (pull !== null && Math.abs(pull) > 3) {
      faults.push({ code: 'fit/input-far', severity: 'warning', data: { input: id, size: round(pull) } });
    }
    if (outside) faults.push({ code: 'fit/outside', severity: 'warning', data: { input: id } });
  }
  const { chance, chiSquare, degreesOfFreedom } = fit;
  if (chance !== null && chance < 0.001) {
    const data = { chiSquare: round(chiSquare), degreesOfFreedom, probability: Number(chance.toPrecision(1)) };
    faults.push({ code: 'fit/chi-square', severity: 'warning', data });
  }
  return faults;
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
