import { readFileSync } from 'node:fs';
import type { Catalogue } from '../../src/words/catalogue.ts';
import type { OpenedApp } from './harness.ts';

/**
 * A made-up language, to see what a screen does not say by its words: each letter of every known
 * text is written in its wide form, so a plain Latin letter on a screen is either somebody's data
 * or a text that no catalogue knows.
 */
const SPANISH = new URL('../../src/words/catalogues/es.json', import.meta.url);
const WIDE_FROM = 0xfee0;

export async function speakMarked(app: OpenedApp): Promise<void> {
  const body = JSON.stringify(markedCatalogue());
  await app.page.route(/\/assets\/es-[\w-]+\.json$/, (route) =>
    route.fulfill({ contentType: 'application/json', body }),
  );
}

export function markedCatalogue(): Catalogue {
  const { said, told }: Catalogue = JSON.parse(readFileSync(SPANISH, 'utf8'));
  return {
    said: Object.fromEntries(
      Object.keys(said).map((key) => {
        const [one = '', other] = marked(key.slice(key.indexOf('§') + 1)).split('|');
        return [key, other === undefined ? one : { one, other }];
      }),
    ),
    told: Object.fromEntries(Object.keys(told).map((key) => [key, marked(key)])),
  };
}

function marked(text: string): string {
  return text.replace(/\{\w+\}|[A-Za-z]/g, (sign) =>
    sign.length > 1 ? sign : String.fromCharCode(sign.charCodeAt(0) + WIDE_FROM),
  );
}

/** Every text that the page shows or reads out, with what kind of place it stands in. */
export function textsShown(app: OpenedApp): Promise<string[]> {
  return app.page.evaluate(() => {
    const texts: string[] = [document.title];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT);
    for (let at = walk.nextNode(); at !== null; at = walk.nextNode()) {
      // What names its own language is no text of the app's.
      if (!(at instanceof Element) || at.closest('body [lang]') !== null) continue;
      if (/^(?:script|style|noscript)$/i.test(at.tagName)) continue;
      for (const name of ['aria-label', 'placeholder', 'title', 'alt']) {
        texts.push(at.getAttribute(name) ?? '');
      }
      for (const node of at.childNodes) {
        if (node.nodeType === Node.TEXT_NODE) texts.push(node.textContent ?? '');
      }
    }
    return texts;
  });
}

/** Fields whose texts people write, and ids, which are shown where there is no name. */
const DATA_FIELDS = new Set(
  (
    'id by name note reason storage slip receipt prize choice choices contact group ask depot ' +
    'order lot counters late second currency language season seller family product host stall ' +
    'level neighbour deadline from to pool'
  ).split(' '),
);

/** The texts of a book's records that may stand on a screen as they are, the longest first. */
export function dataTexts(records: readonly unknown[]): string[] {
  const found = new Set<string>();
  const collect = (value: unknown, isData: boolean): void => {
    if (typeof value === 'string') {
      if (isData) found.add(value);
    } else if (Array.isArray(value)) for (const each of value) collect(each, isData);
    else if (typeof value === 'object' && value !== null) {
      for (const [key, each] of Object.entries(value)) collect(each, DATA_FIELDS.has(key));
    }
  };
  collect(records, false);
  return [...found].sort((a, b) => b.length - a.length);
}

/** The same in every language: formats, the program's own name, the names of languages. */
const SAME = /\b(?:Cratebook|PDF|A4|UTC|USD|English|Español)\b/g;
/** Days as Intl writes them in Spanish. */
const DAYS = /\b\d{1,2} (?:de )?[a-z]{3,4}(?: de)? \d{4}\b/g;

/** What is left of the texts in plain Latin letters once data and days are taken away. */
export function unmarked(texts: readonly string[], data: readonly string[]): string[] {
  const known = new RegExp(`(?<!\\p{L})(?:${data.map(escaped).join('|')})(?!\\p{L})`, 'gu');
  return texts.filter((text) =>
    /[A-Za-z]{2,}/.test(text.replace(DAYS, ' ').replace(SAME, ' ').replace(known, ' ')),
  );
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
