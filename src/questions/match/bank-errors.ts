import type { Ledger } from '../../ledger/ledger.ts';
import type { RecordOf } from '../../records/record.ts';
import type { LineToMatch } from './bank-window.ts';

/** A line that the bank itself got wrong, as the season keeps it (minor units, with sign). */
export type BankError = NonNullable<RecordOf<'season'>['bankErrors']>[number];

/** The season again, with other lines marked. */
export type ErrorsEdit = Omit<RecordOf<'season'>, 'id' | 'at' | 'by'> & {
  readonly replaces: string;
};

const TEXT_MOST = 200;

/** The lines that are marked as the bank's own errors; each mark stands for one line. */
export function linesInError<L extends LineToMatch>(ledger: Ledger, lines: readonly L[]): Set<L> {
  const left = [...(ledger.setup.season?.bankErrors ?? [])];
  const found = new Set<L>();
  for (const line of lines) {
    const at = left.findIndex((each) => isOf(each, line));
    if (at === -1) continue;
    left.splice(at, 1);
    found.add(line);
  }
  return found;
}

/** Marks a line; undefined where there is no season yet to keep it in. */
export function markedAsError(ledger: Ledger, line: LineToMatch): ErrorsEdit | undefined {
  return editOf(ledger, (errors) => [...errors, errorOf(line)]);
}

/** Takes the mark off again. */
export function unmarked(ledger: Ledger, line: LineToMatch): ErrorsEdit | undefined {
  return editOf(ledger, (errors) => {
    const at = errors.findIndex((each) => isOf(each, line));
    return errors.filter((_, each) => each !== at);
  });
}

function editOf(
  ledger: Ledger,
  change: (errors: readonly BankError[]) => BankError[],
): ErrorsEdit | undefined {
  const { season } = ledger.setup;
  if (season === undefined) return undefined;
  const { id, at: _at, by: _by, replaces: _replaces, ...said } = season;
  return { ...said, replaces: id, bankErrors: change(season.bankErrors ?? []) };
}

function errorOf({ date, cents, text, reference }: LineToMatch): BankError {
  return {
    date,
    cents,
    ...(text === '' ? {} : { text: text.slice(0, TEXT_MOST) }),
    ...(reference === undefined ? {} : { reference: reference.slice(0, TEXT_MOST) }),
  };
}

function isOf(error: BankError, line: LineToMatch): boolean {
  const { date, cents, text, reference } = errorOf(line);
  if (error.date !== date || error.cents !== cents) return false;
  return error.reference === reference && error.text === text;
}
