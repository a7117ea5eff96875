import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import type { Draft } from '../../book.ts';
import { type CountersTyped, countersOf } from '../../parts/counters-field.tsx';
import type { FieldError } from '../../parts/notice.tsx';
import { type LinesTyped, typedLines } from '../../parts/typed.ts';
import { say } from '../../say.ts';

/** A product of a count: typed, or set aside as not counted. */
export interface CountTyped {
  readonly lines: LinesTyped;
  readonly notCounted: ReadonlySet<string>;
  readonly date: string;
  readonly counters: CountersTyped;
}

export function isEmpty(typed: CountTyped, product: string): boolean {
  const { cases = '', singles = '' } = typed.lines[product] ?? {};
  return cases.trim() === '' && singles.trim() === '';
}

/** How far the count of a product has come. */
export function stepOf(typed: CountTyped, product: string): 'counted' | 'not-counted' | 'to-do' {
  if (!isEmpty(typed, product)) return 'counted';
  return typed.notCounted.has(product) ? 'not-counted' : 'to-do';
}

/** The count as a record; a product without a figure is not in it, and 0 has to be written. */
export function countDraft(
  typed: CountTyped,
  ledger: Ledger,
): Outcome<Draft<'count'>, FieldError[]> {
  const errors: FieldError[] = [];
  const lines = typedLines(typed.lines, ledger, typed.date, true);
  if (!isDay(typed.date)) errors.push({ field: 'date', words: say`Choose the day of the count.` });
  if (!lines.ok) {
    for (const [product, words] of lines.refusal) {
      const name = ledger.setup.products.get(product)?.name ?? product;
      errors.push({ field: '', words: `${name}: ${words}` });
    }
    return refused(errors);
  }
  if (Object.keys(lines.value).length === 0) {
    errors.push({
      field: '',
      words: say`Count at least one product. Write 0 where there is none.`,
    });
  }
  if (errors.length > 0) return refused(errors);
  const counters = countersOf(typed.counters);
  return done({
    kind: 'count',
    date: typed.date,
    lines: { ...lines.value },
    ...(counters === undefined ? {} : { counters }),
  });
}
