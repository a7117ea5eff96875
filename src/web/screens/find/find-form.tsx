import { useMemo } from 'preact/hooks';
import { placeIds } from '../../../questions/places.ts';
import type { Kind } from '../../../records/record.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { placeName } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { CheckField, DayField, SelectField, TextField } from '../../parts/field.tsx';
import { FamilyPicker, ProductPicker, SellerPicker } from '../../parts/pickers.tsx';
import { say } from '../../say.ts';
import { kindGroups } from '../form/kind-forms.ts';
import type { Asked } from './find-screen.tsx';

/** The conditions of a search; the list follows while they are typed. */
export function FindForm(props: {
  readonly asked: Asked;
  readonly onAsk: (change: Asked) => void;
  readonly onClear: () => void;
}) {
  const { ledger, version } = useBook();
  const { asked, onAsk, onClear } = props;
  const { text = '', ...others } = asked;
  // A letter typed draws the text anew and none of the lists of names.
  const key = `${version.value} ${JSON.stringify(others)}`;
  const chosen = useMemo(() => <Conditions asked={others} onAsk={onAsk} />, [key]);
  return (
    <search class="find-form no-print" aria-label={say`Records`}>
      <TextField
        label={say`Words or amount`}
        hint={say`Like: Ada R-023, or 36.00`}
        name="text"
        value={text}
        onValue={(value) => onAsk({ text: value })}
      />
      {chosen}
      {Object.keys(asked).length > 0 && (
        <Button onClick={onClear}>{say`Clear all conditions`}</Button>
      )}
      <p class="small soft find-size">{say.count(
        ledger.size,
      )`# record in this book|# records in this book`}</p>
    </search>
  );
}

const KINDS = kindGroups.flatMap(([group, members]) =>
  members.map((kind: Kind) => ({ value: kind, words: kindName(kind, say), group })),
);

function Conditions(props: { readonly asked: Asked; readonly onAsk: (change: Asked) => void }) {
  const { asked, onAsk } = props;
  const field = (name: string) => ({
    name,
    value: asked[name] ?? '',
    onValue: (value: string) => onAsk({ [name]: value }),
  });
  return (
    <>
      <div class="find-fields">
        <SelectField
          label={say`Kind`}
          options={[...KINDS, { value: 'void', words: kindName('void', say) }]}
          empty={say`Any kind`}
          {...field('kind')}
        />
        <SellerPicker label={say`Seller`} none={say`Any seller`} {...field('seller')} />
        <FamilyPicker label={say`Family`} none={say`Any family`} {...field('family')} />
        <ProductPicker label={say`Product`} none={say`Any product`} {...field('product')} />
        <SelectField
          label={say`Place`}
          options={placeIds.map((place) => ({ value: place, words: placeName(place, say) }))}
          empty={say`Any place`}
          {...field('place')}
        />
        <DayField label={say`From day`} {...field('from')} />
        <DayField label={say`To day`} {...field('to')} />
      </div>
      <CheckField
        label={say`Also edited and removed records`}
        checked={asked.gone === 'yes'}
        onChecked={(gone) => onAsk({ gone: gone ? 'yes' : '' })}
      />
    </>
  );
}
