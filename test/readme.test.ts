import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runCommand } from '../src/cli/command.ts';

const pages = ['README.md', 'docs/cooling.md', 'docs/sense.md', 'docs/gate.md'];

/** Every `$ uprate …` of a page with the lines shown below it. */
function examples(page: string): [page: string, command: string, shown: string[]][] {
  const found: [string, string, string[]][] = [];
  for (const [, block] of readFileSync(page, 'utf8').matchAll(/```\n(\$ uprate[\s\S]*?)```/g))
    for (const part of block.split(/^\$ uprate /m).slice(1)) {
      const [command, ...shown] = part.split('\n');
      found.push([page, command, shown.filter((line) => line.trim() !== '' && line.trim() !== '…')]);
    }
  return found;
}

const words = (command: string) =>
  [...command.matchAll(/'([^']*)'|[^\s']+(?:'([^']*)')?/g)].map(([whole]) => whole.replaceAll("'", ''));

test.each(pages.flatMap(examples))('%s: `uprate %s` says what stands there', async (_, command, shown) => {
  let out = '';
  const exit = await runCommand(words(command), {
    out: (text) => {
      out += text;
    },
    err: () => {},
    debug: false,
  });
  // A gate that holds leaves with 1.
  expect(exit).toBe(out.startsWith('HOLD') ? 1 : 0);
  const lines = out.split('\n');
  let at = 0;
  for (const line of shown) {
    at = lines.indexOf(line, at);
    expect(at, `no line "${line}"`).toBeGreaterThanOrEqual(0);
  }
  expect(shown.length).toBeGreaterThan(2);
});
