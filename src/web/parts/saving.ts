import { useState } from 'preact/hooks';
import type { Outcome } from '../../base/outcome.ts';
import type { ErrorAnswer } from '../../contract/api.ts';
import { shortSaid } from '../../intake/finding.ts';
import type { BookRecord } from '../../records/record.ts';
import { type Draft, useBook } from '../book.ts';
import { say } from '../say.ts';
import type { FieldError } from './notice.tsx';

/** What a form hands to be saved: the records it makes, or what does not fit in it. */
export type Checked = Outcome<readonly Draft[], readonly FieldError[]>;

export interface Saving {
  readonly errors: readonly FieldError[];
  /** Counts the tries, so that an error summary takes the focus at each. */
  readonly attempt: number;
  readonly busy: boolean;
  errorOf(field: string): string | undefined;
  /** Saves, or shows what does not fit; `then` runs once the server has the records for good. */
  save(checked: Checked, then?: (records: readonly BookRecord[]) => void): Promise<void>;
}

/**
 * The saving of one form: checks first, then one send; a refusal of the server is shown like an
 * error of the form, with what was typed still there.
 */
export function useSaving(): Saving {
  const book = useBook();
  const [errors, setErrors] = useState<readonly FieldError[]>([]);
  const [attempt, setAttempt] = useState(0);
  const [busy, setBusy] = useState(false);
  const fail = (found: readonly FieldError[]) => {
    setErrors(found);
    setAttempt((tries) => tries + 1);
  };
  const save: Saving['save'] = async (checked, then) => {
    if (!checked.ok) {
      fail(checked.refusal);
      return;
    }
    setBusy(true);
    const answer = await book.append(checked.value);
    setBusy(false);
    if (!answer.ok) {
      fail(refusalErrors(answer.refusal));
      return;
    }
    setErrors([]);
    then?.(answer.value);
  };
  return {
    errors,
    attempt,
    busy,
    save,
    errorOf: (field) => errors.find((error) => error.field === field)?.words,
  };
}

function refusalErrors(refusal: ErrorAnswer): FieldError[] {
  const findings = refusal.findings ?? [];
  if (findings.length === 0) return [{ field: '', words: say.told(refusal.message) }];
  return findings.map(({ field, said, wanted }) => ({
    field,
    words: say`${field === '' ? say`This record` : field}: ${shortSaid(said)} does not fit, it wants
      ${say.told(wanted)}.`,
  }));
}
