import { type StallSettlement, stallSettlement } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { HaveAgainstShould } from '../../parts/have-against-should.tsx';
import { type Column, Table } from '../../parts/table.tsx';

type Sold = StallSettlement['products'][number];

/** A settled stall as it was saved: sold × price, the money, the difference, who counted. */
export function SettledFacts(props: {
  readonly close: RecordOf<'stall-close'>;
  readonly onEdit: () => void;
}) {
  const { ledger } = useBook();
  const closed = useClosed() !== undefined;
  const { tally: _tally, ...counted } = props.close;
  const answer = stallSettlement(ledger, counted);
  const units = (head: string, of: (sold: Sold) => number): Column<Sold> => ({
    head,
    number: true,
    cell: (sold) => <Units units={of(sold)} plain />,
  });
  const columns: readonly Column<Sold>[] = [
    { head: 'Product', cell: (sold) => productName(ledger.setup, sold.product) },
    units('Out', (sold) => sold.out),
    units('Back', (sold) => sold.back),
    { ...units('Damaged', (sold) => sold.damaged), wide: true },
    units('Sold', (sold) => sold.sold),
    {
      head: 'Price',
      number: true,
      wide: true,
      cell: (sold) => <Money minor={sold.price} plain />,
    },
    { head: 'Should have', number: true, cell: (sold) => <Money minor={sold.value} plain /> },
  ];
  return (
    <>
      <Table
        caption="What the stall sold"
        hideCaption
        rows={answer.products}
        keyOf={(sold) => sold.product}
        columns={columns}
        foot={[
          'Together',
          '',
          '',
          '',
          <Units key="sold" units={answer.sold} plain />,
          '',
          <Money key="should" minor={answer.should} plain />,
        ]}
      />
      <HaveAgainstShould should={answer.should} have={answer.have} difference={answer.difference} />
      <MoneyLine close={props.close} />
      <p class="button-row">
        {!closed && <Button onClick={props.onEdit}>Edit</Button>}
        <a class="button button-plain" href={`/records/${props.close.id}`}>
          Open the record
        </a>
      </p>
    </>
  );
}

function MoneyLine({ close }: { readonly close: RecordOf<'stall-close'> }) {
  const paidout = close.paidout ?? 0;
  return (
    <p>
      Cash <Money minor={close.cash} plain />, of it float <Money minor={close.float} plain />,
      cards <Money minor={close.cards} plain />, cheques <Money minor={close.cheques} plain />
      {paidout > 0 && (
        <>
          , paid out <Money minor={paidout} plain />
        </>
      )}
      .{' '}
      {close.counters === undefined
        ? 'Counted by one person.'
        : `Counted by ${close.counters.join(' and ')}.`}
      {close.note && ` ${close.note}`}
    </p>
  );
}
