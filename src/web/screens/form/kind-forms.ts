import type { Kind } from '../../../records/record.ts';
import { say } from '../../say.ts';
import type { KindForm } from './field-form.ts';
import { movementForms } from './movement-forms.ts';
import { setupForms } from './setup-forms.ts';

/** What each kind's form asks for: a kind is a row of one of two tables. */
export const kindForms: Readonly<Record<Exclude<Kind, 'void'>, KindForm>> = {
  ...movementForms,
  ...setupForms,
};

/** The kinds in the order and groups in which the list of all forms shows them. */
export const kindGroups: readonly (readonly [words: string, kinds: readonly Kind[]])[] = [
  [
    say`Goods`,
    [
      'delivery',
      'handover',
      'return',
      'pass',
      'swap-in',
      'swap-out',
      'exchange',
      'gift',
      'loss',
      'found',
      'count',
    ],
  ],
  [
    say`Money`,
    [
      'payment',
      'refund',
      'deposit',
      'card-settle',
      'debit',
      'debit-returned',
      'bank-fee',
      'bounced',
      'settle',
    ],
  ],
  [say`Orders`, ['order', 'supply-order', 'online']],
  [say`Stalls`, ['stall', 'stall-close', 'shareout']],
  [
    say`Set-up`,
    [
      'season',
      'product',
      'family',
      'seller',
      'host',
      'neighbour',
      'level',
      'choice',
      'proceeds',
      'hold',
    ],
  ],
];
