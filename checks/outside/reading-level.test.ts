import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Catalogue, Entry } from '../../src/words/catalogue.ts';
import { HOME } from '../house/source-file.ts';
import {
  englishSyllables,
  fleschKincaidGrade,
  sizeOf,
  spanishSyllables,
  szigrisztPerspicuity,
  wordsOf,
} from './reading-level.ts';

/** What a volunteer reads in passing: no school grade above this, over all sentences together. */
const GRADE_MOST = 4;
/** "Fairly easy" on the INFLESZ scale begins at 65. */
const PERSPICUITY_LEAST = 75;
/** One sentence alone, where it is long enough for the formula to mean something. */
const SENTENCE_WORDS = 12;
const SENTENCE_GRADE_MOST = 9;
const SENTENCE_PERSPICUITY_LEAST = 50;

const { said }: Catalogue = JSON.parse(
  readFileSync(join(HOME, 'src/words/catalogues/es.json'), 'utf8'),
);
const english = sentences(Object.keys(said));
const spanish = sentences(Object.values(said).map(oneForm));

describe('reading level of what screens and papers say', () => {
  it('English stays at a low school grade (Flesch-Kincaid)', () => {
    const grade = fleschKincaidGrade(sizeOf(english, englishSyllables));
    process.stdout.write(`Flesch-Kincaid grade of ${english.length} texts: ${grade.toFixed(1)}\n`);
    expect(english.length).toBeGreaterThan(400);
    expect(grade).toBeLessThanOrEqual(GRADE_MOST);
    expect(hardest(english, gradeOf).filter(([, hard]) => hard > SENTENCE_GRADE_MOST)).toEqual([]);
  });

  it('Spanish stays fairly easy (Szigriszt Pazos)', () => {
    const easy = szigrisztPerspicuity(sizeOf(spanish, spanishSyllables));
    process.stdout.write(`Perspicuity of ${spanish.length} texts: ${easy.toFixed(1)}\n`);
    expect(spanish.length).toBeGreaterThan(400);
    expect(easy).toBeGreaterThanOrEqual(PERSPICUITY_LEAST);
    const least = -SENTENCE_PERSPICUITY_LEAST;
    expect(hardest(spanish, hardnessOf).filter(([, hard]) => hard > least)).toEqual([]);
  });

  it('would find words of an office', () => {
    const office = [
      'Reconciliation of outstanding receivables necessitates documentary verification.',
      'Subsequent amendments are subject to prior authorisation by the responsible administrator.',
    ];
    expect(gradeOf(office.join(' '))).toBeGreaterThan(SENTENCE_GRADE_MOST);
    const oficina = [
      'La conciliación de obligaciones pendientes requiere verificación documental fehaciente.',
      'Las modificaciones ulteriores requieren autorización previa del administrador responsable.',
    ];
    expect(-hardnessOf(oficina.join(' '))).toBeLessThan(SENTENCE_PERSPICUITY_LEAST);
  });
});

describe('syllables', () => {
  it.each([
    ['Save', 1],
    ['count', 1],
    ['counted', 2],
    ['moved', 1],
    ['boxes', 2],
    ['families', 3],
    ['table', 2],
    ['delivery', 4],
    ['seller’s', 2],
    ['prizes', 2],
    ['notes', 1],
    ['being', 2],
    ['12', 1],
  ])('%s has %i in English', (word, syllables) => {
    expect(englishSyllables(word)).toBe(syllables);
  });

  it.each([
    ['guarda', 2],
    ['aún', 2],
    ['recuento', 3],
    ['vendedor', 3],
    ['devolución', 4],
    ['líder', 2],
    ['tesorería', 5],
    ['que', 1],
    ['guía', 2],
    ['hay', 1],
    ['caja', 2],
    ['león', 2],
  ])('%s has %i in Spanish', (word, syllables) => {
    expect(spanishSyllables(word)).toBe(syllables);
  });
});

it('gives what the formulas give', () => {
  const size = { sentences: 2, words: 20, syllables: 30 };
  expect(fleschKincaidGrade(size)).toBeCloseTo(0.39 * 10 + 11.8 * 1.5 - 15.59);
  expect(szigrisztPerspicuity(size)).toBeCloseTo(206.835 - 62.3 * 1.5 - 10);
});

/** Whole sentences, a short name or number in each place; labels and sums are no sentences. */
function sentences(texts: readonly string[]): string[] {
  return texts
    .map(
      (text) =>
        text
          .slice(text.indexOf('§') + 1)
          .split('|')
          .at(-1) ?? '',
    )
    .map((text) => text.replace(/\{\d+\}/g, 'Ada').replace(/#/g, '5'))
    .filter((text) => /[.?]$/.test(text) && !/ = /.test(text) && wordsOf(text).length >= 4);
}

function oneForm(entry: Entry): string {
  return typeof entry === 'string' ? entry : entry.other;
}

function gradeOf(text: string): number {
  return fleschKincaidGrade(sizeOf([text], englishSyllables));
}

function hardnessOf(text: string): number {
  return -szigrisztPerspicuity(sizeOf([text], spanishSyllables));
}

function hardest(texts: readonly string[], hardness: (text: string) => number) {
  return texts
    .filter((text) => wordsOf(text).length >= SENTENCE_WORDS)
    .map((text) => [text, Math.round(hardness(text) * 10) / 10] as const)
    .sort(([, a], [, b]) => b - a);
}
