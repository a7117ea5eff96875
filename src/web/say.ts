import type { Catalogue } from '../words/catalogue.ts';
import { englishLanguage, type Language, languageFor } from '../words/language.ts';
import { type Say, sayIn } from '../words/say.ts';

/**
 * The one language that this window is in. It is settled before any screen is loaded, so that also
 * texts which stand outside of functions are in it; another one is chosen by loading anew.
 */
const KEY = 'cratebook.language';
const ADDRESSES: Readonly<Record<string, URL>> = {
  es: new URL('../words/catalogues/es.json', import.meta.url),
  'zh-Hans': new URL('../words/catalogues/zh-Hans.json', import.meta.url),
};

export const say: Say = await sayIt(languageFor(chosenTag(), ...wantedByBrowser()));

/** Keeps the language for this device and starts the app in it. */
export function chooseLanguage(tag: string): void {
  localStorage.setItem(KEY, tag);
  location.reload();
}

/** English where the words cannot be fetched: a screen in another language is better than none. */
async function sayIt(language: Language): Promise<Say> {
  const address = ADDRESSES[language.tag];
  if (address === undefined) return sayIn(language);
  const catalogue = await fetched(address);
  return catalogue === undefined ? sayIn(englishLanguage) : sayIn(language, catalogue);
}

async function fetched(address: URL): Promise<Catalogue | undefined> {
  try {
    const answer = await fetch(address);
    return answer.ok ? await answer.json() : undefined;
  } catch {
    return undefined;
  }
}

function chosenTag(): string | undefined {
  return typeof localStorage === 'undefined' ? undefined : (localStorage.getItem(KEY) ?? undefined);
}

function wantedByBrowser(): readonly string[] {
  return typeof document === 'undefined' ? [] : navigator.languages;
}
