import { done } from '../../../base/outcome.ts';
import type { BankLine } from '../../../intake/bank/bank-file.ts';
import { markedAsError, unmarked } from '../../../questions/match/bank-errors.ts';
import type { BankMatch } from '../../../questions/match/match-bank.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import type { Saving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { MatchPair, MatchPart, StatementLine } from './match-pair.tsx';

/** Marks a line that the bank itself got wrong: for the bank to take back, not for the book. */
export function MarkError({ line, saving }: { readonly line: BankLine; readonly saving: Saving }) {
  const { ledger } = useBook();
  const mark = markedAsError(ledger, line);
  if (useClosed() !== undefined || mark === undefined) return null;
  return (
    <Button
      quiet
      disabled={saving.busy}
      label={say`The bank’s own error: line ${line.line}`}
      onClick={() => void saving.save(done([mark]))}
    >
      {say`The bank’s own error`}
    </Button>
  );
}

/** The lines that are marked, until the bank takes them back, and its lines that do. */
export function BankErrors(props: {
  readonly found: BankMatch;
  readonly lines: ReadonlyMap<number, BankLine>;
  readonly saving: Saving;
}) {
  const { ledger } = useBook();
  const closed = useClosed() !== undefined;
  const marked = props.found.bankErrors.flatMap((number) => props.lines.get(number) ?? []);
  return (
    <MatchPart title={say`The bank’s own errors`} count={marked.length}>
      {marked.map((line) => {
        const off = unmarked(ledger, line);
        return (
          <MatchPair key={line.line} theirs={say`At the bank`} left={<StatementLine {...line} />}>
            <span class="soft">{say`Ask the bank to take it back.`}</span>
            {!closed && off !== undefined && (
              <Button
                quiet
                disabled={props.saving.busy}
                label={say`Take the mark off line ${line.line}`}
                onClick={() => void props.saving.save(done([off]))}
              >
                {say`Take the mark off`}
              </Button>
            )}
          </MatchPair>
        );
      })}
    </MatchPart>
  );
}
