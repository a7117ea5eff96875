import type { BookRecord, MovementRecord, RecordOf } from '../src/records/record.ts';

/**
 * The posting table of the book specification, section 4, written out again as signed lines (the
 * ledger writes it as moves). Kept apart from src/ledger on purpose.
 */

export interface AuditLine {
  readonly ledger: 'stock' | 'money' | 'credit';
  readonly account: string;
  /** The product; empty for money. */
  readonly of: string;
  readonly amount: number;
}

type Units = Readonly<Record<string, number>>;

/** What a movement adds to each account, and takes from it. */
export function linesOfRecord(
  record: MovementRecord,
  price: (product: string) => number,
  pointedAt: (id: string) => BookRecord | undefined,
): AuditLine[] {
  const worth = (lines: Units): number =>
    Object.entries(lines).reduce((sum, [product, units]) => sum + units * price(product), 0);
  switch (record.kind) {
    case 'order':
    case 'supply-order':
    case 'exchange':
    case 'count':
      return [];
    case 'delivery':
      return [
        ...stock(record.lines, 'supplier', 'stockroom'),
        money('goods', worth(record.lines)),
        money('supplier', -worth(record.lines)),
      ];
    case 'swap-in':
      return [
        ...stock(record.lines, `neighbour:${record.neighbour}`, 'stockroom'),
        money('goods', worth(record.lines)),
        money('supplier', -worth(record.lines)),
      ];
    case 'swap-out':
      return [
        ...stock(record.lines, 'stockroom', `neighbour:${record.neighbour}`),
        money('goods', -worth(record.lines)),
        money('supplier', worth(record.lines)),
      ];
    case 'handover':
      return [
        ...stock(record.lines, 'stockroom', `seller:${record.seller}`),
        money(`owed:${record.seller}`, worth(record.lines)),
        money('goods', -worth(record.lines)),
        ...credit(record.lines, 'issued', `seller:${record.seller}`),
      ];
    case 'return':
      return [
        ...stock(record.lines, `seller:${record.seller}`, 'stockroom'),
        money(`owed:${record.seller}`, -worth(record.lines)),
        money('goods', worth(record.lines)),
        ...credit(record.lines, `seller:${record.seller}`, 'issued'),
      ];
    case 'pass':
      return [
        ...stock(record.lines, `seller:${record.from}`, `seller:${record.to}`),
        money(`owed:${record.to}`, worth(record.lines)),
        money(`owed:${record.from}`, -worth(record.lines)),
        ...credit(record.lines, `seller:${record.from}`, `seller:${record.to}`),
      ];
    case 'online':
      return online(record, worth(record.lines));
    case 'gift':
      return gift(record, worth(record.lines));
    case 'stall-close':
      return stallClose(record, worth);
    case 'shareout':
      return Object.entries(record.lines).flatMap(([seller, lines]) =>
        credit(lines, `pool:${record.pool}`, `seller:${seller}`),
      );
    default:
      return moneyOnly(record, worth, pointedAt);
  }
}

type MoneyKind =
  | 'payment'
  | 'refund'
  | 'deposit'
  | 'card-settle'
  | 'debit'
  | 'debit-returned'
  | 'bank-fee'
  | 'bounced'
  | 'loss'
  | 'found'
  | 'settle';

function moneyOnly(
  record: RecordOf<MoneyKind>,
  worth: (lines: Units) => number,
  pointedAt: (id: string) => BookRecord | undefined,
): AuditLine[] {
  switch (record.kind) {
    case 'payment':
      return [money(`owed:${record.seller}`, -record.cents), money(till(record), record.cents)];
    case 'refund':
      return [money(`owed:${record.seller}`, record.cents), money(till(record), -record.cents)];
    case 'deposit':
      return [money('cashbox', -record.cents), money('bank', record.cents)];
    case 'card-settle':
      return [
        money('cards', -(record.cents + (record.fee ?? 0))),
        money('fees', record.fee ?? 0),
        money(record.to, record.cents),
      ];
    case 'debit':
      return [money('bank', -record.cents), money('supplier', record.cents)];
    case 'debit-returned': {
      const debit = pointedAt(record.debit);
      const cents = debit?.kind === 'debit' ? debit.cents : 0;
      const fee = record.fee ?? 0;
      return [money('bank', cents - fee), money('supplier', -cents), money('fees', fee)];
    }
    case 'bank-fee':
      return [money('bank', -record.cents), money('fees', record.cents)];
    case 'bounced':
      return bounced(record, pointedAt(record.payment));
    case 'loss':
      return loss(record, worth);
    case 'found':
      return [
        ...stock(record.lines, 'lost', 'stockroom'),
        money('goods', worth(record.lines)),
        money('losses', -worth(record.lines)),
      ];
    case 'settle':
      return [money('supplier', record.proceeds), money('proceeds', -record.proceeds)];
  }
}

