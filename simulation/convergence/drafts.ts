import { isMovement, type MovementRecord } from '../../src/records/record.ts';
import type { Book, Draft } from '../../src/web/book.ts';
import { contentOf } from '../../src/web/undo.ts';
import type { Step } from './history.ts';

/** Those who sell in every history. */
export const SELLERS = ['ada', 'ben', 'cem'];

type Writable = Pick<Book, 'ledger' | 'nextReceipt'>;

/** What a person writes on that phone; `note` names the tap, so that a double shows. */
export function draftsOf(book: Writable, step: Step, at: number): Draft[] {
  const { pick } = step;
  const { ledger } = book;
  const seller = SELLERS[pick % SELLERS.length] ?? 'ada';
  const date = '2027-03-01';
  const note = `tap ${at}`;
  const movements = ledger.standing.records().filter(isMovement);
  const known: MovementRecord | undefined = movements[pick % Math.max(1, movements.length)];
  switch (step.does) {
    case 'pay': {
      const receipt = book.nextReceipt();
      const cents = 100 + pick;
      return [{ kind: 'payment', date, seller, tender: 'cash', cents, receipt, note }];
    }
    case 'hand out':
      return [
        { kind: 'handover', date, seller, lines: { honey: 1 + (pick % 9) }, note },
        { kind: 'return', date, seller, lines: { jam: 1 }, note: `${note} too` },
      ];
    case 'edit': {
      if (known === undefined || !('lines' in known || known.kind === 'payment')) return [];
      const { receipt: _receipt, ...content } = { receipt: '', ...contentOf(known) };
      // An edit says what its record said, but for its note.
      return [{ ...content, replaces: known.id, note } as Draft];
    }
    case 'remove':
      return known === undefined ? [] : [{ kind: 'void', voids: known.id, reason: note }];
    case 'rename':
      return [{ kind: 'family', family: 'home', name: `Home ${note}` }];
    case 'drop seller': {
      const record = ledger.standing
        .records()
        .find((each) => each.kind === 'seller' && each.seller === seller);
      return record === undefined ? [] : [{ kind: 'void', voids: record.id, reason: note }];
    }
    default:
      return [];
  }
}
