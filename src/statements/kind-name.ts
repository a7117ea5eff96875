import type { Kind } from '../records/record.ts';
import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';

/** The group's own word for a kind of record, as a heading or on a button. */
export function kindName(kind: Kind, say: Say): string {
  return kindNames(say)[kind];
}

export const kindNames = onceEach(
  (say): Readonly<Record<Kind, string>> => ({
    season: say`Season`,
    product: say`Product`,
    hold: say`Stop-sale`,
    family: say`Family`,
    seller: say`Seller`,
    host: say`Host shop`,
    neighbour: say`Neighbour group`,
    stall: say`Stall`,
    level: say`Prize step`,
    choice: say`Prize choice`,
    proceeds: say`Proceeds steps`,
    order: say`Family order`,
    'supply-order': say`Order to the supplier`,
    delivery: say`Delivery`,
    'swap-in': say`Swap in`,
    'swap-out': say`Swap out`,
    exchange: say`Exchange`,
    handover: say`Goods out`,
    return: say`Goods back`,
    pass: say`Pass on`,
    online: say`Online order`,
    gift: say`Gift units`,
    'stall-close': say`Stall settled`,
    shareout: say`Share-out`,
    payment: say`Payment`,
    refund: say`Refund`,
    deposit: say`Deposit`,
    'card-settle': say`Card payout`,
    debit: say`Debit`,
    'debit-returned': say`Returned debit`,
    'bank-fee': say`Bank fee`,
    bounced: say`Bounced cheque`,
    loss: say`Write-off`,
    found: say`Found`,
    count: say.as('noun')`Count`,
    settle: say`Proceeds`,
    void: say`Removal`,
  }),
);
