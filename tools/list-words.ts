import { readFileSync, writeFileSync } from 'node:fs';
import { catalogueFindings } from '../checks/house/catalogue-findings.ts';
import { HOME, sourceFiles } from '../checks/house/source-file.ts';
import { type WordsUsed, wordsUsed } from '../checks/house/words-used.ts';
import type { Catalogue, Entry } from '../src/words/catalogue.ts';
import { englishLanguage, languages } from '../src/words/language.ts';

/**
 * Lists what each catalogue lacks: node tools/list-words.ts. With --tidy it also takes out what
 * nothing says any more and puts the keys in order. With --keys it lists every text of the code
 * with its place and the code of its parts, for whoever translates.
 */
const used = wordsUsed(sourceFiles());
if (process.argv.includes('--keys')) listKeys();
for (const language of languages.filter((one) => one !== englishLanguage)) {
  const path = `${HOME}/src/words/catalogues/${language.tag}.json`;
  const catalogue: Catalogue = JSON.parse(readFileSync(path, 'utf8'));
  const kept = process.argv.includes('--tidy') ? tidied(catalogue, used) : catalogue;
  if (kept !== catalogue) writeFileSync(path, `${JSON.stringify(kept, null, 2)}\n`);
  const findings = catalogueFindings(language, kept, used);
  for (const finding of findings) process.stdout.write(`${finding}\n`);
  process.stdout.write(`${language.name}: ${findings.length} findings\n`);
}

function listKeys(): void {
  for (const [key, { where, parts }] of [...used.said, ...used.told]) {
    process.stdout.write(`${where}\t${key}\t${parts.join(' | ')}\n`);
  }
}

function tidied({ said, told }: Catalogue, words: WordsUsed): Catalogue {
  return { said: inOrder<Entry>(said, words.said), told: inOrder<string>(told, words.told) };
}

function inOrder<T>(
  entries: Readonly<Record<string, T>>,
  wanted: ReadonlyMap<string, unknown>,
): Record<string, T> {
  const kept = Object.entries(entries).filter(([key]) => wanted.has(key));
  return Object.fromEntries(kept.sort(([a], [b]) => (a < b ? -1 : 1)));
}