function online(record: RecordOf<'online'>, value: number): AuditLine[] {
  if (record.sent === 'hand') {
    const payer = record.seller === undefined ? 'buyers' : `owed:${record.seller}`;
    return [money(payer, -record.paid), money('supplier', record.paid)];
  }
  if (record.seller === undefined) {
    return [
      money('supplier', -value + record.paid),
      money('buyers', -(record.paid - value)),
      ...credit(record.lines, 'issued', 'pool:post'),
    ];
  }
  return [
    money(`owed:${record.seller}`, value),
    money(`owed:${record.seller}`, -record.paid),
    money('supplier', record.paid - value),
    ...credit(record.lines, 'issued', `seller:${record.seller}`),
  ];
}

function gift(record: RecordOf<'gift'>, value: number): AuditLine[] {
  const payer = record.seller === undefined ? 'buyers' : `owed:${record.seller}`;
  const receiver = record.seller === undefined ? 'pool:gift' : `seller:${record.seller}`;
  const given = record.from === 'stockroom' ? stock(record.lines, 'stockroom', 'gifted') : [];
  return [
    ...given,
    money(payer, value),
    money(record.from === 'stockroom' ? 'goods' : 'supplier', -value),
    ...credit(record.lines, 'issued', receiver),
  ];
}

function stallClose(record: RecordOf<'stall-close'>, worth: (lines: Units) => number): AuditLine[] {
  const damaged = record.damaged ?? {};
  const sold: Record<string, number> = {};
  for (const product of Object.keys({ ...record.out, ...record.back, ...damaged })) {
    sold[product] =
      (record.out[product] ?? 0) - (record.back[product] ?? 0) - (damaged[product] ?? 0);
  }
  const without = [
    money('cashbox', record.cash - record.float + record.cheques),
    money('cards', record.cards),
    money('fees', record.paidout ?? 0),
    money('goods', -worth(sold) - worth(damaged)),
    money('losses', worth(damaged)),
  ];
  const rest = -without.reduce((sum, line) => sum + line.amount, 0);
  return [
    ...stock(sold, 'stockroom', 'stall-sold'),
    ...stock(damaged, 'stockroom', 'lost'),
    ...without,
    money('overshort', rest),
    ...credit(sold, 'issued', `pool:stall:${record.stall}`),
  ];
}

/** A cheque whose payment is not there, or was removed, has nobody to go back to: only its fee. */
function bounced(record: RecordOf<'bounced'>, found: BookRecord | undefined): AuditLine[] {
  const fee = record.fee ?? 0;
  if (found?.kind !== 'payment') return [money('bank', -fee), money('fees', fee)];
  return [
    money('bank', -found.cents - fee),
    money(`owed:${found.seller}`, found.cents + (record.charge ? fee : 0)),
    money('fees', record.charge ? 0 : fee),
  ];
}

function loss(record: RecordOf<'loss'>, worth: (lines: Units) => number): AuditLine[] {
  const lines = record.lines ?? {};
  const debt = record.seller === undefined ? 0 : (record.cents ?? 0);
  return [
    ...stock(lines, 'stockroom', 'lost'),
    money('losses', worth(lines) + debt),
    money('goods', -worth(lines)),
    ...(record.seller === undefined ? [] : [money(`owed:${record.seller}`, -debt)]),
  ];
}

function till(record: { readonly tender: string }): string {
  return record.tender === 'card' ? 'cards' : 'cashbox';
}

function money(account: string, amount: number): AuditLine {
  return { ledger: 'money', account, of: '', amount };
}

function stock(lines: Units, from: string, to: string): AuditLine[] {
  return units('stock', lines, from, to);
}

function credit(lines: Units, from: string, to: string): AuditLine[] {
  return units('credit', lines, from, to);
}

function units(ledger: 'stock' | 'credit', lines: Units, from: string, to: string): AuditLine[] {
  return Object.entries(lines).flatMap(([of, amount]) => [
    { ledger, account: from, of, amount: -amount },
    { ledger, account: to, of, amount },
  ]);
}
