import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const recordWords = {
  'record/no-such-source': (d) => ({
    found: `there is no source "${d.source}"`,
    expected: `one of: ${Array.isArray(d.known) ? d.known.join(', ') : d.known}`,
    remedy: 'give --source rehearsal; logs of other programs come in with `uprate import`',
  }),
  'record/no-instruments': (d) => ({
    found: `${d.file} names no instruments`,
    expected: 'at least one under `instruments`: what is read, and what it shows of the board',
    remedy: 'add the instruments that the bench has',
  }),
  'record/no-steady-start': (d) => ({
    found: `the virtual board with seed ${d.seed} has no steady state at the first load of step ${d.step}`,
    expected: 'a load at which it comes to rest',
    remedy: 'begin with a smaller load, or try another seed',
  }),
  'record/bad-hold': (d) => ({
    found: `"${d.text}" is no time to hold a load`,
    expected: '10 s to 24 h',
    remedy: 'give --hold such as 30min; long enough for everything to settle',
  }),
  'record/bad-load': (d) => ({
    found: `"${d.text}" is no share of the full demand`,
    expected: 'more than 0 %, at most 100 %',
    remedy: "give --load such as '10 %,100 %,10 %'",
  }),
} satisfies Words;
