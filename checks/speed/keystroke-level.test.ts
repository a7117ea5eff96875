import { describe, expect, it } from 'vitest';
import { FAST, modelSeconds, operatorSum, SLOW, USUAL } from './keystroke-level.ts';

/**
 * The paper's worked example: a five-letter word is replaced by another one five lines below. With
 * a keyboard editor it takes 4M + 15K, with a mouse editor 2M + 8K + 2H + 1P; both figures with the
 * K of 0.20 s (Card, Moran and Newell, CACM 23(7), 1980; the figures as quoted by lecture slides).
 */
describe('the keystroke-level model', () => {
  it('gives the seconds of the worked example', () => {
    expect(modelSeconds('4M 15K', FAST)).toBe(8.4);
    expect(modelSeconds('2M 8K 2H 1P', FAST)).toBe(6.2);
  });

  it('adds operators up in any order, one by one or counted', () => {
    expect(modelSeconds('MPMPPMP', USUAL)).toBe(8.45);
    expect(modelSeconds('3M4P', USUAL)).toBe(8.45);
    expect(modelSeconds('', USUAL)).toBe(0);
    expect(modelSeconds('K', SLOW) - modelSeconds('K', FAST)).toBeCloseTo(0.3, 9);
  });

  it('counts what a hand did', () => {
    expect(operatorSum('MPKKPM')).toBe('2M 2P 2K');
  });
});
