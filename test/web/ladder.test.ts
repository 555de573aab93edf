import { readFileSync, writeFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { budgetGroupsOfMargin, budgetOfMargin } from '../../src/steps/budget-of-margin.ts';
import { planStep } from '../../src/steps/plan.ts';
import type { StepPlan } from '../../src/steps/step-plan.ts';
import { readStudy } from '../../src/study/read.ts';
import { type Bench, type OpenedPage, setUpBench } from './open-page.ts';

/** A browser on a busy machine. */
const soon = { timeout: 20_000 };

let bench: Bench;
let original: string;
let opened: OpenedPage;
let page: Page;

beforeAll(async () => {
  bench = await setUpBench('mini-pc');
  original = readFileSync(bench.study, 'utf8');
});

afterAll(() => bench?.close());

/** One page for the tests of a group, of a study with `added` at its end. */
function withPage(added = ''): void {
  beforeAll(async () => {
    writeFileSync(bench.study, original + added);
    opened = await bench.open();
    page = opened.page;
  });
  // Whatever a test did: no error on the console, nothing the content policy refused, no request to elsewhere.
  afterEach(() => expect(opened.complaints).toEqual([]));
  afterAll(() => opened.close());
}

/** A step whose leakage grows so fast with temperature that nothing holds the heat. */
const HOT = `
  - { id: hot, title: Hot, changes: [{ at: parts.core.leakage.e-fold, becomes: 6 K ± 10 % }] }
`;

function readExample() {
  const reading = readStudy(original, 'study.yaml');
  if (!reading.ok) throw new Error('the example has faults');
  return reading.study;
}

/** The example's steps as the page samples them. */
const samplePlans = () =>
  (sampledPlans ??= readExample().steps.map(({ id }) => planStep(readExample(), id, { samples: 20_000, seed: 1 })));
let sampledPlans: StepPlan[] | undefined;

const rows = (name: string) => page.getByRole('table', { name }).locator('tbody tr');
const figureUnder = (name: string) =>
  page.locator('.headline > div', { has: page.getByText(name, { exact: true }) }).locator('dd.large');
/** A shown text as the study's own figures write it. */
const plain = (text: string) => text.replaceAll('−', '-');

/** The number at the start of a figure's text. */
async function numberUnder(name: string): Promise<number> {
  return Number.parseFloat(plain((await figureUnder(name).textContent())!));
}

async function sampled(): Promise<void> {
  await page.locator('.verdict .method', { hasText: 'samples' }).waitFor();
  await page.locator('progress').waitFor({ state: 'detached' });
}

/** The margin of a limit as the page's table says it, in its own unit. */
async function marginOf(title: string): Promise<number> {
  const row = rows('Margins').filter({ has: page.getByRole('rowheader', { name: title }) });
  return Number.parseFloat(plain((await row.locator('td strong').textContent())!));
}

describe('the ladder', () => {
  withPage();

  test('has an address without the token as soon as the page is open', () => {
    expect(page.url()).not.toContain('token');
  });

  test('says at once, on the first screen, what binds, by how much, how sure that is, and what is unknown', async () => {
    await sampled();
    const [plan] = samplePlans();
    const binding = plan.margins[0];
    const verdict = plain((await page.locator('.headline').textContent())!);
    const [margin, uncertainty] = binding.margin.text.split(' ± ');
    for (const part of [binding.title, margin, `± ${uncertainty}`, binding.exceed.text, `${plan.open.length} unknown`])
      expect(verdict).toContain(part);
    const box = (await page.locator('.headline').boundingBox())!;
    expect(box.y + box.height).toBeLessThan(600);
  });

  test('shows every step with its real power, what binds, its margin with the interval, and what is unknown', async () => {
    await sampled();
    for (const [at, plan] of samplePlans().entries()) {
      const binding = plan.margins.find(({ id }) => id === plan.binding)!;
      const shown = await rows('Steps in figures').nth(at).locator('th, td').allTextContents();
      expect(shown.slice(0, -1).map(plain)).toEqual([
        plan.title,
        plan.limiters.find(({ holds }) => holds)!.real.text,
        plan.limiters.find(({ holds }) => holds)!.reads.text,
        plan.operating!.holderTitle,
        binding.title,
        binding.margin.text,
        `${binding.interval.low.text} … ${binding.interval.high.text}`,
        binding.exceed.text,
        String(plan.open.length),
      ]);
    }
  });

  test('draws the same steps as a picture with a name and a description', async () => {
    const picture = page.getByRole('img', { name: 'Steps and their binding margins' });
    await picture.waitFor();
    const words = await picture.locator('desc').textContent();
    for (const step of readExample().steps) expect(words).toContain(step.title);
  });

  test.each([1280, 900, 640, 400])('draws no word over another at a width of %i px', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.locator(`.ladder-chart`).waitFor();
    const overlaps = await page.locator('.ladder-chart').evaluate((chart) => {
      const boxes = [...chart.querySelectorAll('text')].map((text) => ({
        words: text.textContent,
        box: text.getBBox(),
      }));
      const over: string[] = [];
      for (const [at, { words, box: a }] of boxes.entries())
        for (const { words: others, box: b } of boxes.slice(at + 1)) {
          const apart = a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
          if (!apart) over.push(`"${words}" over "${others}"`);
        }
      return over;
    });
    expect(overlaps).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });

  test.each([1280, 1000, 700, 400])(
    'keeps every word of its tables in its place at a width of %i px',
    async (width) => {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(() =>
        [...document.querySelectorAll('.table :is(th, td), .headline dd, .open-limits span')]
          .filter((cell) => cell.checkVisibility() && cell.scrollWidth > cell.clientWidth + 1 && cell.clientWidth > 1)
          .map((cell) => cell.textContent),
      );
      expect(over).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    },
  );

  test('has tables that stay tables for a screen reader where their rows are stacked', async () => {
    await page.setViewportSize({ width: 400, height: 900 });
    const session = await page.context().newCDPSession(page);
    const { nodes } = await session.send('Accessibility.getFullAXTree');
    await session.detach();
    await page.setViewportSize({ width: 1280, height: 900 });
    const count = (role: string) => nodes.filter((node) => node.role?.value === role && !node.ignored).length;
    expect(count('table')).toBe(await page.locator('table').count());
    expect(count('columnheader')).toBe(await page.locator('thead th').count());
    expect(count('rowheader')).toBe(await page.locator('tr:not([hidden]) > th[scope=row]').count());
  });

  test('is printed whole: every margin and every caution, without what can only be pressed', async () => {
    await sampled();
    const { margins } = planStep(readExample(), readExample().steps[0].id, { samples: 0, seed: 1 });
    await page.setViewportSize({ width: 1030, height: 700 });
    expect(await rows('Margins').filter({ visible: true }).count()).toBeLessThan(margins.length);
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
    expect(await rows('Margins').filter({ visible: true }).count()).toBe(margins.length);
    expect(await page.locator('.cautions li').filter({ visible: true }).count()).toBe(8);
    expect(await page.getByRole('slider').count()).toBe(0);
    expect(await page.getByRole('button', { name: /Copy|Show|Back/ }).count()).toBe(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1030);
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  test('why a margin is uncertain is worked out when asked for, and follows the chosen margin', async () => {
    await sampled();
    await page.getByText('Why a margin is uncertain').click();
    const step = readExample().steps[0]!;
    const plan = planStep(readExample(), step.id, { samples: 0, seed: 1 });
    const other = plan.margins.at(-1)!;
    for (const limit of [null, other]) {
      if (limit) await page.getByRole('combobox', { name: 'Margin of' }).selectOption({ label: limit.title });
      const wanted = limit ?? plan.margins.find(({ title }) => title === 'Drive: temperature')!;
      const rows = budgetOfMargin(readExample(), step.id, wanted.id)!;
      await page.locator('.budget tbody th').first().getByText(rows[0]!.input, { exact: true }).waitFor();
    }
    const choice = page.getByRole('combobox', { name: 'by', exact: true });
    for (const by of ['part', 'source'] as const) {
      await choice.focus();
      await page.keyboard.press('ArrowDown');
      const { groups } = budgetGroupsOfMargin(readExample(), step.id, other.id, by)!;
      await page.locator('.budget tbody th').first().getByText(groups[0]!.group, { exact: true }).waitFor();
      expect(await page.locator('.budget thead th').count()).toBe(4);
    }
  });

  test('copies as a table that a spreadsheet takes', async () => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await sampled();
    await page.getByRole('button', { name: 'Copy as text' }).first().click();
    await page.getByText('copied').waitFor();
    const lines = (await page.evaluate(() => navigator.clipboard.readText())).split('\n');
    expect(lines).toHaveLength(readExample().steps.length + 1);
    expect(new Set(lines.map((line) => line.split('\t').length)).size).toBe(1);
  });

  test('changes the step by pointer in the picture and by keyboard in the table, and keeps it in the address', async () => {
    const study = readExample();
    await page.locator('.chart-row').nth(1).click();
    const chosen = (at: number) =>
      page.getByRole('heading', { level: 2, name: study.steps[at]!.title, exact: true }).waitFor();
    await chosen(1);
    await page.getByRole('button', { name: study.steps[2]!.title, exact: true }).focus();
    await page.keyboard.press('Enter');
    await chosen(2);
    expect(page.url()).toContain(`step=${study.steps[2]!.id}`);
    await page.reload();
    await chosen(2);
  });
});

describe('the dial', () => {
  withPage();

  const back = () => page.getByRole('button', { name: /^Back/ });
  afterEach(async () => {
    if (await back().isEnabled()) await back().click();
  });

  const slider = () => page.getByRole('slider', { name: 'Real power' });

  test('sets the real power, and the margins follow at once and then by samples', async () => {
    const before = { power: await numberUnder('Real power'), die: await marginOf('Die: temperature') };
    await slider().fill('65');
    await page.getByText('what if', { exact: true }).waitFor();
    await expect.poll(() => numberUnder('Real power'), soon).toBeCloseTo(65, 1);
    const after = await marginOf('Die: temperature');
    expect(before.power).toBeLessThan(60);
    expect(after).toBeLessThan(before.die);
    await page.locator('.verdict .method', { hasText: '20 000 samples' }).waitFor();
    expect(await numberUnder('Real power')).toBeCloseTo(65, 1);
    expect(page.url()).toContain('dial=65');
  });

  test('turns by keyboard: an arrow is 1 W, a page 5 W, and the number can be typed', async () => {
    const number = page.getByRole('spinbutton', { name: 'Real power in watts' });
    await number.fill('60');
    await number.press('Enter');
    await expect.poll(() => numberUnder('Real power'), soon).toBeCloseTo(60, 1);
    await slider().press('ArrowRight');
    await expect.poll(() => number.inputValue(), soon).toBe('61');
    await slider().press('PageUp');
    await expect.poll(() => number.inputValue(), soon).toBe('66');
    await slider().press('PageDown');
    await slider().press('ArrowLeft');
    await expect.poll(() => number.inputValue(), soon).toBe('60');
    await page.getByRole('button', { name: '1 watt more' }).press('Enter');
    await expect.poll(() => number.inputValue(), soon).toBe('61');
    await expect.poll(() => numberUnder('Real power'), soon).toBeCloseTo(61, 1);
  });

  test('goes back to what the firmware lets through', async () => {
    await sampled();
    const own = await figureUnder('Real power').textContent();
    await slider().fill('70');
    await expect.poll(() => figureUnder('Real power').textContent(), soon).not.toBe(own);
    await back().click();
    await expect.poll(() => figureUnder('Real power').textContent(), soon).toBe(own);
    expect(await page.getByText('what if', { exact: true }).count()).toBe(0);
    expect(page.url()).not.toContain('dial=');
  });

  test('is kept in the address, and says by voice where it has come to rest', async () => {
    await page.goto(`${new URL(bench.server.url).origin}/#dial=62`);
    await page.reload();
    await expect.poll(() => numberUnder('Real power'), soon).toBeCloseTo(62, 1);
    await page.locator('[aria-live=polite]', { hasText: /: 62(\.0+)? W real/ }).waitFor({ state: 'attached' });
  });
});

describe('a step whose heat runs away', () => {
  withPage(HOT);

  test('says so and has no figure', async () => {
    await page.getByRole('button', { name: 'Hot', exact: true }).click();
    await page.locator('.unsolved .large').getByText('no steady state: heat runs away').waitFor();
    expect(await page.locator('.headline').count()).toBe(0);
    const cells = await rows('Steps in figures').last().locator('td').allTextContents();
    expect(cells.join('')).not.toMatch(/\d/);
    expect(cells.join('')).toContain('heat runs away');
  });

  test('can be asked for less power, at which it holds', async () => {
    await page.getByRole('slider', { name: 'Real power' }).fill('30');
    await expect.poll(() => page.locator('.headline').count(), soon).toBe(1);
    expect(await numberUnder('Real power')).toBeCloseTo(30, 1);
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.locator('.unsolved').waitFor();
  });
});

describe('the file', () => {
  withPage();
  afterEach(() => writeFileSync(bench.study, original));

  test('changed underneath appears on the page', async () => {
    await page.getByRole('heading', { level: 1, name: 'Mini-PC, invented' }).waitFor();
    writeFileSync(bench.study, original.replace('title: Mini-PC, invented', 'title: Another title'));
    await page.getByRole('heading', { level: 1, name: 'Another title' }).waitFor();
  });

  test('with faults shows each with its place and what to do, and the page follows when it is corrected', async () => {
    writeFileSync(bench.study, original.replace('voltage: 19.5 V ± 2 %', 'voltage: 19.5 W ± 2 %'));
    await page.getByRole('heading', { name: 'One thing in the study can’t be read' }).waitFor();
    const line = original.split('\n').findIndex((text) => text.includes('voltage: 19.5 V ± 2 %')) + 1;
    const fault = page.locator('.faults li');
    expect(await fault.locator('figcaption').textContent()).toContain(`study.yaml, line ${line}, column 19`);
    expect(await fault.locator('mark').textContent()).toBe('W');
    expect(await fault.textContent()).toMatch(/expected[\s\S]*do/);
    writeFileSync(bench.study, original);
    await page.getByRole('heading', { level: 1, name: 'Mini-PC, invented' }).waitFor();
  });

  test('is text wherever it appears, never markup', async () => {
    const title = '<img src=x onerror=alert(1)> & <b>bold</b>';
    writeFileSync(
      bench.study,
      original
        .replace('title: Mini-PC, invented', `title: ${title}`)
        .replace('title: As delivered, 54 W', `title: ${title}`),
    );
    await page.getByRole('heading', { level: 1, name: title }).waitFor();
    expect(await page.locator('img, b').count()).toBe(0);
    expect(await page.locator('.ladder-chart .chart-title').first().textContent()).toContain('<img');
  });

  test('that is gone is said so, and comes back', async () => {
    await page.getByRole('heading', { level: 1, name: 'Mini-PC, invented' }).waitFor();
    const { renameSync } = await import('node:fs');
    renameSync(bench.study, `${bench.study}.away`);
    await page.getByText('is no longer there').waitFor();
    renameSync(`${bench.study}.away`, bench.study);
    await page.getByRole('heading', { level: 1, name: 'Mini-PC, invented' }).waitFor();
    // The request for the missing file is a 404 that the browser reports on its console.
    expect(opened.complaints).toHaveLength(1);
    (opened.complaints as string[]).length = 0;
  });
});

describe('nothing stands in anyone’s way', () => {
  withPage(HOT);

  const states: Record<string, () => Promise<void>> = {
    'everything open and the dial turned': async () => {
      await page.getByRole('slider', { name: 'Real power' }).fill('90');
      for (const name of ['All cautions', /^Show all/]) await page.getByRole('button', { name }).click();
      await page.getByText('Why a margin is uncertain').click();
      await page.getByRole('combobox', { name: 'by', exact: true }).selectOption('part');
      await page.getByRole('table', { name: 'Uncertainty budget' }).waitFor();
    },
    'a step without operating point': async () => {
      await page.getByRole('button', { name: 'Hot', exact: true }).click();
      await page.getByRole('button', { name: 'Back', exact: true }).click();
      await page.locator('.unsolved').waitFor();
    },
    faults: async () => {
      writeFileSync(bench.study, original.replace('uprate: 1', 'uprate: one'));
      await page.locator('.faults').waitFor();
    },
  };

  test.each(Object.entries(states))('%s', async (_, reach) => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await reach();
    // Nothing that computes competes with the rules.
    await page.locator('progress').waitFor({ state: 'detached' });
    for (const [width, colorScheme] of [
      [1280, 'light'],
      [400, 'dark'],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 900 });
      // Rules of WCAG 2.2 level A and AA as axe-core checks them.
      const found = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      const where = `${colorScheme}, ${width} px`;
      expect(found.violations.map(({ id, nodes }) => `${where}: ${id}: ${nodes[0]?.html}`)).toEqual([]);
    }
  });
});
