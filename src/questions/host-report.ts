import { secondsBetween } from '../base/local-time.ts';
import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { soldAtStall } from '../ledger/posting.ts';
import type { RecordOf } from '../records/record.ts';
import { unitsOf } from '../records/units-of.ts';

/** What a host shop's stalls sold over the season; no seller is in it, so the shop may have it. */
export interface HostReport {
  readonly host: string;
  /** In the order of their start. */
  readonly stalls: readonly HostStall[];
  /** In the fixed order of their ids; only products that were sold. */
  readonly products: readonly HostProduct[];
  /** Minutes that the settled stalls were open, units they sold, and their price in minor units. */
  readonly minutes: number;
  readonly units: number;
  readonly value: number;
}

export interface HostStall {
  readonly stall: string;
  readonly starts: string;
  readonly ends: string;
  readonly minutes: number;
  /** False while its goods were not counted: it adds nothing to the sums. */
  readonly settled: boolean;
  readonly units: number;
  readonly value: number;
}

export interface HostProduct {
  readonly product: string;
  readonly units: number;
  /** At the price of each stall's day, in minor units. */
  readonly value: number;
}

/** Undefined where the book has no such host shop. */
export function hostReport(ledger: Ledger, host: string): HostReport | undefined {
  if (!ledger.setup.hosts.has(host)) return undefined;
  const closes = ledger.movements().filter((movement) => movement.kind === 'stall-close');
  const products = new Map<string, HostProduct>();
  const stalls = [...ledger.setup.stalls.values()]
    .filter((stall) => stall.host === host)
    .sort((a, b) => byText(a.starts, b.starts) || byText(a.stall, b.stall))
    .map((stall) => {
      const own = closes.filter((close) => close.stall === stall.stall);
      return stallOf(ledger, stall, own, products);
    });
  const settled = stalls.filter((stall) => stall.settled);
  const sum = (of: (stall: HostStall) => number) => settled.reduce((all, one) => all + of(one), 0);
  return {
    host,
    stalls,
    products: [...products.values()]
      .filter(({ units }) => units !== 0)
      .sort((a, b) => byText(a.product, b.product)),
    minutes: sum((stall) => stall.minutes),
    units: sum((stall) => stall.units),
    value: sum((stall) => stall.value),
  };
}

/** A stall with what it sold, which is added to the products too. */
function stallOf(
  ledger: Ledger,
  { stall, starts, ends }: RecordOf<'stall'>,
  closes: readonly RecordOf<'stall-close'>[],
  products: Map<string, HostProduct>,
): HostStall {
  let units = 0;
  let value = 0;
  for (const close of closes) {
    const sold = soldAtStall(close);
    for (const product of Object.keys(sold)) {
      const many = unitsOf(sold, product);
      const worth = many * ledger.priceOn(product, close.date);
      const before = products.get(product) ?? { product, units: 0, value: 0 };
      products.set(product, {
        product,
        units: before.units + many,
        value: before.value + worth,
      });
      units += many;
      value += worth;
    }
  }
  const minutes = Math.max(0, secondsBetween(starts, ends) / 60);
  return { stall, starts, ends, minutes, settled: closes.length > 0, units, value };
}
