import { languages } from '../../words/language.ts';
import type { Option } from './field.tsx';

/** The languages that papers can be in; a tag that is written already stays to be chosen. */
export function languageOptions(...written: readonly (string | undefined)[]): Option[] {
  const known = languages.map(({ tag, name }) => ({ value: tag, words: name }));
  const others = new Set(written.filter((tag) => tag !== undefined && tag !== ''));
  for (const { value } of known) others.delete(value);
  return [...known, ...[...others].map((tag) => ({ value: tag ?? '', words: tag ?? '' }))];
}
