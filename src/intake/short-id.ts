import { ID_TEXT_MAX } from '../base/id.ts';

/** Latin letters that Unicode does not take apart into a base letter and marks. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
  ħ: 'h',
};

/**
 * An id of `a-z 0-9 -` for a name: accents dropped, everything else a dash. Empty where the name
 * has no Latin letter or digit.
 */
export function idFromName(name: string): string {
  const plain = name
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .replace(/[^a-z0-9]/gu, (letter) => LETTERS[letter] ?? '-');
  return plain.replace(/-+/gu, '-').slice(0, ID_TEXT_MAX).replace(/^-|-$/gu, '');
}

/**
 * The first id that is not taken: the name's own, then with 2, 3, … after it; for a name without
 * Latin letters `kind-1`, `kind-2`, …
 */
export function freeId(name: string, kind: string, taken: ReadonlySet<string>): string {
  const own = idFromName(name);
  const base = own === '' ? kind : own.slice(0, ID_TEXT_MAX - 5);
  if (own !== '' && !taken.has(own)) return own;
  let number = own === '' ? 1 : 2;
  while (taken.has(`${base}-${number}`)) number += 1;
  return `${base}-${number}`;
}
