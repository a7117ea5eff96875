import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { setupKey } from '../../../ledger/setup.ts';
import type { BookRecord, SetupRecord } from '../../../records/record.ts';
import { isSetup } from '../../../records/record.ts';
import type { Draft } from '../../book.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { typedMoney, typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { contentOf } from '../../undo.ts';
import type { Values } from './fields-form.tsx';

/** Reads typed fields one by one and collects what does not fit. */
export class Reading {
  readonly #values: Values;
  readonly #edited: SetupRecord | undefined;
  readonly #errors: FieldError[] = [];

  /** @param edited the record that the form edits; its fields have the names of the form's */
  constructor(values: Values, edited?: SetupRecord) {
    this.#values = values;
    this.#edited = edited;
  }

  text(name: string, missing: string): string {
    const text = this.optional(name);
    if (text === '') this.#errors.push({ field: name, words: missing });
    return text;
  }

  optional(name: string): string {
    return (this.#values[name] ?? '').trim();
  }

  ticked(name: string): boolean {
    return this.#values[name] === 'yes';
  }

  day(name: string): string {
    const day = this.optional(name);
    if (!isDay(day)) this.#errors.push({ field: name, words: say`Choose a day.` });
    return day;
  }

  whole(name: string, least = 0): number {
    const text = this.optional(name);
    const whole = typedWhole(text, Number.NaN);
    const value = whole.ok ? whole.value : Number.NaN;
    if (value >= least) return value;
    this.#errors.push({ field: name, words: say`Write a whole number of ${least} or more.` });
    return least;
  }

  money(name: string, currency: string): number {
    const minor = typedMoney(this.optional(name), currency);
    if (minor.ok) return minor.value;
    this.#errors.push({ field: name, words: minor.refusal });
    return 0;
  }

  refuse(field: string, words: string): void {
    this.#errors.push({ field, words });
  }

  /** The records, unless something did not fit. */
  done(...drafts: readonly Draft[]): Outcome<readonly Draft[], readonly FieldError[]> {
    if (this.#errors.length > 0) return refused(this.#errors);
    return done(drafts.map((draft) => this.#withKept(draft)));
  }

  /** What the form does not ask for stays as it was: a note, deadlines, fields to come. */
  #withKept(draft: Draft): Draft {
    if (this.#edited === undefined || !('replaces' in draft)) return draft;
    if (draft.replaces !== this.#edited.id) return draft;
    const kept = Object.entries(contentOf(this.#edited)).filter(
      ([field]) => !(field in draft) && !(field in this.#values),
    );
    return { ...Object.fromEntries(kept), ...draft };
  }
}

/** An edit names the record it stands for; a new thing does not. */
export function replacing(row: BookRecord | undefined): { readonly replaces?: string } {
  return row === undefined ? {} : { replaces: row.id };
}

/** Takes a set-up thing away: every record of it that counts is removed. */
export function removalOf(ledger: Ledger, row: SetupRecord): Draft[] {
  const drafts: Draft[] = [];
  for (const record of ledger.standing.records()) {
    const same = record.kind === row.kind && isSetup(record) && setupKey(record) === setupKey(row);
    if (!same || !ledger.standing.counts(record)) continue;
    drafts.push({ kind: 'void', voids: record.id, reason: say`Removed in set-up` });
  }
  return drafts;
}
