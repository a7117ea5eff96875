import { useMemo } from 'preact/hooks';
import type { ShareSheet } from '../../../questions/share/share-sheet.ts';
import type { ShareCheck } from '../../../questions/share-check.ts';
import { unitsOf } from '../../../records/units-of.ts';
import { productName, sellerName } from '../../../statements/account-name.ts';
import { partsText } from '../../../statements/parts-text.ts';
import { useBook } from '../../book.ts';
import { fieldId } from '../../parts/field.tsx';
import type { FieldError } from '../../parts/notice.tsx';
import { ScrollBox } from '../../parts/scroll-box.tsx';
import { say } from '../../say.ts';
import { type OnCell, ShareCell } from './share-cell.tsx';
import { cellField, type SheetTyped, weightField } from './sheet-typed.ts';

interface TableProps {
  readonly sheet: ShareSheet;
  /** What is left as the cells stand, also while the rest cannot be shared around them. */
  readonly check: ShareCheck;
  readonly typed: SheetTyped;
  readonly onTyped: (typed: SheetTyped) => void;
  /** Sets a cell, or lets go of it; the same function as long as the sheet is open. */
  readonly onCell: OnCell;
  readonly errors: readonly FieldError[];
}

/** Products across with what the pool has of each on top, sellers down. */
export function ShareTable(props: TableProps) {
  const { setup } = useBook().ledger;
  const { check, sheet } = props;
  return (
    <ScrollBox label={say`Units by seller and product`} look="share-scroll">
      <table class="table share-table">
        <caption class="only-read">{say`Units by seller and product`}</caption>
        <thead>
          <tr>
            <th scope="col">{say`Seller`}</th>
            {check.products.map(({ product }) => (
              <th scope="col" class="number" key={product}>
                {productName(setup, product)}
              </th>
            ))}
            <th scope="col" class="number">
              {say`Together`}
            </th>
          </tr>
          <SumRow head={say`In the pool`} numbers={check.products.map(({ pool }) => pool)} />
          <LeftRow check={check} />
        </thead>
        <tbody>
          {sheet.input.sellers.map(({ seller }) => (
            <SellerRow key={seller} seller={seller} {...props} />
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function SumRow(props: { readonly head: string; readonly numbers: readonly number[] }) {
  const all = props.numbers.reduce((sum, each) => sum + each, 0);
  return (
    <tr class="share-sum">
      <th scope="row">{props.head}</th>
      {[...props.numbers, all].map((units, place) => (
        <td class="number" key={place}>
          {say.units(units)}
        </td>
      ))}
    </tr>
  );
}

/** The running line: 0 everywhere once the whole pool is given. */
function LeftRow({ check }: { readonly check: ShareCheck }) {
  return (
    <tr class="share-sum" aria-live="polite">
      <th scope="row">{say`Not yet shared`}</th>
      {check.products.map(({ product, left }) => (
        <td class="number" key={product} id={fieldId(`share.${product}`)}>
          {left >= 0 ? (
            say.units(left)
          ) : (
            <b class="figure-difference">{say`▲ ${say.units(-left)} too much`}</b>
          )}
        </td>
      ))}
      <td class="number">{say.units(check.left)}</td>
    </tr>
  );
}

/** Drawn again only where something of this seller changed: a large pool has hundreds of cells. */
function SellerRow(props: TableProps & { readonly seller: string }) {
  const { setup } = useBook().ledger;
  const { seller, sheet, check, typed, onCell } = props;
  const name = sellerName(setup, seller);
  const lines = sheet.shared.lines[seller];
  const locked = typed.locked[seller];
  const units = check.products.map(({ product }) => unitsOf(lines, product));
  const wrong = check.products.filter(({ product }) =>
    isWrong(props.errors, cellField(seller, product)),
  );
  const cells = useMemo(
    () =>
      check.products.map(({ product }, place) => (
        <td class="number" key={product}>
          <ShareCell
            seller={seller}
            product={product}
            name={`${name}, ${productName(setup, product)}`}
            shown={locked?.[product] ?? String(units[place] ?? 0)}
            locked={locked?.[product] !== undefined}
            wrong={wrong.some((one) => one.product === product)}
            onCell={onCell}
          />
        </td>
      )),
    [units.join(), wrong.length, locked, name, setup, onCell],
  );
  return (
    <tr>
      <th scope="row">
        {name}
        <span class="share-weight">
          <Weight {...props} name={name} />
        </span>
      </th>
      {cells}
      <td class="number">{say.units(sheet.shared.totals[seller] ?? 0)}</td>
    </tr>
  );
}

/** What a seller's part rests on, and the exact due that follows. */
function Weight(props: TableProps & { readonly seller: string; readonly name: string }) {
  const { seller, sheet, typed, name } = props;
  const weight = sheet.input.sellers.find((each) => each.seller === seller)?.weight ?? 0;
  const due = say`due ${partsText(sheet.shared.due[seller] ?? 0, say)}`;
  if (typed.by !== 'hand') {
    if (weight === 0) return <>{say`only what is locked`}</>;
    return <>{typed.by === 'minutes' ? `${say`${weight} min`}, ${due}` : due}</>;
  }
  return (
    <>
      <input
        id={fieldId(weightField(seller))}
        type="text"
        inputMode="numeric"
        autocomplete="off"
        class="number"
        aria-label={say`Part of ${name}`}
        aria-invalid={isWrong(props.errors, weightField(seller)) ? 'true' : undefined}
        value={typed.byHand[seller] ?? ''}
        onInput={(event) =>
          props.onTyped({
            ...typed,
            byHand: { ...typed.byHand, [seller]: event.currentTarget.value },
          })
        }
      />{' '}
      {due}
    </>
  );
}

function isWrong(errors: readonly FieldError[], field: string): boolean {
  return errors.some((error) => error.field === field);
}
