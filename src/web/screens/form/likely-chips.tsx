import { useMemo } from 'preact/hooks';
import { type LikelyFor, likelySellers } from '../../../questions/likely-sellers.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

const WORDS: Readonly<Record<LikelyFor, string>> = {
  due: say`Still to pay`,
  credit: say`In credit`,
  goods: say`With goods out`,
  orders: say`Ordered, not taken yet`,
};

/** The sellers a record is most likely about, one tap each; the list above has them all. */
export function LikelyChips(props: {
  readonly likely: LikelyFor;
  readonly chosen: string;
  readonly onSeller: (seller: string) => void;
}) {
  const { ledger, currency, version } = useBook();
  const { likely, chosen } = props;
  // Asked once a record arrives, not at every letter that is typed into the form.
  const sellers = useMemo(() => likelySellers(ledger, likely), [version.value, likely]);
  if (sellers.length === 0) return null;
  const isMoney = likely === 'due' || likely === 'credit';
  return (
    <fieldset class="likely">
      <legend class="field-hint">{WORDS[likely]}</legend>
      <div class="chips">
        {sellers.map(({ seller, name, size }) => (
          <button
            key={seller}
            type="button"
            class="chip-button"
            aria-pressed={seller === chosen}
            onClick={() => props.onSeller(seller)}
          >
            <b>{name}</b> {isMoney ? say.money(size, currency) : say.count(size)`# unit|# units`}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
