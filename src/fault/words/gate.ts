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
    found: `at ${d.step}, where the board stands now, ${d.title} (${d.limit}) is exceeded with a probability of ${d.probability}`,
    expected: 'every limit kept',
    remedy: d.first
      ? 'run it at a smaller load until its cooling is better; there is no step before this one'
      : 'go back to the step before',
  }),
  'gate/read-beyond': (d) => ({
    found: `at ${d.step}, where the board stands now, ${d.instrument} has read ${d.read}`,
    expected: `${d.allowed} is the limit: ${d.title} (${d.limit})`,
    remedy: 'go back, or lower the load, until it is kept; then find out why',
  }),
  'gate/no-solution': (d) => ({
    found: `step ${d.step} has no operating point`,
    expected: 'a steady state',
    remedy: 'see what the plan says about this step',
  }),
  'gate/open-limit': (d) => ({
    found: `nobody knows the limit of ${d.limit}`,
    expected: `a number at ${d.field}, or \`none\` by your word`,
    remedy: 'find its data sheet, or measure how it fares',
  }),
  'gate/too-likely': (d) => ({
    found: `${d.title} (${d.limit}) would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed}`,
    remedy: 'measure what makes it uncertain, improve the cooling, or take a smaller step',
  }),
  'gate/unwatched': (d) => ({
    found: `no instrument watches what ${d.title} (${d.limit}) holds, and it would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed} where nobody would see it`,
    remedy: 'put a sensor there and run the present step again',
  }),
  'gate/too-likely-together': (d) => ({
    found: `some limit would be exceeded with a probability of ${d.probability}`,
    expected: `at most ${d.allowed} for all limits together`,
    remedy: 'measure what makes the closest ones uncertain, improve the cooling, or take a smaller step',
  }),
  'gate/power-missed': (d) => ({
    found: `${d.instrument} in ${d.window}: ${d.predicted} was predicted for the full load, ${d.measured} was the greatest steady power, ${d.size} combined uncertainties away`,
    expected: `within ${d.far}, for so many values`,
    remedy: 'record it at full load if it was not; else look at the sense resistors, their joints and what reads them',
  }),
  'gate/baseline-short': (d) => ({
    found: `the baseline at ${d.step} was steady at ${loads(d.loads)}`,
    expected: `at ${loads(d.wanted)} or more, with power and a temperature settled in each`,
    remedy: 'record the board as delivered longer, at a small load and at the full one',
  }),
  'gate/standing-unmeasured': (d) => ({
    found: `nothing steady was recorded at ${d.step}, the step before`,
    expected: 'a run at its full load that has settled',
    remedy: `run it at ${d.step} and name the run under learning.at`,
  }),
  'gate/full-load-unsettled': (d) => ({
    found: `at ${d.step} no temperature settled at ${d.full}, the greatest steady power; at ${d.most} one did`,
    expected: 'a temperature that has settled at full load',
    remedy: `run ${d.step} longer at full load`,
  }),
  'gate/low-load': (d) => ({
    found: `the check at a small load is not ticked for ${d.step}`,
    expected: 'that the reading has moved by the predicted factor, seen at a small load',
    remedy: `do it, and tick it: \`uprate procedure STUDY --step ${d.step} --tick low-load\``,
  }),
  'gate/no-go-before': (d) => ({
    found: `step ${d.before}, on which ${d.step} stands, has no go: ${d.reason}`,
    expected: 'a go for every step below, from what was measured before it',
    remedy: `see what \`uprate gate\` says about ${d.before}`,
  }),
  'gate/no-learning': (d) => ({
    found: `the study has ${d.runs === 1 ? 'a run' : `${d.runs} runs`}, but doesn't say how recordings belong to its board`,
    expected: 'a `learning` block with `from`, `at`, `learn`, `power-channel` and `limiter`',
    remedy: 'add it; docs/study-file.md shows one',
  }),
  'gate/calibration-old': (d) => ({
    found: `${d.instrument} was calibrated on ${d.calibrated}, ${d.days} days before ${d.today}`,
    expected: `at most ${d.allowed} days`,
    remedy: 'calibrate it again, and write the day into the study',
  }),
  'gate/calibration-to-come': (d) => ({
    found: `${d.instrument} was calibrated on ${d.calibrated}, which comes after ${d.today}`,
    expected: 'a day that has been',
    remedy: 'correct the day',
  }),
  'gate/calibration-unknown': (d) => ({
    found: `nobody wrote down when ${d.instrument} was calibrated`,
    expected: `\`calibrated\` with a day, at most ${d.allowed} days ago`,
    remedy: 'calibrate it, and write the day into the study',
  }),
  'gate/undated': (d) => ({
    found: `nobody wrote down when ${list(d.instruments)} ${Array.isArray(d.instruments) && d.instruments.length === 1 ? 'was' : 'were'} calibrated`,
    remedy: 'write the day as `calibrated`; `gate: { calibration-days: 365 }` makes it a reason to hold',
  }),
  'gate/count-unsure': (d) => ({
    found: `the draws put ${d.limit} between ${d.low} and ${d.high}, and ${d.allowed} is allowed`,
    remedy: 'draw more (--samples) before you rely on which side it is',
  }),
  'gate/run-not-there': (d) => ({
    found: `the study names ${d.run}, which is no run in its folder`,
    remedy: 'record or import it, or take the name out of `learning`',
  }),
  'gate/run-unnamed': (d) => ({
    found: `run ${d.run} is not looked at: the study doesn't say at which step it was recorded`,
    remedy: 'name it under learning.at with its step, and under learning.from to learn from it',
  }),
  'gate/first-step': (d) => ({
    found: `${d.step} is the board as delivered: nothing is climbed to get there`,
    expected: Array.isArray(d.known) && d.known.length > 0 ? `one of: ${list(d.known)}` : 'a study with a second step',
    remedy: 'ask about a step above it',
  }),
  'gate/no-day': (d) => ({
    found: `"${d.text}" is no day`,
    expected: 'year, month and day, such as 2026-03-01',
    remedy: 'write it that way',
  }),
} satisfies Words;

function loads(count: FaultData[string]): string {
  return count === 1 ? 'one load' : count === 0 ? 'no load' : `${count} loads`;
}

function list(value: FaultData[string]): string {
  return Array.isArray(value) ? value.join(', ') : String(value);
}
