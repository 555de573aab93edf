import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runCommand } from './command.ts';
import { runCooling } from './cooling.ts';

const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const cooler = 'examples/cooler';

/** Standard output of a command. */
async function said(...argv: string[]): Promise<{ out: string; err: string; exit: number }> {
  let [out, err] = ['', ''];
  const exit = await runCommand(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    debug: false,
  });
  return { out, err, exit };
}

describe('uprate cooling', () => {
  test('shows the drop over each layer beside that without the changes, and what each of them buys', async () => {
    const { out, exit } = await said('cooling', cooler, '--step', 'liquid-metal');
    expect(exit).toBe(0);
    expect(out).toMatch(/contact \(gallium-indium-tin\) .* K ± .* K/);
    expect(out).toContain('drop without the changes');
    expect(out).toMatch(/heat\.links\.die-plate\.through\.0 +interface material +Die +\S+ °C/);
    expect(out).toContain('Liquid metals destroy aluminium');
  });

  test('tells where a change can’t be judged alone', async () => {
    const { text } = await runCooling(cooler, { step: 'second-plate' });
    expect(text).toMatch(/heat\.nodes\.back-plate +heat way +not alone: other changes build on it/);
    expect(text).toContain('all of them together');
  });

  test('begins where it is told to', async () => {
    const { text } = await runCooling(cooler, { step: 'as-delivered', from: 'memory' });
    expect(text).toContain('from Memory to ambient');
    const { err, exit } = await said('cooling', cooler, '--from', 'memori');
    expect(exit).toBe(2);
    expect(err).toContain('did you mean "memory"?');
  });

  test('draws the stack, before and after', async () => {
    const svg = join(scratch, 'stack.svg');
    await runCooling(cooler, { step: 'liquid-metal', svg });
    const drawn = readFileSync(svg, 'utf8');
    expect(drawn).toContain('where the temperature is lost');
    expect(drawn).toContain('without this step&#39;s changes of the cooling, at the same power');
  });

  test('a step without an operating point says so, in JSON too', async () => {
    const { out, exit } = await said('cooling', 'test/broken-studies/plate-lifted-off.yaml', '--json');
    expect(exit).toBe(1);
    expect(JSON.parse(out).result.steps[0]).toMatchObject({ id: 'as-delivered', stack: null, changes: [] });
    const { text } = await runCooling('test/broken-studies/plate-lifted-off.yaml', {});
    expect(text).toContain('no operating point: `uprate plan --step as-delivered` says why');
    await expect(
      runCooling('test/broken-studies/plate-lifted-off.yaml', { svg: join(scratch, 'none.svg') }),
    ).rejects.toThrow('no operating point');
  });
});
