import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord } from '../../records/record.ts';

/** How much of a deposit is cheques (minor units). */
export interface DepositCheques {
  readonly deposit: string;
  readonly date: string;
  readonly cheques: number;
}

/**
 * The cheques in each deposit: those of the receipts it names, else of the oldest that waited, as
 * far as its amount goes. Cheques that have come back meanwhile are no longer among them.
 */
export function chequesInDeposits(ledger: Ledger): DepositCheques[] {
  const movements = ledger.movements();
  const back = new Set(
    movements.flatMap((each) =>
      each.kind === 'bounced' ? (ledger.standing.currentOf(each.payment)?.id ?? []) : [],
    ),
  );
  const waiting = new Map<string, { cents: number; cheques: number }>();
  return movements.flatMap((movement) => {
    const receipt = receiptOf(movement);
    if (receipt !== undefined) waiting.set(movement.id, receipt);
    if (movement.kind !== 'deposit') return [];
    const named = movement.items?.map((id) => ledger.standing.currentOf(id)?.id ?? id);
    let cheques = 0;
    let left = movement.cents;
    for (const id of named ?? [...waiting.keys()]) {
      const each = waiting.get(id);
      if (each === undefined || (named === undefined && left <= 0)) continue;
      left -= each.cents;
      if (!back.has(id)) cheques += each.cheques;
      waiting.delete(id);
    }
    return [{ deposit: movement.id, date: movement.date, cheques }];
  });
}

function receiptOf(movement: MovementRecord): { cents: number; cheques: number } | undefined {
  if (movement.kind === 'payment') {
    if (movement.tender === 'card') return undefined;
    return { cents: movement.cents, cheques: movement.tender === 'cheque' ? movement.cents : 0 };
  }
  if (movement.kind !== 'stall-close') return undefined;
  const { cash, float, cheques } = movement;
  return { cents: cash - float + cheques, cheques };
}
