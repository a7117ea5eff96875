import { useState } from 'preact/hooks';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { CountersField } from '../../parts/counters-field.tsx';
import { TextField } from '../../parts/field.tsx';
import { LinesField } from '../../parts/lines-field.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { CashCount } from './cash-count.tsx';
import { OtherMoney } from './other-money.tsx';
import type { SettleForm } from './settle-form.ts';
import { entryOf, readPart } from './sheet-typed.ts';
import { emptyStall, type StallTyped } from './stall-typed.ts';
import { useKeptTyping } from './use-kept-typing.ts';
import type { OpenSheet } from './use-sheet.ts';

export const sheetParts = {
  open: {
    title: say`Opening count`,
    lead: say`Two adults count what goes out and the float. One phone counts for the stall.`,
    goods: say`Goods taken out`,
    cash: say`Float in the box`,
    save: say`Save the opening count`,
  },
  brought: {
    title: say`Goods brought`,
    lead: say`More goods that came to the stall after the opening count.`,
    goods: say`Goods brought`,
    cash: '',
    save: say`Save the goods brought`,
  },
  drop: {
    title: say`Cash drop`,
    lead: say`Cash taken away from the box before the end: two names, counted by both.`,
    goods: '',
    cash: say`Cash taken away`,
    save: say`Save the cash drop`,
  },
  count: {
    title: say`Closing count`,
    lead: say`Count what is there, without looking at what was tapped. Empty counts as none.`,
    goods: say`Goods left`,
    cash: say`Cash in the box, float included`,
    save: say`Save the closing count`,
  },
} as const;
export type SheetPart = keyof typeof sheetParts;

interface PartProps {
  readonly stall: RecordOf<'stall'>;
  readonly open: OpenSheet;
  readonly part: SheetPart;
}

/** One count, top-up or drop. It is kept on this phone first, then put into the book. */
export function SheetForm(props: PartProps) {
  const { typed, setTyped, read, save, saving } = usePart(props);
  const { errors, attempt, busy } = saving;
  const form = {
    typed,
    onTyped: setTyped,
    errorOf: (field: string) => errors.find((error) => error.field === field)?.words,
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
      noValidate
    >
      <ErrorSummary errors={errors} attempt={attempt} />
      <Fields part={props.part} form={form} read={read} />
      <div class="form-end">
        <Button kind="main" submit disabled={busy}>
          {sheetParts[props.part].save}
        </Button>
      </div>
    </form>
  );
}

interface Saving {
  readonly errors: readonly FieldError[];
  readonly attempt: number;
  readonly busy: boolean;
}

function usePart({ stall, open, part }: PartProps) {
  const { address, ledger, currency } = useBook();
  const place = `${address.group} ${address.season} ${stall.stall} ${part}`;
  const [typed, setTyped, forget] = useKeptTyping(place, emptyStall(stall.starts.slice(0, 10)));
  const [saving, setSaving] = useState<Saving>({ errors: [], attempt: 0, busy: false });
  const read = readPart(part, stall.stall, typed, ledger, currency);
  const fail = (errors: readonly FieldError[]) =>
    setSaving({ errors, attempt: saving.attempt + 1, busy: false });
  const save = async () => {
    if (read.errors.length > 0) return fail(read.errors);
    setSaving({ ...saving, errors: [], busy: true });
    const { entry, isKept } = await open.write(part, entryOf(part, read, typed));
    const trouble = await open.handIn([entry]);
    if (!isKept && trouble !== undefined) return fail([{ field: '', words: trouble }]);
    forget();
    go(`/stalls/${stall.stall}/${part === 'open' || part === 'brought' ? 'sell' : 'sheet'}`);
  };
  return { typed, setTyped, read, save, saving };
}

function Fields(props: {
  readonly part: SheetPart;
  readonly form: SettleForm;
  readonly read: ReturnType<typeof readPart>;
}) {
  const { part, form, read } = props;
  const { goods, cash } = sheetParts[part];
  return (
    <>
      {goods !== '' && <Goods label={goods} which={part === 'count' ? 'back' : 'out'} {...props} />}
      {part === 'count' && (
        <details class="sheet-damaged" open={Object.keys(form.typed.damaged).length > 0}>
          <summary>{say`Damaged (if any)`}</summary>
          <Goods label={say`Damaged`} which="damaged" {...props} />
        </details>
      )}
      {cash !== '' && <CashCount {...form} cash={read.cash} legend={cash} />}
      {part === 'count' && <OtherMoney {...form} withoutFloat />}
      {part !== 'brought' && <People part={part} form={form} />}
    </>
  );
}

function Goods(props: {
  readonly label: string;
  readonly which: 'out' | 'back' | 'damaged';
  readonly form: SettleForm;
  readonly read: ReturnType<typeof readPart>;
}) {
  const { which, read } = props;
  const { typed, onTyped, errorOf } = props.form;
  const wrong = read.errors.flatMap(({ field, words }): [string, string][] =>
    field.startsWith(`${which}.`) ? [[field.slice(which.length + 1), words]] : [],
  );
  return (
    <LinesField
      label={props.label}
      name={which}
      value={typed[which]}
      onValue={(lines) => onTyped({ ...typed, [which]: lines })}
      day={typed.date}
      units={read.draft[which] ?? {}}
      error={errorOf(which)}
      errors={new Map(wrong)}
    />
  );
}

/** Two adults: who counted, or who gives cash away and who holds it from then on. */
function People({ part, form }: { readonly part: SheetPart; readonly form: SettleForm }) {
  const { typed, onTyped, errorOf } = form;
  if (part !== 'drop') {
    return (
      <CountersField
        value={typed.counters}
        onValue={(counters) => onTyped({ ...typed, counters })}
      />
    );
  }
  const name = (at: 0 | 1, label: string) => (
    <TextField
      label={label}
      name={`names.${at}`}
      value={typed.counters[at]}
      onValue={(text) => onTyped({ ...typed, counters: withName(typed, at, text) })}
      error={errorOf(`names.${at}`)}
      maxLength={200}
    />
  );
  return (
    <div class="field-row counters">
      {name(0, say`Who gives it`)}
      {name(1, say`Who holds it now`)}
    </div>
  );
}

function withName({ counters }: StallTyped, at: 0 | 1, text: string): [string, string] {
  return at === 0 ? [text, counters[1]] : [counters[0], text];
}
