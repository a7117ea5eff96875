import { type StallSettlement, stallSettlement } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { HaveAgainstShould } from '../../parts/have-against-should.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

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
    { head: say`Product`, cell: (sold) => productName(ledger.setup, sold.product) },
    units(say`Out`, (sold) => sold.out),
    units(say`Back`, (sold) => sold.back),
    { ...units(say`Damaged`, (sold) => sold.damaged), wide: true },
    units(say`Sold`, (sold) => sold.sold),
    {
      head: say`Price`,
      number: true,
      wide: true,
      cell: (sold) => <Money minor={sold.price} plain />,
    },
    { head: say`Should have`, number: true, cell: (sold) => <Money minor={sold.value} plain /> },
  ];
  return (
    <>
      <Table
        caption={say`What the stall sold`}
        hideCaption
        rows={answer.products}
        keyOf={(sold) => sold.product}
        columns={columns}
        foot={[
          say`Together`,
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
        {!closed && <Button onClick={props.onEdit}>{say`Edit`}</Button>}
        <a class="button button-plain" href={`/records/${props.close.id}`}>
          {say`Open the record`}
        </a>
      </p>
    </>
  );
}

function MoneyLine({ close }: { readonly close: RecordOf<'stall-close'> }) {
  const { currency } = useBook();
  const money = (minor: number) => say.money(minor, currency);
  const paidout = close.paidout ?? 0;
  return (
    <p>
      {say`Cash ${money(close.cash)}, of it float ${money(close.float)}, cards
        ${money(close.cards)}, cheques ${money(close.cheques)}.`}{' '}
      {paidout > 0 && `${say`Paid out ${money(paidout)}.`} `}
      {close.counters === undefined
        ? say`Counted by one person.`
        : say`Counted by ${say.list(close.counters)}.`}
      {close.note && ` ${close.note}`}
    </p>
  );
}
