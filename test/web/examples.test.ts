import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Bench, type OpenedPage, setUpBench } from './open-page.ts';

let bench: Bench;

beforeAll(async () => {
  bench = await setUpBench();
});

afterAll(() => bench?.close());

/** Words of the picture that stand over others, and cells whose words don't fit. */
function misplacedWords({ page }: OpenedPage): Promise<string[]> {
  return page.evaluate(() => {
    const texts = [...document.querySelectorAll<SVGTextElement>('.ladder-chart text')];
    const boxes = texts.map((text) => ({ words: text.textContent, box: text.getBBox() }));
    const found: string[] = [];
    for (const [at, { words, box: a }] of boxes.entries())
      for (const { words: others, box: b } of boxes.slice(at + 1)) {
        const apart = a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
        if (!apart) found.push(`"${words}" over "${others}"`);
      }
    for (const cell of document.querySelectorAll('.table :is(th, td), .headline dd, .open-limits span'))
      if (cell.checkVisibility() && cell.scrollWidth > cell.clientWidth + 1 && cell.clientWidth > 1)
        found.push(`"${cell.textContent}" is cut`);
    return found;
  });
}

describe.each(['handheld', 'card'])('examples/%s on the page', (name) => {
  test.each(['light', 'dark'] as const)('opens and draws its ladder, wide and narrow, %s', async (colorScheme) => {
    const text = readFileSync(`examples/${name}/study.yaml`, 'utf8');
    writeFileSync(bench.study, text);
    const opened = await bench.open({ colorScheme });
    const { page } = opened;
    try {
      await page.getByRole('heading', { level: 1, name: /^title: (.*)$/m.exec(text)![1] }).waitFor();
      const steps = [...text.slice(text.indexOf('\nsteps:')).matchAll(/^ {4}title: (.*)$/gm)].map(([, title]) => title);
      const picture = page.getByRole('img', { name: 'Steps and their binding margins' });
      await picture.waitFor();
      const words = await picture.locator('desc').textContent();
      for (const title of steps) expect(words).toContain(title);
      for (const width of [1280, 400]) {
        await page.setViewportSize({ width, height: 900 });
        await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        await expect.poll(() => misplacedWords(opened)).toEqual([]);
      }
      expect(opened.complaints).toEqual([]);
    } finally {
      await opened.close();
    }
  });
});
