import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const compareWords = {
  'compare/samples-missing': () => ({
    found: 'there is nothing to compare with',
    expected: 'two samples: two files, or --before and --after with numbers, or --study with two runs',
    remedy: '`uprate compare --help` shows each',
  }),
  'compare/two-ways': (d) => ({
    found: `${d.one} and ${d.other} are given together`,
    expected: 'one way to name what is compared',
    remedy: 'leave one out',
  }),
  'compare/not-a-number': (d) => ({
    found: `"${d.text}" is no number`,
    expected: 'a number with a decimal point, such as 101.2 or 3e-4; one a line, lines that begin with # are left out',
    remedy: d.comma ? 'write a decimal point for the comma' : 'correct it, or take the line out',
  }),
  'compare/one-value': (d) => ({
    found: `${d.name} holds ${d.count === 0 ? 'no number' : 'one number only'}`,
    expected: 'at least two: how much readings scatter is seen from several only',
    remedy: 'measure it again, and again',
  }),
  'compare/too-many': (d) => ({
    found: `${d.name} holds more than ${d.most} numbers`,
    expected: `at most ${d.most}`,
    remedy: 'compare means over equal stretches of it, or import it as a run and compare its windows',
  }),
  'compare/not-pairs': (d) => ({
    found: `${d.before} holds ${d.one} numbers and ${d.after} ${d.other}`,
    expected: 'as many in both, because --paired takes them line by line',
    remedy: 'leave --paired out if no reading belongs to another one',
  }),
  'compare/no-scatter': (d) => ({
    found: `neither ${d.before} nor ${d.after} scatters${d.paired ? ' beyond the same difference' : ''}: ${d.difference} apart`,
    expected: 'readings that differ; what repeats to the last digit says nothing about its uncertainty',
    remedy: 'read with more digits, or measure again from the start: switched off, cooled down, started anew',
  }),
  'compare/two-runs': (d) => ({
    found: `${d.count} ${d.count === 1 ? 'run is' : 'runs are'} named`,
    expected: 'two, before and after, as `uprate runs` names them',
    remedy: 'name two runs of the study behind --study',
  }),
  'compare/no-such-channel': (d) => ({
    found: `run "${d.run}" has no channel "${d.channel}" that its windows have a value of`,
    expected: `one of: ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : 'name one of these with --channel',
  }),
  'compare/no-common-window': (d) => ({
    found: `runs "${d.one}" and "${d.other}" share no window`,
    expected: `a window of the same name in both; the first has ${list(d.first)}, the second ${list(d.second)}`,
    remedy: '`uprate show` shows the windows of a run; record both with the same loads in the same order',
  }),
  'compare/no-uncertainty': (d) => ({
    found: `no window that both runs share has a value of "${d.channel}" with a known uncertainty`,
    expected: 'readings that move, or whose step is known',
    remedy: 'record longer at each load',
  }),
} satisfies Words;

function list(value: FaultData[string]): string {
  return Array.isArray(value) ? (value.length > 0 ? value.join(', ') : 'none') : String(value);
}
