import { describe, expect, test } from 'vitest';
import { nearest } from './nearest.ts';

describe('the candidate spelled most like a name', () => {
  test.each([
    ['adaptor', ['adapter', 'regulator'], 'adapter'],
    ['regualtor', ['adapter', 'regulator'], 'regulator'],
    ['KOHM', ['ohm', 'kohm'], 'kohm'],
    ['mOmh', ['ohm', 'mohm', 'm'], 'mohm'],
    ['MHZ', ['mHz', 'MHz'], 'MHz'],
    ['fan', ['fan', 'fans'], 'fan'],
  ])('%s of %j is %s', (name, candidates, expected) => {
    expect(nearest(name, candidates)).toBe(expected);
  });

  test('nothing is suggested where nothing is near', () => {
    expect(nearest('inductor', ['fuse', 'adapter'])).toBe('');
    expect(nearest('fuse', [])).toBe('');
    expect(nearest('x'.repeat(61), ['x'.repeat(61)])).toBe('');
  });
});
