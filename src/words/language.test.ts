import { expect, it } from 'vitest';
import { saysIn } from './all-languages.ts';
import { languageFor } from './language.ts';

it.each([
  [['es'], 'es'],
  [['es-MX', 'en'], 'es'],
  [['ES_us'], 'es'],
  [['zh-CN'], 'zh-Hans'],
  [['fr', 'zh'], 'zh-Hans'],
  [['fr', 'en-GB', 'es'], 'en'],
  [[undefined, 'es'], 'es'],
  [['', '-', 'esperanto'], 'en'],
  [[], 'en'],
])('%j is read in %s', (wanted, tag) => {
  expect(languageFor(...wanted).tag).toBe(tag);
  expect(saysIn(...wanted).language.tag).toBe(tag);
});

it('says a text of the code in each language', () => {
  const said = ['en', 'es', 'zh-Hans'].map((tag) => saysIn(tag)`Save`);
  expect(said).toEqual(['Save', 'Guardar', '保存']);
});
