import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { type Bench, type OpenedPage, setUpBench } from './open-page.ts';

let bench: Bench;
let opened: OpenedPage;
let page: Page;

beforeAll(async () => {
  bench = await setUpBench('mini-pc');
  opened = await bench.open();
  page = opened.page;
  await page.getByRole('button', { name: 'Calculators' }).click();
});

afterEach(() => expect(opened.complaints).toEqual([]));

afterAll(async () => {
  await opened?.close();
  await bench?.close();
});

const drawer = () => page.getByRole('dialog', { name: 'Calculators' });
const field = (name: string) => drawer().getByRole('textbox', { name, exact: true });
const value = () => drawer().locator('.output-value').first();

describe('the calculators', () => {
  test('are found by a word and open with their published example worked out', async () => {
    await drawer().getByRole('searchbox').fill('parallel');
    await drawer()
      .getByRole('button', { name: /two resistors in parallel/ })
      .click();
    // OpenStax, College Physics, example 21.3: 6.00 Ω and 13.0 Ω side by side, here by hand 6·13/19.
    expect(await value().textContent()).toContain('4.105 Ω');
  });

  test('follow every key, uncertainty included', async () => {
    await field('a, one resistor').fill('5 mΩ ± 1 %');
    await field('b, other resistor').fill('22 mΩ ± 1 %');
    // By hand: 5·22/27 = 4.0741 mΩ; u² = (0.0289·0.664)² + (0.127·0.0343)² = (0.0197 mΩ)².
    expect(await value().textContent()).toContain('4.074 mΩ ± 0.020 mΩ');
    expect(await drawer().locator('.output').textContent()).toMatch(/uncertain because of a \(95 %\)/);
  });

  test('refuse another dimension in words', async () => {
    await field('a, one resistor').fill('5 W');
    expect(await drawer().locator('.fault-found').textContent()).toContain('"5 W" is a power');
    await field('a, one resistor').fill('5 mΩ ± 1 %');
  });

  test('look for an input instead', async () => {
    await drawer().getByLabel('Look for').selectOption('b');
    await field('resistance of both together, given').fill('4 mΩ');
    // By hand: 1/(1/4 − 1/5) = 20 mΩ.
    expect(await value().textContent()).toMatch(/^20\.\d* mΩ/);
    await drawer().getByLabel('Look for').selectOption('');
  });

  test('put a result into a field of the study with its source, and take it back', async () => {
    const before = readFileSync(bench.study, 'utf8');
    await drawer().getByText('Take into the study').click();
    await drawer().getByLabel('Field').selectOption('parts.jack.resistance');
    await drawer().getByRole('button', { name: 'Put it in' }).click();
    await drawer().getByText('Written into parts.jack.resistance.').waitFor();
    const after = readFileSync(bench.study, 'utf8');
    expect(after).toMatch(
      /resistance: \{ value: 4\.07\d* mΩ ± 0\.02 mΩ \(k=1\), source: "calculated: parallel-resistance" \}/,
    );
    expect(after.split('\n')).toHaveLength(before.split('\n').length);
    await drawer().getByRole('button', { name: 'Take the last change back' }).click();
    await drawer().getByText('Taken back.').waitFor();
    expect(readFileSync(bench.study, 'utf8')).toBe(before);
  });

  test('leave nothing for axe, wide and narrow, light and dark', async () => {
    for (const [width, colorScheme] of [
      [1280, 'light'],
      [400, 'dark'],
    ] as const) {
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme });
      const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
      expect(violations).toEqual([]);
      const overflow = await drawer().evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
      expect(overflow).toBe(0);
    }
  });

  test('close with Escape, and the button that opened them has the focus again', async () => {
    await page.keyboard.press('Escape');
    await drawer().waitFor({ state: 'hidden' });
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Calculators');
  });
});
