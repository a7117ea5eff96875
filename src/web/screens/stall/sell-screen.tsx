import '../../styles/tasks.css';
import './stall.css';
import { useState } from 'preact/hooks';
import { valueOfLines } from '../../../questions/value-of-lines.ts';
import type { RecordOf } from '../../../records/record.ts';
import { hostName, productName } from '../../../statements/account-name.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { StopSale } from '../../parts/stop-sale.tsx';
import type { ScreenProps } from '../../routes.ts';
import { keepTally, keptTally, type SalesTally, unitsTapped } from './sales-tally.ts';

/** Selling at a stall: one tap a unit, one tap takes the last one back. */
export function SellScreen({ params }: ScreenProps) {
  const { ledger } = useBook();
  const stall = ledger.setup.stalls.get(params.stall ?? '');
  if (stall === undefined) {
    return (
      <Page title="Stall" above={<a href="/stalls">Stalls</a>}>
        <p>There is no such stall in this book.</p>
      </Page>
    );
  }
  return <Selling key={stall.stall} stall={stall} />;
}

function Selling({ stall }: { readonly stall: RecordOf<'stall'> }) {
  const { ledger } = useBook();
  const { tally, isKept, change } = useTally(stall.stall);
  const day = stall.starts.slice(0, 10);
  const units = unitsTapped(tally);
  const products = [...ledger.setup.products.values()].filter(
    ({ product, retired }) => !retired || product in units,
  );
  const last = tally.at(-1);
  return (
    <Page
      title={`Sales at ${hostName(ledger.setup, stall.host)}`}
      above={<a href={`/stalls/${stall.stall}`}>The stall</a>}
      lead={`${stallTimeText(stall.starts, stall.ends)}. One tap is one unit sold.`}
    >
      {!isKept && <NoRoom />}
      <div class="sell-total">
        <p class="figures" role="status">
          <Units units={tally.length} word="sold" />{' '}
          <Money minor={valueOfLines(ledger, units, day).minor} />
        </p>
        <Button disabled={last === undefined} onClick={() => change(tally.slice(0, -1))}>
          {last === undefined ? 'Undo' : `Undo ${productName(ledger.setup, last)}`}
        </Button>
      </div>
      <div class="sell-products">
        {products.map((product) => (
          <ProductButton
            key={product.product}
            product={product}
            day={day}
            units={units[product.product] ?? 0}
            onSale={() => change([...tally, product.product])}
          />
        ))}
      </div>
      <div class="form-end">
        <a class="button button-plain" href={`/stalls/${stall.stall}`}>
          Settle the stall
        </a>
      </div>
      <p class="soft">
        The sales stay on this device. What is settled is the count of goods and money; the sales
        stand beside it.
      </p>
    </Page>
  );
}

/** The tally of a stall, kept on this device with every tap. */
function useTally(stall: string) {
  const { address } = useBook();
  const [tally, setTally] = useState(() => keptTally(address, stall, localStorage));
  const [isKept, setKept] = useState(true);
  const change = (next: SalesTally) => {
    setTally(next);
    setKept(keepTally(address, stall, next, localStorage));
  };
  return { tally, isKept, change };
}

function NoRoom() {
  return (
    <Notice tone="stop" title="This device has no room left.">
      <p>The sales stay only while this page is open. Write them on paper, too.</p>
    </Notice>
  );
}

function ProductButton(props: {
  readonly product: RecordOf<'product'>;
  readonly day: string;
  readonly units: number;
  readonly onSale: () => void;
}) {
  const { ledger } = useBook();
  const { product, name } = props.product;
  return (
    <div>
      <button type="button" class="sell-product" onClick={props.onSale}>
        <b>{name}</b> <Money minor={ledger.priceOn(product, props.day)} plain />{' '}
        <span class="sell-count">{props.units} sold</span>
      </button>
      <StopSale product={product} />
    </div>
  );
}
