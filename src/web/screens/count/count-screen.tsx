import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './count.css';
import { useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import { shelfOrder } from '../../../questions/shelf-order.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { CountersField } from '../../parts/counters-field.tsx';
import { DayField } from '../../parts/field.tsx';
import { NoProducts } from '../../parts/lines-field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { useSaving } from '../../parts/saving.ts';
import { CountCard } from './count-card.tsx';
import { CountProgress } from './count-progress.tsx';
import { type CountTyped, countDraft, isEmpty, stepOf } from './count-typed.ts';
import { EarlierCounts } from './earlier-counts.tsx';
import { useAwake } from './use-awake.ts';

/**
 * A blind count: one product after the other in shelf order. What the book says is shown only after
 * the count is in, because a number that is seen is a number that is counted.
 */
export function CountScreen() {
  const book = useBook();
  const products = shelfOrder(book.ledger);
  const [typed, setTyped] = useState<CountTyped>({
    lines: {},
    notCounted: new Set(),
    date: book.workingDay(),
    counters: ['', ''],
  });
  const [place, setPlace] = useState(0);
  const [asked, setAsked] = useState(false);
  const saving = useSaving();
  const late = useLate();
  useAwake();
  const product = products[place];
  const move = (to: number) => {
    setAsked(false);
    setPlace(Math.max(0, Math.min(products.length, to)));
  };
  const next = () => {
    if (product !== undefined && isEmpty(typed, product.product)) setAsked(true);
    else move(place + 1);
  };
  const leaveOut = (id: string) => {
    setTyped({ ...typed, notCounted: new Set([...typed.notCounted, id]) });
    move(place + 1);
  };
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const draft = countDraft(typed, book.ledger);
    const errors = [...(draft.ok ? [] : draft.refusal), ...late.errors];
    const checked =
      draft.ok && errors.length === 0 ? done([{ ...draft.value, ...late.field }]) : refused(errors);
    void saving.save(checked, (records) => go(`/count/${records[0]?.id ?? ''}`));
  };
  const left = products.filter(({ product: id }) => stepOf(typed, id) === 'to-do').length;
  return (
    <Page
      title={say`Count`}
      lead={say`Two adults, in shelf order. What the book says comes after the count is saved.`}
      actions={<PaperLinks paper="count-sheet" words={say`Count sheet`} />}
    >
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      {products.length === 0 && <NoProducts />}
      {product !== undefined && (
        <CountCard
          key={product.product}
          product={product}
          place={place + 1}
          of={products.length}
          typed={typed}
          onTyped={setTyped}
          asked={asked}
          onNext={next}
          onBack={place > 0 ? () => move(place - 1) : undefined}
          onLeaveOut={() => leaveOut(product.product)}
        />
      )}
      <CountProgress products={products} typed={typed} place={place} onPlace={move} />
      <form onSubmit={save} noValidate class="count-end">
        <DayField
          label={say`Day of the count`}
          name="date"
          value={typed.date}
          onValue={(date) => setTyped({ ...typed, date })}
          error={saving.errorOf('date')}
        />
        <CountersField
          value={typed.counters}
          onValue={(counters) => setTyped({ ...typed, counters })}
        />
        <LateField late={late} error={saving.errorOf('late')} />
        <div class="form-end">
          <Button kind="main" submit disabled={saving.busy}>
            {say`Save the count`}
          </Button>
          <span class="soft">
            {left > 0 && say`${left} of ${products.length} to go.`}
            {left === 0 && products.length > 0 && say`Every product is counted.`}
          </span>
        </div>
      </form>
      <EarlierCounts />
    </Page>
  );
}
