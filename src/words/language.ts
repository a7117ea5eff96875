/**
 * The languages that screens and papers can be read in. A further one is a row here and a catalogue
 * of the same keys; nothing else knows how many there are.
 */
export interface Language {
  /** BCP 47 tag, as a page, a paper and a family's record name it. */
  readonly tag: string;
  /** The language's own name, as its readers know it. */
  readonly name: string;
  /** The tag whose customs numbers and days follow (CLDR, through Intl). */
  readonly customs: string;
}

export const englishLanguage: Language = { tag: 'en', name: 'English', customs: 'en-US' };

export const languages: readonly Language[] = [
  englishLanguage,
  // Customs of the United States, so that an amount reads alike on both papers of one family.
  { tag: 'es', name: 'Español', customs: 'es-US' },
  { tag: 'zh-Hans', name: '简体中文', customs: 'zh-Hans-CN' },
];

/**
 * The first of the wanted languages that there are words in, else English. A tag is matched by its
 * primary subtag alone (`es-MX` is read in `es`), as the lookup of RFC 4647 ends.
 *
 * @param wanted BCP 47 tags, the best first; what is no tag is passed over
 */
export function languageFor(...wanted: readonly (string | undefined)[]): Language {
  for (const tag of wanted) {
    const found = languages.find((language) => primary(language.tag) === primary(tag ?? ''));
    if (found !== undefined) return found;
  }
  return englishLanguage;
}

function primary(tag: string): string {
  return tag.split(/[-_]/)[0]?.toLowerCase() ?? '';
}
