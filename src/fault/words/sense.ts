import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) ? names.join(', ') : String(names));

export const senseWords = {
  'sense/not-a-stock': () => ({
    found: 'this is no stock list',
    expected: 'a map that begins with `stock: 1`, with a list of `resistors`',
    remedy: 'see docs/sense.md for a whole one',
  }),
  'sense/no-values': (d) => ({
    found: `${d.field} has no values to choose from`,
    expected: 'either `values`, or `series` with `from` and a higher `to`',
    remedy: 'list its values, or name the series and both ends',
  }),
  'sense/plain-short': (d) => ({
    found: `"${d.value}" across a sense resistor is a plain short: the reading falls to zero and nothing limits any more`,
    expected: 'a resistor of at least 0.1 mΩ; below that, its joints decide what it is',
    remedy: 'take a value that leaves a reading; no option here ever takes the whole reading away',
  }),
  'sense/nearly-short': (d) => ({
    found: `${d.point} would show only ${d.left} of what it should: nearly a short, beyond what its amplifier can tell from its own offset`,
    expected: `at least ${d.least} of the reading left`,
    remedy: 'take a larger value across it',
  }),
  'sense/no-such-limiter': (d) => ({
    found: `"${d.limiter}" is no limiter that reads power on this board`,
    expected: `one of: ${list(d.known)}`,
    remedy: d.nearest ? `did you mean "${d.nearest}"?` : 'name a limiter of the study that reads sense points',
  }),
  'sense/bad-target': (d) => ({
    found: `"${d.target}" is no target: ${d.reason}`,
    expected: 'a real power at the limit, such as 65 W',
    remedy: 'give a number above zero with its unit',
  }),
  'sense/beyond-supply': (d) => ({
    found: `target ${d.target} is beyond the supply: ${d.why}`,
    expected: 'a target that the supply can feed within its ratings',
    remedy: 'choose a lower target, or a supply that gives more',
  }),
  'sense/runaway': (d) => ({
    found: `at ${d.target} the board has no steady state: heat makes more heat than leaves (thermal runaway)`,
    expected: 'a target at which temperatures settle',
    remedy: 'choose a lower target, or improve the cooling first',
  }),
  'sense/below-idle': (d) => ({
    found: `target ${d.target} is below what flows past ${d.limiter} anyway, whatever the processor does`,
    expected: 'a target above the idle power',
    remedy: 'choose a higher target',
  }),
  'sense/not-reached': (d) => ({
    found: `target ${d.target} can't be reached: nothing that follows the processor flows past ${d.limiter}`,
    expected: 'a limiter whose sense points feed the processor',
    remedy: 'name another limiter',
  }),
  'sense/no-present': (d) => ({
    found: `step "${d.step}" has no operating point where ${d.limiter} alone holds (${d.ending})`,
    expected: 'a board that settles',
    remedy: 'see what `uprate plan` says about this step',
  }),
  'sense/no-usable-stock': (d) => ({
    found: `no value of the stock can be used at any sense point of ${d.limiter}: ${d.why}`,
    expected: 'values that leave a reading, dissipate less than their rating, and exist for the kinds asked for',
    remedy: 'add values or ratings to the stock list, or allow other kinds',
  }),
  'sense/no-option': (d) => ({
    found: `nothing in the stock brings ${d.limiter} within ${d.within} of ${d.target}`,
    expected: 'a combination that comes close',
    remedy: 'add values to the stock list, allow other kinds, or choose another target',
  }),
  'sense/bad-kind': (d) => ({
    found: `"${d.kind}" is no kind of option`,
    expected: 'any of: replace, stack, divider, separated by commas',
    remedy: 'leave --kinds out for all of them',
  }),
  'sense/no-divider': (d) => ({
    found: `dividers were asked for, and no sense point of ${d.limiter} has its filter in the study`,
    expected: 'a `divider` with the filter’s series resistance and the amplifier’s input network',
    remedy: 'read both from the board and the amplifier’s data sheet, and write them down; see docs/sense.md',
  }),
  'sense/bad-hand': (d) => ({
    found: `"${d.hand}" can't be read: ${d.reason}`,
    expected:
      "'core-sense + 22 mohm' stacked, 'core-sense = 4 mohm' in its place, 'core-sense / 220 ohm' across the sense lines",
    remedy: 'give it in quotes, once for each part',
  }),
} satisfies Words;
