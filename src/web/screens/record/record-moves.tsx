import { type Posting, postingsOf } from '../../../questions/postings-of.ts';
import type { MovementRecord } from '../../../records/record.ts';
import { accountName, productName } from '../../../statements/account-name.ts';
import { moneyText, unitsText } from '../../../statements/money-text.ts';
import { useBook } from '../../book.ts';

/** What a record moved, from one account to another; each account opens its running list. */
export function RecordMoves(props: { readonly record: MovementRecord; readonly stands: boolean }) {
  const { ledger } = useBook();
  const postings = postingsOf(ledger, props.record);
  return (
    <section aria-labelledby="moves-head">
      <h2 class="column-head" id="moves-head">
        {props.stands ? 'What it moved' : 'What it would move'}
      </h2>
      {postings.length === 0 ? (
        <p class="none">Nothing: it states a fact or a wish.</p>
      ) : (
        <ul class="moves">
          {postings.map((posting) => (
            <Move
              key={`${posting.ledger} ${posting.product} ${posting.from} ${posting.to}`}
              posting={posting}
            />
          ))}
        </ul>
      )}
    </section>
  );
}

function Move({ posting }: { readonly posting: Posting }) {
  const { ledger, currency } = useBook();
  const { ledger: name, product, amount, from, to } = posting;
  const goods = name === 'money' ? '' : `?product=${product ?? ''}`;
  const account = (id: string) => (
    <a href={`/accounts/${name}/${id}${goods}`}>{accountName(ledger, name, id)}</a>
  );
  const words = { stock: 'goods', money: 'money', credit: 'goods' } as const;
  return (
    <li>
      <span class={`figure figure-${words[name]}`}>
        <span class={`shape shape-${words[name]}`} aria-hidden="true" />
        {name === 'money'
          ? moneyText(amount, currency)
          : `${unitsText(amount)} ${productName(ledger.setup, product ?? '')}`}
      </span>
      {name === 'credit' && <span class="soft"> of credit</span>}{' '}
      <span class="move-way">
        from {account(from)} to {account(to)}
      </span>
    </li>
  );
}
