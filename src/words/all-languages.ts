import type { Catalogue } from './catalogue.ts';
import spanish from './catalogues/es.json' with { type: 'json' };
import chinese from './catalogues/zh-Hans.json' with { type: 'json' };
import { languageFor } from './language.ts';
import { type Say, sayIn } from './say.ts';

/**
 * Every language at hand at once, for papers: one printing has families of several languages. The
 * app never imports this; it fetches the one catalogue that it needs.
 */
const catalogues: Readonly<Record<string, Catalogue>> = { es: spanish, 'zh-Hans': chinese };

const made = new Map<string, Say>();

/** The first of these languages (BCP 47 tags) that there are words in, else English. */
export function saysIn(...wanted: readonly (string | undefined)[]): Say {
  const language = languageFor(...wanted);
  const say = made.get(language.tag) ?? sayIn(language, catalogues[language.tag]);
  made.set(language.tag, say);
  return say;
}
