import { type Posting, postingsOf } from '../../../questions/postings-of.ts';
import type { MovementRecord } from '../../../records/record.ts';
import { accountName, productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

/** What a record moved, way by way; each account opens its running list. */
export function RecordMoves(props: { readonly record: MovementRecord; readonly stands: boolean }) {
  const { ledger } = useBook();
  const ways = Map.groupBy(
    postingsOf(ledger, props.record),
    (posting) => `${posting.ledger} ${posting.from} ${posting.to}`,
  );
  return (
    <section aria-labelledby="moves-head">
      <h2 class="column-head" id="moves-head">
        {props.stands ? say`What it moved` : say`What it would move`}
      </h2>
      {ways.size === 0 ? (
        <p class="none">{say`Nothing: it states a fact or a wish.`}</p>
      ) : (
        <ul class="moves">
          {[...ways].map(([way, postings]) => (
            <li key={way}>
              <Way postings={postings} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const ABOUT = { stock: say`Goods`, money: say`Money`, credit: say`Credit` } as const;
const SHAPES = { stock: 'goods', money: 'money', credit: 'goods' } as const;

/** Everything that went one way: from where to where, and what. */
function Way({ postings }: { readonly postings: readonly Posting[] }) {
  const { ledger } = useBook();
  const [first] = postings;
  if (first === undefined) return null;
  const { ledger: name, from, to } = first;
  const account = (id: string) => (
    <a href={`/accounts/${name}/${id}`}>{accountName(ledger, name, id, say)}</a>
  );
  return (
    <>
      <p class="move-way">
        <span class={`figure figure-${SHAPES[name]}`}>
          <span class={`shape shape-${SHAPES[name]}`} aria-hidden="true" />
          {ABOUT[name]}
        </span>{' '}
        {say.pieces`from ${account(from)} to ${account(to)}`}
      </p>
      <ul class="goods-lines">
        {postings.map((posting) => (
          <Amount key={posting.product ?? 'money'} posting={posting} />
        ))}
      </ul>
    </>
  );
}

function Amount({ posting }: { readonly posting: Posting }) {
  const { ledger, currency } = useBook();
  const { ledger: name, product, amount, to } = posting;
  if (product === undefined) {
    return (
      <li>
        <span>{say`Amount`}</span>
        <span class="number">{say.money(amount, currency)}</span>
      </li>
    );
  }
  return (
    <li>
      <a href={`/accounts/${name}/${to}?product=${product}`}>
        {productName(ledger.setup, product)}
      </a>
      <span class="number">{say.units(amount)}</span>
    </li>
  );
}
