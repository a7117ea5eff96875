import type { Printed } from '../../paper/paper-printer.ts';
import type { AcceptedBook } from '../../rules/accept-book.ts';
import { type PaperContext, paperContext } from '../../statements/paper-frame.ts';
import { saysIn } from '../../words/all-languages.ts';
import type { Outlet } from './outlet.ts';
import type { Arguments, OptionTable } from './read-arguments.ts';
import { Stop } from './stop.ts';

/** What papers take beside the book. */
export const paperOptions: OptionTable = {
  paper: { type: 'string' },
  ask: { type: 'string' },
  name: { type: 'string' },
};

/** The options that were given, then what the season's own record says. */
export function contextOf(given: Arguments, book: AcceptedBook, asAt: string): PaperContext {
  const ask = given.get('ask');
  const name = given.get('name');
  return {
    ...paperContext(book.ledger, book.header, asAt, saysIn),
    ...(name === undefined ? {} : { group: name }),
    ...(ask === undefined ? {} : { ask }),
  };
}

/** The bytes of a paper; characters that no font has are told. */
export function printed(outcome: Printed, outlet: Outlet): Uint8Array {
  if (!outcome.ok) {
    throw new Stop(`the paper ${outcome.refusal.paper} was not made: ${outcome.refusal.detail}`);
  }
  const { replaced } = outcome.value;
  if (replaced.length > 0) outlet.note(`Printed as empty boxes: ${replaced.join(' ')}`);
  return outcome.value.pdf;
}
