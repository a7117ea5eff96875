/**
 * The words of one language by their English ones. Data, not script: the app fetches it only where
 * the language is chosen.
 */
export interface Catalogue {
  /** Sentences of screens and papers; a key is the English text with `{0}`, `{1}` for its parts. */
  readonly said: Readonly<Record<string, Entry>>;
  /** Refusals and findings, which reach the app in English, by the same kind of key. */
  readonly told: Readonly<Record<string, string>>;
}

/** A text, or one a plural category of the language (CLDR: `one`, `few`, `other`…). */
export type Entry = string | Forms;

export interface Forms {
  readonly zero?: string;
  readonly one?: string;
  readonly two?: string;
  readonly few?: string;
  readonly many?: string;
  readonly other: string;
}
