import { useMemo } from 'preact/hooks';
import { inBook, placeKind } from '../../../questions/explain/seen.ts';
import { useBook } from '../../book.ts';
import { AmountField } from '../../parts/amount-field.tsx';
import { CheckField, ChoiceField, fieldId } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import type { PlaceTyped } from './asked.ts';
import { type PlaceWords, placeWords } from './place-words.ts';

interface SeenPlaceProps {
  readonly place: string;
  readonly day: string;
  readonly typed: PlaceTyped;
  /** Asked beside another place, to tell explanations apart: that it agrees says something too. */
  readonly mayAgree: boolean;
  readonly errorOf: (field: string) => string | undefined;
  readonly onTyped: (typed: PlaceTyped) => void;
}

/** The figures of one place: goods by product beside the book's, and money with its direction. */
export function SeenPlace(props: SeenPlaceProps) {
  const book = useBook();
  const { ledger } = book;
  const { place, day, typed, onTyped } = props;
  const known = useMemo(() => inBook(ledger, place, day), [place, day, book.version.value]);
  const words = placeWords(ledger.setup, place);
  const kind = placeKind(ledger, place);
  const isGoods = kind === 'goods' || kind === 'seller';
  return (
    <section class="seen-place" aria-label={words.title}>
      <h2>{words.title}</h2>
      <p class="field-hint">{words.hint}</p>
      {isGoods && <Goods {...props} book={known.units} />}
      {words.money !== undefined && (
        <SeenMoney {...props} words={words} label={words.money} book={known.minor ?? 0} />
      )}
      {props.mayAgree && (
        <CheckField
          label={say`Looked at, and all of it agrees with the book`}
          checked={typed.agrees}
          onChecked={(agrees) => onTyped({ ...typed, agrees })}
        />
      )}
    </section>
  );
}

function SeenMoney(
  props: SeenPlaceProps & {
    readonly words: PlaceWords;
    readonly label: string;
    readonly book: number;
  },
) {
  const { currency } = useBook();
  const { place, typed, onTyped, words, book } = props;
  const side = words.sides?.[book < 0 ? 1 : 0] ?? '';
  const shown = words.sides === undefined ? book : Math.abs(book);
  return (
    <div class="side-by-side">
      <AmountField
        label={props.label}
        name={place}
        hint={say`By the book: ${say.money(shown, currency)} ${side}`.trimEnd()}
        error={props.errorOf(place)}
        value={typed.money}
        onValue={(money) => onTyped({ ...typed, money })}
      />
      {words.sides !== undefined && (
        <ChoiceField
          label={say`${words.title}: which way`}
          name={`${place}.side`}
          value={typed.below ? 'below' : 'above'}
          onValue={(to) => onTyped({ ...typed, below: to === 'below' })}
          options={[
            { value: 'above', words: words.sides[0] },
            { value: 'below', words: words.sides[1] },
          ]}
        />
      )}
    </div>
  );
}

type GoodsProps = SeenPlaceProps & { readonly book: Readonly<Record<string, number>> };

function Goods(props: GoodsProps) {
  const { setup } = useBook().ledger;
  return (
    <table class="lines-table seen-goods">
      <thead>
        <tr>
          <th scope="col">{say`Product`}</th>
          <th scope="col" class="number">
            {say`By the book`}
          </th>
          <th scope="col">{say`Seen`}</th>
        </tr>
      </thead>
      <tbody>
        {[...setup.products.values()].map(({ product, name }) => (
          <GoodsRow {...props} key={product} product={product} name={name} />
        ))}
      </tbody>
    </table>
  );
}

function GoodsRow(props: GoodsProps & { readonly product: string; readonly name: string }) {
  const { place, typed, onTyped, product, name } = props;
  const field = `${place}.${product}`;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="number">{say.units(props.book[product] ?? 0)}</td>
      <td>
        <input
          type="text"
          inputMode="numeric"
          autocomplete="off"
          class="number lines-input"
          id={fieldId(field)}
          aria-label={say`${name}, units seen`}
          aria-invalid={props.errorOf(field) === undefined ? undefined : 'true'}
          value={typed.units[product] ?? ''}
          onInput={(event) => {
            const units = { ...typed.units, [product]: event.currentTarget.value };
            onTyped({ ...typed, units });
          }}
        />
      </td>
    </tr>
  );
}
