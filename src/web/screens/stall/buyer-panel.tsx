import type { Buyer } from '../../../questions/stall/buyer.ts';
import { changeDue, tenderOffers } from '../../../questions/stall/tender.ts';
import { valueOfLines } from '../../../questions/value-of-lines.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { say } from '../../say.ts';
import type { OpenSheet } from './use-sheet.ts';

/**
 * The buyer who is served now: what it comes to, what is handed over, the change. It keeps its
 * place and its height, so that no product button moves under a thumb.
 */
export function BuyerPanel(props: {
  readonly open: OpenSheet;
  readonly buyer: Buyer;
  readonly day: string;
}) {
  const { ledger } = useBook();
  const { open, buyer } = props;
  const total = valueOfLines(ledger, buyer.lines, props.day).minor;
  return (
    <section class="buyer" aria-label={say`This buyer`}>
      <div class="buyer-line">
        <p class="buyer-total">
          {say`This buyer`}
          <span>
            <Units units={buyer.units} /> <Money minor={total} />
          </span>
        </p>
        <UndoLast open={open} last={buyer.last} />
      </div>
      <fieldset class="buyer-pay">
        <legend class="only-read">{say`Handed over`}</legend>
        {buyer.paid === undefined ? (
          <Tenders open={open} total={total} isNobody={buyer.units === 0} />
        ) : (
          <ChangeDue paid={buyer.paid} total={total} />
        )}
      </fieldset>
      <KeptLine open={open} />
    </section>
  );
}

function UndoLast({ open, last }: { readonly open: OpenSheet; readonly last: Buyer['last'] }) {
  const { ledger } = useBook();
  const [product = ''] = Object.keys(last?.lines ?? {});
  const what = last?.what === 'paid' ? say`the payment` : productName(ledger.setup, product);
  return (
    <Button
      disabled={last === undefined}
      onClick={() => last !== undefined && open.write('undo', { of: [last.id] })}
    >
      {last === undefined ? say`Undo` : say`Undo ${what}`}
    </Button>
  );
}

/** What a buyer is likely to hand over; a tap shows the change and ends the buyer. */
function Tenders(props: {
  readonly open: OpenSheet;
  readonly total: number;
  readonly isNobody: boolean;
}) {
  const { currency } = useBook();
  const { open, total } = props;
  if (props.isNobody) return <p class="soft">{say`Tap what is sold. Each tap counts at once.`}</p>;
  const pay = (tender: 'cash' | 'card' | 'cheque', handed?: number) =>
    open.write('paid', { tender, ...(handed === undefined ? {} : { handed }) });
  return (
    <>
      {tenderOffers(total, currency).map((amount) => (
        <button type="button" class="chip-button" key={amount} onClick={() => pay('cash', amount)}>
          <b>{say.money(amount, currency)}</b>
          {amount === total && ` ${say`exact`}`}
        </button>
      ))}
      <Button onClick={() => pay('card')}>{say`Card`}</Button>
      <Button onClick={() => pay('cheque')}>{say`Cheque`}</Button>
      <Button onClick={() => open.write('paid')}>{say`Next buyer`}</Button>
    </>
  );
}

function ChangeDue({ paid, total }: { readonly paid: Buyer['paid']; readonly total: number }) {
  const { currency } = useBook();
  if (paid?.handed === undefined) {
    return <p class="buyer-change">{say`Done. The next tap is the next buyer.`}</p>;
  }
  const { change, pieces } = changeDue(total, paid.handed, currency);
  const coins = pieces.map(({ value, count }) => `${count} × ${say.money(value, currency)}`);
  return (
    <p class="buyer-change">
      <strong>{say`Change ${say.money(change, currency)}`}</strong>{' '}
      <span>{change > 0 ? coins.join(' + ') : say`Nothing to give back.`}</span>
    </p>
  );
}

/** "Saved on this phone" is said only of what the disk has. */
function KeptLine({ open }: { readonly open: OpenSheet }) {
  const { sheet, notKept } = open;
  return (
    <p class="buyer-kept">
      <span role="status">{say`${sheet.soldUnits} sold`}</span>
      {sheet.entries.length > 0 && (
        <span class={notKept > 0 ? 'soft' : 'phone-mark'}>
          {notKept > 0 ? say`${notKept} not saved yet` : say`Saved on this phone`}
        </span>
      )}
    </p>
  );
}
