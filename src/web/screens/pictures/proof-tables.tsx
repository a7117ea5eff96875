import { type ProofPart, places } from '../../../questions/places.ts';
import { proofPartName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** The figures behind the bars of the total, each table with its sum. */
export function ProofTables() {
  const { ledger, currency } = useBook();
  const { units, money } = places(ledger);
  const minor = (amount: number) => say.money(amount, currency);
  return (
    <>
      <Parts
        caption={say`Units`}
        side="units"
        parts={units.parts}
        sum={units.accounted}
        text={say.units}
      />
      <Parts
        caption={say`Where the money is`}
        side="held"
        parts={money.parts}
        sum={money.accounted}
        text={minor}
      />
      <Parts
        caption={say`Owed or earned`}
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
        { head: say`Where`, cell: ({ part }) => proofPartName(part, side, say) },
        { head: say`Amount`, number: true, cell: ({ amount }) => text(amount) },
      ]}
      foot={[say`Together`, text(props.sum)]}
    />
  );
}
