import { type ProofPart, places } from '../../../questions/places.ts';
import { moneyText, unitsText } from '../../../statements/money-text.ts';
import { proofPartName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Table } from '../../parts/table.tsx';

/** The figures behind the bars of the total, each table with its sum. */
export function ProofTables() {
  const { ledger, currency } = useBook();
  const { units, money } = places(ledger);
  const minor = (amount: number) => moneyText(amount, currency);
  return (
    <>
      <Parts
        caption="Units"
        side="units"
        parts={units.parts}
        sum={units.accounted}
        text={unitsText}
      />
      <Parts
        caption="Where the money is"
        side="held"
        parts={money.parts}
        sum={money.accounted}
        text={minor}
      />
      <Parts
        caption="Owed or earned"
        side="owed"
        parts={money.owedParts}
        sum={money.owed}
        text={minor}
      />
    </>
  );
}

function Parts(props: {
  readonly caption: string;
  readonly side: 'units' | 'held' | 'owed';
  readonly parts: readonly ProofPart[];
  readonly sum: number;
  readonly text: (amount: number) => string;
}) {
  const { side, text } = props;
  return (
    <Table
      caption={props.caption}
      rows={props.parts}
      keyOf={({ part }) => part}
      columns={[
        { head: 'Where', cell: ({ part }) => proofPartName(part, side) },
        { head: 'Amount', number: true, cell: ({ amount }) => text(amount) },
      ]}
      foot={['Together', text(props.sum)]}
    />
  );
}
