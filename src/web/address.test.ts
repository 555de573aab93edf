import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readAddress, writeAddress } from './address.ts';

test('what is written into the address is read back from it', () => {
  fc.assert(
    fc.property(fc.option(fc.string()), fc.option(fc.integer({ min: 1, max: 2000 })), (step, dial) => {
      expect(readAddress(writeAddress({ step, dial }))).toEqual({ step, dial });
    }),
  );
});

test.each(['#dial=much', '#dial=-4', '#dial=0', '#dial=', '#dial=Infinity', ''])('"%s" sets no dial', (hash) => {
  expect(readAddress(hash).dial).toBeNull();
});
