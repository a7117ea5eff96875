import '../../styles/tasks.css';
import './stall.css';
import './sell.css';
import { useEffect } from 'preact/hooks';
import { currentBuyer } from '../../../questions/stall/buyer.ts';
import type { RecordOf } from '../../../records/record.ts';
import { unitsOf } from '../../../records/units-of.ts';
import { hostName } from '../../../statements/account-name.ts';
import { stallTimeText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { StopSale } from '../../parts/stop-sale.tsx';
import type { ScreenProps } from '../../routes.ts';
import { say } from '../../say.ts';
import { BuyerPanel } from './buyer-panel.tsx';
import { NoStall } from './no-stall.tsx';
import { StallSteps } from './stall-steps.tsx';
import { useSheet } from './use-sheet.ts';

/** Selling at a stall: one tap a unit, one tap takes the last one back. */
export function SellScreen({ params }: ScreenProps) {
  const stall = useBook().ledger.setup.stalls.get(params.stall ?? '');
  return stall === undefined ? <NoStall /> : <Selling key={stall.stall} stall={stall} />;
}

function Selling({ stall }: { readonly stall: RecordOf<'stall'> }) {
  const { ledger, signs } = useBook();
  const open = useSheet(stall);
  const { sheet } = open;
  useAwake();
  const day = stall.starts.slice(0, 10);
  const products = [...ledger.setup.products.values()].filter(
    ({ product, retired }) => !retired || product in sheet.sold,
  );
  return (
    <Page
      title={say`Sales at ${hostName(ledger.setup, stall.host)}`}
      above={<a href={`/stalls/${stall.stall}`}>{say`The stall`}</a>}
      lead={say`${stallTimeText(stall.starts, stall.ends, say)}. One tap is one unit sold.`}
    >
      {open.isFull && <NoRoom />}
      <div class="sell-products">
        {products.map((product) => (
          <ProductButton
            key={product.product}
            product={product}
            day={day}
            units={unitsOf(sheet.sold, product.product)}
            onSale={() => open.write('sold', { lines: { [product.product]: 1 } })}
          />
        ))}
      </div>
      <BuyerPanel open={open} buyer={currentBuyer(sheet.entries, signs)} day={day} />
      <StallSteps stall={stall} open={open} />
    </Page>
  );
}

/** A phone between two buyers stays on, where it can. */
function useAwake() {
  useEffect(() => {
    const wake = () => navigator.wakeLock?.request('screen').catch(() => undefined);
    const lock = wake();
    return () => void lock?.then((held) => held?.release());
  }, []);
}

function NoRoom() {
  return (
    <Notice tone="stop" title={say`This device has no room left.`}>
      <p>{say`The sales stay only while this page is open. Write them on paper, too.`}</p>
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
        <b>{name}</b>{' '}
        <span class="sell-price">
          <Money minor={ledger.priceOn(product, props.day)} plain />
        </span>{' '}
        <span class="sell-count">{say.count(props.units)`# sold|# sold`}</span>
      </button>
      <StopSale product={product} />
    </div>
  );
}
