import type { Say } from '../words/say.ts';

/** An end that is there already, also inside what closes a quotation or a stretch of direction. */
const ENDED = /[.!?…。؟][\u2069"')\]”’»]*$/u;

/** A text as a sentence: it gets a full stop unless it ends with one, like a name `Linnea B.`. */
export function sentence(text: string, say: Say): string {
  return ENDED.test(text) ? text : say`${text}.`;
}

/** The first letter of a text in capitals; other scripts and figures stay as they are. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
