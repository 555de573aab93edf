import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const gateWords = {
  'gate/nothing-measured': (d) => ({
    found: `nothing has been measured before step ${d.step}`,
    expected: 'a baseline that the board has been learnt from',
    remedy: 'run the board as it is at several loads until it is steady, and learn from that',
  }),
  'gate/no-fit': (d) => ({
    found: `the measurements so far have taught nothing (${d.ending})`,
    expected: 'a fit that converges',
    remedy: 'look at what the fit says, and at the instruments',
  }),
  'gate/prediction-missed': (d) => ({
    found: `${d.instrument} in ${d.window}: predicted ${d.predicted}, measured ${d.measured}, ${d.size} combined uncertainties away`,
    expected: `within ${d.far}, for so many values`,
    remedy: 'find out why before going on: the instrument, the change that was made, or the model',
  }),
  'gate/exceeded-now': (d) => ({
    found: `at ${d.step}, where the board stands now, ${d.limit} is exceeded with a probability of ${d.probability}`,
    expected: 'every limit kept',
    remedy: 'go back to the step before',
  }),
  'gate/no-solution': (d) => ({
    found: `step ${d.step} has no operating point`,
    expected: 'a steady state',
    remedy: 'see what the plan says about this step',
  }),
  'gate/open-limit': (d) => ({
    found: `nobody knows the limit of ${d.limit}`,
    expected: 'a number, or `none` by your word',
    remedy: 'find its data sheet, or measure how it fares',
  }),
  'gate/too-likely': (d) => ({
    found: `${d.limit} would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed}`,
    remedy: 'measure what makes it uncertain, improve the cooling, or take a smaller step',
  }),
  'gate/unwatched': (d) => ({
    found: `no instrument watches what ${d.limit} holds, and it would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed} where nobody would see it`,
    remedy: 'put a sensor there and run the present step again',
  }),
  'gate/too-likely-together': (d) => ({
    found: `some limit would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed} for all limits together`,
    remedy: 'measure what makes the closest ones uncertain, improve the cooling, or take a smaller step',
  }),
} satisfies Words;
