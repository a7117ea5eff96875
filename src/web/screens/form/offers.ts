import type { Ledger } from '../../../ledger/ledger.ts';
import { valueOfLines } from '../../../questions/value-of-lines.ts';
import { accountName, stallName } from '../../../statements/account-name.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import type { Option } from '../../parts/field.tsx';
import { typedLines } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FieldOf, Thing } from './field-form.ts';
import { linesTyped, type Typed } from './form-values.ts';

/** What a form offers to tap instead of typing: amounts, and the things one may choose from. */

type Offer = { readonly minor: number; readonly words: string };

export function offersFor(form: FieldOf<'money'>, typed: Typed, ledger: Ledger): Offer[] {
  const owed = ledger.balances.moneyOf(`owed:${typed.seller ?? ''}`);
  const money = (account: string) => ledger.balances.moneyOf(account);
  const offers: Record<string, Offer> = {
    due: { minor: owed, words: say`still to pay` },
    credit: { minor: 0 - owed, words: say`in credit` },
    cashbox: { minor: money('cashbox'), words: say`in the cash box` },
    cards: { minor: money('cards'), words: say`on the way` },
    supplier: { minor: 0 - money('supplier'), words: say`to pay to the supplier` },
    lines: { minor: priceTyped(typed, ledger), words: say`price of the goods` },
  };
  const offer = form.offer === undefined ? undefined : offers[form.offer];
  return offer === undefined || offer.minor <= 0 ? [] : [offer];
}

function priceTyped(typed: Typed, ledger: Ledger): number {
  const day = typed.date ?? '';
  const values = ['lines', 'gifts'].map((field) => {
    const read = typedLines(linesTyped(field, typed), ledger, day);
    return read.ok ? valueOfLines(ledger, read.value, day).minor : 0;
  });
  return values.reduce((sum, minor) => sum + minor, 0);
}

type ChoosingForm = FieldOf<'thing' | 'record' | 'pool'>;

/** @param chosen what is chosen now: it stays in the list even where it would not be offered */
export function optionsFor(form: ChoosingForm, ledger: Ledger, chosen: string): Option[] {
  if (form.type === 'thing') return things(form.of, ledger);
  if (form.type === 'pool') return pools(ledger, chosen);
  const cheques = form.of === 'payment';
  return ledger
    .movements()
    .filter(
      (record) =>
        record.id === chosen ||
        (cheques
          ? record.kind === 'payment' && record.tender === 'cheque'
          : record.kind === 'debit'),
    )
    .reverse()
    .map((record) => ({
      value: record.id,
      words: `${say.day(record.date)}: ${recordSentence(record, ledger, say)}`,
    }));
}

function things(of: Thing, { setup }: Ledger): Option[] {
  switch (of) {
    case 'product':
      return [...setup.products.values()].map((r) => ({ value: r.product, words: r.name }));
    case 'family':
      return [...setup.families.values()].map((r) => ({ value: r.family, words: r.name }));
    case 'host':
      return [...setup.hosts.values()].map((r) => ({ value: r.host, words: r.name }));
    case 'neighbour':
      return [...setup.neighbours.values()].map((r) => ({ value: r.neighbour, words: r.name }));
    case 'stall':
      return [...setup.stalls.keys()].map((stall) => ({
        value: stall,
        words: stallName(setup, stall, say),
      }));
    case 'level':
      return [...setup.levels.values()].map((r) => ({ value: r.level, words: r.prize }));
  }
}

function pools(ledger: Ledger, chosen: string): Option[] {
  const names = [...ledger.balances.table('credit').keys()].filter(
    (account) =>
      account.startsWith('pool:') &&
      (account === `pool:${chosen}` || ledger.balances.unitsOf('credit', account) !== 0),
  );
  return names.map((account) => ({
    value: account.slice('pool:'.length),
    words: accountName(ledger, 'credit', account, say),
  }));
}
