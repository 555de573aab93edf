import { describe, expect, test } from 'vitest';
import { compatibility, interfaceMetals, surfaces } from './compatibility.ts';

const liquid = ['gallium', 'gallium-indium', 'gallium-indium-tin'];

function entryOf(metal: string, surface: string) {
  const found = compatibility(metal, surface);
  if (!found.ok) throw new Error(found.fault.code);
  return found.entry;
}

// Fast penetration of liquid gallium in polycrystalline aluminum films (abstract): micrometres a second. A coating is only as good as its first scratch.
test.each(liquid)('%s never meets aluminium, whatever covers it', (metal) => {
  for (const surface of ['aluminium', 'anodised-aluminium', 'nickel-plated-aluminium'])
    expect(entryOf(metal, surface).verdict).toBe('never');
});

// Tang et al., Rev. Sci. Instrum. 93 (12), 2022: reaction zones in copper and nickel, none in tungsten. Metals 15 (11), 2025, 1194: brass is embrittled.
test.each(liquid)('%s on other metals is as published', (metal) => {
  for (const surface of ['copper', 'nickel', 'nickel-plated-copper', 'steel', 'stainless-steel'])
    expect(entryOf(metal, surface).verdict).toBe('warned');
  for (const surface of ['brass', 'gold', 'tin', 'solder', 'zinc', 'board'])
    expect(entryOf(metal, surface).verdict).toBe('never');
  for (const surface of ['tungsten', 'silicon', 'diamond']) expect(entryOf(metal, surface).verdict).toBe('fine');
});

test('solid indium: a foil may lie on nickel; copper and gold are warned of; a board is short-circuited', () => {
  expect(entryOf('indium', 'nickel-plated-copper').verdict).toBe('fine');
  expect(entryOf('indium', 'copper').verdict).toBe('warned');
  expect(entryOf('indium', 'gold').verdict).toBe('warned');
  expect(entryOf('indium', 'board').verdict).toBe('never');
});

test('what nothing is known about is open, never fine', () => {
  expect(entryOf('gallium', 'silver').verdict).toBe('open');
  expect(entryOf('indium', 'tungsten').verdict).toBe('open');
});

test('every pair says why, how fast and from where', () => {
  for (const metal of Object.keys(interfaceMetals)) {
    for (const surface of Object.keys(surfaces)) {
      const { reason, timeScale, source } = entryOf(metal, surface);
      for (const text of [reason, timeScale, source]) expect(text).not.toBe('');
    }
  }
});

describe('names that are not in the table are refused', () => {
  test.each([
    ['mercury', 'copper', 'physics/unknown-interface-metal'],
    ['gallium', 'kopper', 'physics/unknown-surface'],
    ['constructor', 'copper', 'physics/unknown-interface-metal'],
    ['gallium', 'toString', 'physics/unknown-surface'],
  ])('%s on %s: %s', (metal, surface, code) => {
    const found = compatibility(metal, surface);
    expect(found.ok ? 'accepted' : found.fault.code).toBe(code);
  });

  test('a near miss is named', () => {
    const found = compatibility('gallium', 'coper');
    expect(found.ok ? {} : found.fault.data).toMatchObject({ name: 'coper', near: 'copper' });
  });
});
