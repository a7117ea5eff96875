import { describe, expect, it } from 'vitest';
import { nearest } from './nearest.ts';

describe('the nearest known word', () => {
  const words = ['balances', 'check', 'closing', 'statement', 'statements'];

  it.each([
    ['balanec', 'balances'],
    ['chek', 'check'],
    ['CLOSING', 'closing'],
    ['statemnt', 'statement'],
  ])('%s is likely %s', (said, meant) => {
    expect(nearest(said, words)).toBe(meant);
  });

  it.each(['', 'x', 'shareout', 'restore everything'])('"%s" is like none of them', (said) => {
    expect(nearest(said, words)).toBeUndefined();
  });

  it('counts changes as the usual example does: kitten to sitting is 3', () => {
    // V. I. Levenshtein's distance; the example is common (from memory).
    expect(nearest('kitten---', ['sitting---'])).toBe('sitting---');
    expect(nearest('kitten', ['sitting'])).toBeUndefined();
  });
});
