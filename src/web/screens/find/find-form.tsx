import { placeIds } from '../../../questions/places.ts';
import type { Kind } from '../../../records/record.ts';
import { kindNames } from '../../../statements/kind-name.ts';
import { placeName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { CheckField, DayField, SelectField, TextField } from '../../parts/field.tsx';
import { FamilyPicker, ProductPicker, SellerPicker } from '../../parts/pickers.tsx';
import { kindGroups } from '../form/kind-forms.ts';
import type { Asked } from './find-screen.tsx';

/** The conditions of a search; the list follows while they are typed. */
export function FindForm(props: { readonly asked: Asked; readonly onAsk: (asked: Asked) => void }) {
  const { ledger } = useBook();
  const { asked, onAsk } = props;
  const field = (name: string) => ({
    name,
    value: asked[name] ?? '',
    onValue: (value: string) => onAsk({ ...asked, [name]: value }),
  });
  const kinds = kindGroups.flatMap(([group, members]) =>
    members.map((kind: Kind) => ({ value: kind, words: kindNames[kind], group })),
  );
  const any = Object.keys(asked).length > 0;
  return (
    <search class="find-form no-print" aria-label="Records">
      <TextField label="Words or amount" hint="Like: Ada R-023, or 36.00" {...field('text')} />
      <div class="find-fields">
        <SelectField
          label="Kind"
          options={[...kinds, { value: 'void', words: kindNames.void }]}
          empty="Any kind"
          {...field('kind')}
        />
        <SellerPicker label="Seller" none="Any seller" {...field('seller')} />
        <FamilyPicker label="Family" none="Any family" {...field('family')} />
        <ProductPicker label="Product" none="Any product" {...field('product')} />
        <SelectField
          label="Place"
          options={placeIds.map((place) => ({ value: place, words: placeName(place) }))}
          empty="Any place"
          {...field('place')}
        />
        <DayField label="From day" {...field('from')} />
        <DayField label="To day" {...field('to')} />
      </div>
      <CheckField
        label="Also edited and removed records"
        checked={asked.gone === 'yes'}
        onChecked={(gone) => onAsk({ ...asked, gone: gone ? 'yes' : '' })}
      />
      {any && <Button onClick={() => onAsk({})}>Clear all conditions</Button>}
      <p class="small soft find-size">{ledger.size} records in this book</p>
    </search>
  );
}
