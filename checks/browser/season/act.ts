import type { Locator, Page } from 'playwright-core';

/**
 * What a person does on a page, as data: the same steps are done by keyboard and by taps. Things
 * are found as a person finds them, by role and name; a field of a form also by its own id.
 */

type Role = Parameters<Page['getByRole']>[0];

export interface Place {
  readonly role?: Role;
  readonly name?: string;
  /** The name begins so; without it, it is the whole name. */
  readonly begins?: boolean;
  readonly css?: string;
  readonly within?: Place;
}

export type Act =
  /** One of the main pages of the app, by its link in the head (on a phone behind Menu). */
  | { readonly does: 'page'; readonly name: string }
  /** One of the four verbs. */
  | { readonly does: 'verb'; readonly name: string }
  /** Opens a link, works a button, unfolds what is folded. */
  | { readonly does: 'open'; readonly at: Place }
  /** Writes over what stands there, unless it is that already. */
  | { readonly does: 'write'; readonly at: Place; readonly text: string }
  /** A day (`YYYY-MM-DD`), a time (`HH:MM`) or both (`YYYY-MM-DDTHH:MM`). */
  | { readonly does: 'date'; readonly at: Place; readonly text: string }
  /** Chooses from a list, by the choice's words or a part of them; some lists save by that. */
  | { readonly does: 'choose'; readonly at: Place; readonly words: string; readonly saves?: true }
  /** Sets a radio button or a tick box. */
  | { readonly does: 'pick'; readonly at: Place }
  | { readonly does: 'see'; readonly at: Place }
  /** Works the button that saves, and waits until the page says what was saved. */
  | { readonly does: 'save'; readonly at: Place }
  /** Compares a table with what it should say and writes what differs, until nothing does. */
  | { readonly does: 'agree'; readonly cells: readonly Cell[] };

export interface Cell {
  readonly at: Place;
  readonly text: string;
}

export function locate(page: Page, place: Place): Locator {
  const inside = place.within === undefined ? page : locate(page, place.within);
  if (place.css !== undefined) return inside.locator(place.css).first();
  const { role = 'generic', name, begins } = place;
  if (name === undefined) return inside.getByRole(role).first();
  if (!begins) return inside.getByRole(role, { name, exact: true }).first();
  return inside.getByRole(role, { name: new RegExp(`^${escaped(name)}`) }).first();
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

export const link = (name: string, within?: Place): Place => placed('link', name, within);
export const button = (name: string, within?: Place): Place => placed('button', name, within);
export const group = (name: string): Place => ({ role: 'group', name });
export const beginning = (place: Place): Place => ({ ...place, begins: true });

function placed(role: Role, name: string, within: Place | undefined): Place {
  return { role, name, ...(within && { within }) };
}

/** The control of a form's field, by the field's path in the record (`lines.honey`). */
export function field(path: string): Place {
  return { css: `#field-${path.replace(/[^\w-]/g, '-')}` };
}

export const page = (name: string): Act => ({ does: 'page', name });
export const open = (at: Place): Act => ({ does: 'open', at });
export const write = (at: Place, text: string): Act => ({ does: 'write', at, text });
export const date = (at: Place, text: string): Act => ({ does: 'date', at, text });
export const choose = (at: Place, words: string): Act => ({ does: 'choose', at, words });
export const pick = (at: Place): Act => ({ does: 'pick', at });
export const save = (words: string): Act => ({ does: 'save', at: button(words) });
/** The page with this title is there. */
export const titled = (name: string): Act => ({
  does: 'see',
  at: { css: `main h1:text-is(${JSON.stringify(name)})` },
});
