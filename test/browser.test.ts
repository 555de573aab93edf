import { expect, test } from 'vitest';
import { launchBrowser } from './browser.ts';

test('the test browser draws text: a page with words looks different from an empty one', async () => {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto('data:text/html,<p>');
    const empty = await page.screenshot();
    await page.goto('data:text/html,<p>Junction 84.2');
    const written = await page.screenshot();
    expect(written.equals(empty)).toBe(false);
  } finally {
    await browser.close();
  }
});
