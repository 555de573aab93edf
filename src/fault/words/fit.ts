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
  'fit/beyond-model': (d) => ({
    found: `the observations pull ${list(d.inputs)} to values that the model refuses; the fit stopped there and is not used`,
    expected: 'observations that agree with values the model can take',
    remedy:
      'check the observations and the stated value; a number that is never negative may be given with a large spread (such as 1 mΩ ~ 50 %), which the fit keeps above zero',
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
    found: `the observations pull ${d.input} beyond the ${d.end} end of what it can be; it is ${d.how} at ${d.value} in SI units`,
    expected: 'a best value inside its bounds',
    remedy: 'check the bounds and the observations; measure it',
  }),
  'fit/chi-square': (d) => ({
    found: `the observations scatter more than their uncertainties allow: chi-square ${d.chiSquare} for ${d.degreesOfFreedom} degrees of freedom (probability ${d.probability})`,
    expected: 'a probability above 0.01',
    remedy:
      'look at the largest residuals; a part of the model or an uncertainty is wrong, so the fitted uncertainties are too small',
  }),
  'fit/explained': (d) => ({
    found: `one change would explain the misfit best: ${explained[String(d.kind)]} ${d.id}; it takes ${d.takes} off a chi-square of ${d.chiSquare}${d.left === '' ? '' : ` (probability of what is left ${d.left})`}`,
    expected: 'model and observations that agree within their uncertainties',
    remedy: 'look there first; other single changes may explain it nearly as well',
  }),
  'fit/bent': (d) => ({
    found: `the uncertainty of ${list(d.inputs)} isn't the same on both sides, or follows a curve: the fit's u is off by more than a tenth`,
    expected: 'a model that is straight within the fitted uncertainties',
    remedy: 'use what u is on either side, or the intervals of a sample of the posterior (--posterior)',
  }),
  'fit/no-learning': (d) => ({
    found: `${d.file} doesn't say what is to be learnt, and from which runs`,
    expected: 'a `learning` block with `from`, `learn`, `power-channel` and `limiter`',
    remedy: 'add it; docs/study-file.md shows one',
  }),
  'fit/no-power-instrument': (d) => ({
    found: `learning.power-channel names "${d.wanted}", which is no instrument of this study`,
    expected: `one of: ${list(d.known)}`,
    remedy: 'name the instrument that shows the power',
  }),
  'fit/peak-limiter': (d) => ({
    found: `learning.limiter names "${d.limiter}", which takes the peak, and a window's power is a mean`,
    expected: 'a limiter that takes the average',
    remedy: 'name a limiter at the same sense points that takes the average; one that only warns will do',
  }),
  'fit/nothing-settled': (d) => ({
    found: `no window of ${list(d.runs)} has settled in any channel that an instrument of the study names`,
    expected: 'at least one settled window',
    remedy: '`uprate show` lists the windows and why they count as settled or not; record longer at one load',
  }),
  'fit/no-such-run': (d) => ({
    found: `learning.from names "${d.run}", which is no run of this study`,
    expected: Array.isArray(d.known) && d.known.length > 0 ? `one of: ${list(d.known)}` : 'a run; there is none yet',
    remedy: d.near ? `did you mean "${d.near}"?` : '`uprate import` makes one from a log',
  }),
  'fit/no-such-input': (d) => ({
    found: `learning.learn names "${d.path}", which is no uncertain number of this board`,
    expected: 'the path of a quantity with an uncertainty, such as heat.links.die-coolant.through.0.resistance',
    remedy: 'correct the path, or give the number an uncertainty',
  }),
  'advice/no-such-number': (d) => ({
    found: `advice names "${d.of}", which is neither a number nor an output of this board`,
    expected: 'the path of a number, or an output by its id: `uprate plan --json` lists them',
    remedy: d.near ? `did you mean "${d.near}"?` : 'correct the name',
  }),
  'advice/no-answer': (d) => ({
    found: `there is no advice for step ${d.step}: it has no known margin, or the board has no solution a little beside its best values`,
    expected: 'a limit with data, and a board that is solved around its best values',
    remedy: '`uprate plan` shows the margins of the step and what is open; give a limit, or narrow the widest inputs',
  }),
  'advice/no-uncertainty': (d) => ({
    found: `advice gives a measurement the uncertainty "${d.text}"`,
    expected: 'more than zero',
    remedy: 'give the standard uncertainty that the measurement would have',
  }),
} satisfies Words;

const explained: Readonly<Record<string, string>> = {
  observation: 'a wrong reading,',
  stated: 'a wrong stated value,',
  exact: 'a number taken as exact that is not,',
};

function list(value: FaultData[string]): string {
  return Array.isArray(value) ? value.join(', ') : String(value);
}
