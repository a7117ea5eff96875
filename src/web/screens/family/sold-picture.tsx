import { type SoldAgainstGoal, soldAgainstGoal } from '../../../questions/sold-against-goal.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { GoalBar } from '../../parts/goal-bar.tsx';
import { Picture } from '../../parts/picture.tsx';
import { Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/**
 * What the family's sellers have sold against their own goals. It stands on the family's own page
 * alone; there is no page that sets one seller beside another family's.
 */
export function SoldPicture({ family }: { readonly family: string }) {
  const sellers = soldAgainstGoal(useBook().ledger, family);
  if (sellers.length === 0) return null;
  return (
    <section aria-labelledby="sold" class="no-print">
      <h2 id="sold">{say`Sold against the goal`}</h2>
      {sellers.map((seller) => (
        <Sold key={seller.seller} sold={seller} />
      ))}
    </section>
  );
}

function Sold({ sold }: { readonly sold: SoldAgainstGoal }) {
  const { goal } = sold;
  return (
    <Picture about="goods" name={inWords(sold)} table={<SoldTable sold={sold} />}>
      {goal === undefined ? (
        <p class="soft no-print">
          {say.pieces`No goal yet: ${<a href="/set-up/sellers">{say`choose one`}</a>}.`}
        </p>
      ) : (
        <GoalBar have={sold.sold} goal={goal} />
      )}
    </Picture>
  );
}

function inWords({ name, sold, goal, toGoal }: SoldAgainstGoal): string {
  if (goal === undefined || toGoal === undefined) return say`${name}: ${sold} units sold.`;
  if (toGoal === 0) return say`${name}: ${sold} units sold, the goal of ${goal} is reached.`;
  return say`${name}: ${sold} units sold of ${goal}, ${toGoal} to go.`;
}

function SoldTable({ sold }: { readonly sold: SoldAgainstGoal }) {
  const { levels } = useBook().ledger.setup;
  const { next, goal, toGoal, seller } = sold;
  const credit = `/accounts/credit/seller:${seller}`;
  const rows = [
    { words: say`Sold, in units of credit`, units: sold.sold, to: credit },
    { words: say`Goal`, units: goal },
    { words: say`To the goal`, units: toGoal },
    {
      words: say`Next prize step: ${levels.get(next?.level ?? '')?.prize ?? ''}`,
      units: next?.units,
    },
    { words: say`To that step`, units: next?.left },
  ].filter((row) => row.units !== undefined);
  return (
    <Table
      caption={say`Sold by ${sold.name}`}
      hideCaption
      rows={rows}
      keyOf={({ words }) => words}
      columns={[
        { head: say`What`, cell: ({ words }) => words },
        {
          head: say`Units`,
          number: true,
          cell: ({ units, to }) => <Units units={units ?? 0} plain to={to} />,
        },
      ]}
    />
  );
}
