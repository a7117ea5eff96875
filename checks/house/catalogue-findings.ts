import type { Catalogue, Entry } from '../../src/words/catalogue.ts';
import type { Language } from '../../src/words/language.ts';
import type { WordsPlace, WordsUsed } from './words-used.ts';

/** What a catalogue lacks, has for nothing, or says with other parts than the English text. */
export function catalogueFindings(
  language: Language,
  catalogue: Catalogue,
  used: WordsUsed,
): string[] {
  return [
    ...keyFindings('said', Object.keys(catalogue.said), used.said),
    ...keyFindings('told', Object.keys(catalogue.told), used.told),
    ...Object.entries(catalogue.said).flatMap(([key, entry]) =>
      entryFindings(key, entry, used.said.get(key)?.parts ?? [], language),
    ),
    ...Object.entries(catalogue.told).flatMap(([key, text]) => partFindings(key, key, text)),
  ].map((finding) => `${language.tag}: ${finding}`);
}

function keyFindings(
  list: string,
  there: readonly string[],
  wanted: ReadonlyMap<string, WordsPlace>,
): string[] {
  const known = new Set(there);
  const lacking = [...wanted].filter(([key]) => !known.has(key));
  return [
    ...lacking.map(([key, { where }]) => `${list} lacks ${JSON.stringify(key)}, said at ${where}`),
    ...there.filter((key) => !wanted.has(key)).map((key) => `${list}: nothing says ${key}`),
  ];
}

function entryFindings(
  key: string,
  entry: Entry,
  sources: readonly string[],
  language: Language,
): string[] {
  const isCounted = /[^ ]\|[^ ]/.test(key);
  if (typeof entry === 'string') {
    return isCounted ? [`${key}: one text for all numbers`] : partFindings(key, key, entry);
  }
  if (!isCounted) return [`${key}: forms, though it hangs on no number`];
  const [, other = ''] = key.split('|');
  // The two English forms name the same parts by other numbers; what counts is the code behind.
  const named = (text: string) => text.replace(/\{(\d+)\}/g, (_, at) => `{${sources[at] ?? at}}`);
  const forms = Object.entries(entry);
  const lacking = categoriesOf(language).filter((category) => !(category in entry));
  return [
    ...lacking.map((category) => `${key}: no form for ${category}`),
    ...forms.flatMap(([category, text]) =>
      partFindings(key, named(other), named(text)).filter(
        // "One" may be said without its number.
        (finding) => category === 'other' || !finding.endsWith('lost #'),
      ),
    ),
  ];
}

/** The plural categories that whole numbers of everyday size fall into. */
function categoriesOf(language: Language): string[] {
  const rules = new Intl.PluralRules(language.customs);
  const numbers = Array.from({ length: 1000 }, (_, number) => number);
  return [...new Set(numbers.map((number) => rules.select(number)))];
}

function partFindings(key: string, english: string, text: string): string[] {
  if (text.trim() === '' && english.trim() !== '') return [`${key}: empty`];
  const lost = partsOf(english).filter((part) => !partsOf(text).includes(part));
  const odd = partsOf(text).filter((part) => part !== '#' && !partsOf(english).includes(part));
  return [
    ...lost.map((part) => `${key}: lost ${part}`),
    ...odd.map((part) => `${key}: has ${part}, which the English text has not`),
  ];
}

function partsOf(text: string): string[] {
  return text.match(/\{[^{}"\s][^{}"]*\}|#(?![\w(])/g) ?? [];
}
