import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) ? names.join(', ') : String(names));

export const boardWords = {
  'board/no-such-limiter': (d) => ({
    found: `"${d.limiter}" is no limiter that reads power on this board`,
    expected: `one of: ${list(d.known)}`,
    remedy: 'name a limiter of the study that reads sense points',
  }),
  'board/no-such-output': (d) => ({
    found: `"${d.limit}" speaks of "${d.of}", which this board doesn't have`,
    expected: `the id of an output, such as ${d.near}`,
    remedy: '`uprate plan --json` lists the outputs of every step',
  }),
  'board/runaway': (d) => ({
    found: `step "${d.step}" has no steady state: heat makes more heat than leaves (thermal runaway)`,
    expected: 'losses that settle',
    remedy: 'improve the cooling, lower the power, or check leakage and temperature coefficients',
  }),
  'board/infeasible': (d) => ({
    found: `step "${d.step}" has no operating point: a supply can't carry these loads, a regulator has no headroom over its output, or a limiter refuses even an idle processor`,
    expected: 'loads that the supply can feed, inputs above outputs, and limits above the idle power',
    remedy: 'check the constant loads, the supply, the regulators’ outputs and the allowed values of the limiters',
  }),
  'board/unsettled': (d) => ({
    found: `step "${d.step}" could not be solved: the largest remaining error is ${d.residual} after ${d.passes} passes`,
    expected: 'a solution',
    remedy: 'two limiters or extreme numbers may work against each other; simplify the step and report the study',
  }),
  'board/plate-unsupported': (d) => ({
    found: `the plate finds no rest at step "${d.step}": it tips over, falls through, or is free to turn`,
    expected: 'dies, pads and stops that carry the plate on every side of what pulls it',
    remedy: 'check the places of screws and carriers, their signs, and the heights',
  }),
  'board/plate-unsettled': (d) => ({
    found: `the plate's balance at step "${d.step}" did not settle`,
    expected: 'a place of rest',
    remedy: 'extreme stiffnesses may work against each other; simplify the plate and report the study',
  }),
  'board/plate-impossible': (d) => ({
    found: `the numbers of the plate at step "${d.step}" can't be a plate's`,
    expected: 'forces of zero or more, sides and thicknesses of more than zero, and pad curves that rise',
    remedy: 'check the plate, and the uncertainties that may reach values that it can’t have',
  }),
  'board/no-contact': (d) => ({
    found: `the plate does not touch ${list(d.dies)} at step "${d.step}": no heat passes there`,
    expected: 'a plate that rests on the die',
    remedy: '`uprate plate` shows the gap and what carries the plate instead: pads that are too thick, or a stop',
  }),
  'board/beyond-curve': (d) => ({
    found: `${d.part}: a phase carries ${d.current}, and its loss curve ends at ${d.last}; from there it is carried on straight`,
    expected: 'a loss curve that reaches beyond every current',
    remedy: 'read on from the data sheet, or take its losses and temperatures as too low',
  }),
  'board/below-curve': (d) => ({
    found: `${d.part}: a phase carries ${d.current}, and its loss curve begins at ${d.first}; below, the loss of that point is taken`,
    expected: 'a loss curve that begins below every current',
    remedy: 'add a point at 0 A, or take its losses and temperatures as too high',
  }),
  'board/impossible-draws': (d) => ({
    found: `${d.input}: its uncertainty reaches ${d.end}, which can't be; such draws count as exceeding every limit`,
    expected: 'an uncertainty that stays among possible values',
    remedy: 'state a range that ends where it must (0.95..1), or a smaller uncertainty',
  }),
} satisfies Words;
