import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const commandWords = {
  'command/no-file': (d) => ({
    found: `there is no file or folder "${d.path}"`,
    expected: 'a file or folder that exists',
    remedy: 'check the spelling, and the folder the command is given in',
  }),
  'command/not-permitted': (d) => ({
    found: `"${d.path}" can't be used: permission is denied`,
    remedy: 'change its permissions, or give a place that may be read and written',
  }),
  'command/no-space': () => ({
    found: 'the disk is full',
    remedy: 'make room and give the command again',
  }),
  'command/port-taken': (d) => ({
    found: `port ${d.port} is taken by another program`,
    remedy: 'give another one with --port',
  }),
  'command/unexpected': (d) => ({
    found: `something unexpected happened: ${d.message}`,
    remedy: 'this is a fault of the program; UPRATE_DEBUG=1 in front of the command shows where it arose',
  }),
  'command/no-such-step': (d) => ({
    found: `the study has no step "${d.step}"`,
    expected: `one of: ${list(d.known)}`,
    remedy: d.nearest ? `did you mean "${d.nearest}"?` : 'name one of these steps',
  }),
  'command/no-such-node': (d) => ({
    found: `there is no heat node "${d.node}"`,
    expected: `one of: ${list(d.known)}`,
    remedy: d.nearest ? `did you mean "${d.nearest}"?` : undefined,
  }),
  'command/no-plate': (d) => ({
    found: `"${d.study}" has no plate`,
    expected: 'a section "plate" with its screws, pads, dies and stops',
    remedy: 'docs/cooling.md shows one to copy',
  }),
  'command/no-such-limit': (d) => ({
    found: `no step has a known limit "${d.limit}"`,
    expected:
      Array.isArray(d.known) && d.known.length > 12
        ? 'a limit by its id, as the tables of `uprate plan` name it'
        : `one of: ${list(d.known)}`,
    remedy: d.nearest ? `did you mean "${d.nearest}"?` : 'name a limit that is not open',
  }),
  'command/needs-budget': (d) => ({
    found: `${d.option} says how a budget is told, and no budget is asked for`,
    remedy: 'name the limit whose margin is meant with --budget',
  }),
  'command/global-by-input': () => ({
    found: '--global and --by are given together',
    expected: 'one of them: over whole distributions only inputs are told apart',
    remedy: 'leave out --by',
  }),
} satisfies Words;

function list(names: FaultData[string]): string {
  return Array.isArray(names) ? names.join(', ') : String(names);
}
