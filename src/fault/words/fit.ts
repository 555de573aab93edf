import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const fitWords = {
  'fit/no-solution': (d) => ({
    found: `the model has no solution at the stated values of the inputs (observation ${d.observation}: ${d.ending})`,
    expected: 'a solution to start from',
    remedy: 'check the stated values, or leave this observation out',
  }),
  'fit/not-converged': (d) => ({
    found: `the fit was still moving after ${d.passes} passes; its values are not used`,
    expected: 'a step that is small against the uncertainty',
    remedy: 'give more inputs an uncertainty, or leave out the observation with the largest residual',
  }),
  'fit/undetermined': (d) => ({
    found: `the observations don't determine ${list(d.inputs)}, and nothing else is stated about it`,
    expected: 'a stated uncertainty, or observations that depend on it',
    remedy: 'state a value with an uncertainty, or add an observation that depends on it',
  }),
  'fit/residual': (d) => ({
    found: `observation ${d.observation} is ${d.size} standard uncertainties from what everything else says it should be`,
    expected: 'within 3',
    remedy: 'check the sensor, its calibration and its stated uncertainty, then the part of the model it looks at',
  }),
  'fit/input-far': (d) => ({
    found: `the observations put ${d.input} ${d.size} standard uncertainties from its stated value`,
    expected: 'within 3',
    remedy: 'check where the stated value comes from; measure it, or widen its uncertainty',
  }),
  'fit/outside': (d) => ({
    found: `the observations put ${d.input} outside the bounds stated for it`,
    expected: 'a value inside the bounds',
    remedy: 'check the bounds; measure it',
  }),
  'fit/chi-square': (d) => ({
    found: `the observations scatter more than their uncertainties allow: chi-square ${d.chiSquare} for ${d.degreesOfFreedom} degrees of freedom (probability ${d.probability})`,
    expected: 'a probability above 0.001',
    remedy:
      'look at the largest residuals; a part of the model or an uncertainty is wrong, so the fitted uncertainties are too small',
  }),
} satisfies Words;

function list(value: FaultData[string]): string {
  return Array.isArray(value) ? value.join(', ') : String(value);
}
