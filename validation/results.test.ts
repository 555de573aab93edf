/// <reference types="vite/types/importMeta.d.ts" />
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCampaigns } from './benches/campaigns.ts';
import { writeResults } from './results.ts';
import type { Topic } from './topic.ts';

const modules = import.meta.glob<{ topic: Topic }>('./topics/*.ts', { eager: true });
const results = new URL('RESULTS.md', import.meta.url);

test('RESULTS.md shows the figures of every topic (UPDATE=1 writes it anew)', () => {
  const text = writeResults(
    Object.values(modules).map(({ topic }) => topic),
    readCampaigns(),
  );
  if (process.env.UPDATE === '1') writeFileSync(results, text);
  expect(readFileSync(results, 'utf8')).toBe(text);
});
