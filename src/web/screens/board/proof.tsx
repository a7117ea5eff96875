import type { Places, ProofPart } from '../../../questions/places.ts';
import { proofPartName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Unfolding } from '../../parts/unfolding.tsx';
import { say } from '../../say.ts';

const proofTables = async () => (await import('../pictures/proof-tables.tsx')).ProofTables;

/**
 * The top line proves the total: units in are units accounted for, and what the group owes or
 * earned is matched by where that money is. Each bar adds the places up to the total.
 */
export function Proof({ places }: { readonly places: Places }) {
  const { currency } = useBook();
  const { units, money } = places;
  const text = (minor: number) => say.money(minor, currency);
  return (
    <section class="proof" aria-label={say`Total`}>
      <figure class="proof-line" aria-labelledby="proof-units">
        <figcaption class="proof-sum" id="proof-units">
          <span class="shape shape-goods figure-goods" aria-hidden="true" />
          {say.pieces`${<b>{say.units(units.in)}</b>} units in =
            ${<b>{say.units(units.accounted)}</b>} accounted for`}
          {units.in === units.accounted && <span class="proof-agrees"> ✓</span>}
        </figcaption>
        <SumBar about="goods" side="units" parts={units.parts} text={say.units} />
      </figure>
      <figure class="proof-line" aria-labelledby="proof-money">
        <figcaption class="proof-sum" id="proof-money">
          <span class="shape shape-money figure-money" aria-hidden="true" />
          {say.pieces`${<b>{text(money.owed)}</b>} owed or earned =
            ${<b>{text(money.accounted)}</b>} accounted for`}
          {money.owed === money.accounted && <span class="proof-agrees"> ✓</span>}
        </figcaption>
        <SumBar about="money" side="held" parts={money.parts} text={text} />
        {money.owedParts.length > 0 && (
          <p class="proof-owed">
            {money.owedParts
              .map(({ part, amount }) => `${proofPartName(part, 'owed', say)} ${text(amount)}`)
              .join(' + ')}
          </p>
        )}
      </figure>
      <Unfolding words={say`The same as tables`} look="proof-tables" load={proofTables} />
    </section>
  );
}

/** A bar of the parts, each as wide as its share, with their figures in words below. */
function SumBar(props: {
  readonly about: 'goods' | 'money';
  readonly side: 'units' | 'held';
  readonly parts: readonly ProofPart[];
  readonly text: (amount: number) => string;
}) {
  const shown = props.parts.filter(({ amount }) => amount !== 0);
  return (
    <div class={`sum-bar figure-${props.about}`}>
      <div class="sum-bar-parts" aria-hidden="true">
        {shown.map(({ part, amount }) => (
          <span key={part} style={{ flexGrow: Math.max(amount, 0) }} />
        ))}
      </div>
      <ul class="sum-bar-words">
        {shown.map(({ part, amount }) => (
          <li key={part}>
            {proofPartName(part, props.side, say)} {props.text(Math.abs(amount))}
            {amount < 0 && ` ${say`more out than in`}`}
          </li>
        ))}
      </ul>
    </div>
  );
}
