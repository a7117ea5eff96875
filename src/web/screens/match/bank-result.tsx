import { done } from '../../../base/outcome.ts';
import type { BankFile, BankLine } from '../../../intake/bank/bank-file.ts';
import { acceptMatches } from '../../../questions/match/accept-matches.ts';
import type { Match } from '../../../questions/match/bank-matching.ts';
import { type BankMatch, matchBank } from '../../../questions/match/match-bank.ts';
import { missingBankRecords } from '../../../questions/match/missing-bank-records.ts';
import { matchWords } from '../../../statements/match-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Money } from '../../parts/figures.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { type Saving, useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { whyOf } from './add-link.ts';
import { BankErrors } from './bank-errors.tsx';
import { BankLeft } from './bank-left.tsx';
import { MatchPair, MatchPart, RecordLines, StatementLine } from './match-pair.tsx';

/** What agrees and what is left of a bank's statement; every match is taken by a tap. */
export function BankResult({ file }: { readonly file: BankFile }) {
  const { ledger } = useBook();
  const saving = useSaving();
  const found = matchBank(ledger, file);
  const lines = new Map(file.lines.map((line) => [line.line, line]));
  const accept = (matches: readonly Match[]) =>
    void saving.save(done(acceptMatches(ledger, matches, file.lines)));
  const at = (line: number) => lines.get(line) ?? [];
  const open = (match: Match) => match.why.kind !== 'accepted';
  const sure = found.matched.filter((match) => match.sure && open(match));
  const suggested = found.matched.filter((match) => !match.sure && open(match));
  const accepted = found.matched.filter((match) => !open(match));
  const missing = missingBankRecords(ledger, found.unmatchedLines.flatMap(at));
  return (
    <>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <Sums found={found} />
      {sure.length > 0 && (
        <p class="no-print">
          <Button kind="main" disabled={saving.busy} onClick={() => accept(sure)}>
            {say.count(sure.length)`Accept # sure match|Accept # sure matches`}
          </Button>
        </p>
      )}
      <NothingLeft found={found} />
      <BankLeft found={found} lines={lines} missing={missing} saving={saving} accept={accept} />
      <BankErrors found={found} lines={lines} saving={saving} />
      <Matches
        title={say`To look at`}
        matches={suggested}
        lines={lines}
        saving={saving}
        accept={accept}
      />
      <Matches title={say`Sure`} matches={sure} lines={lines} saving={saving} accept={accept} />
      <Matches title={say`Accepted`} matches={accepted} lines={lines} />
    </>
  );
}

function NothingLeft({ found }: { readonly found: BankMatch }) {
  if (found.unmatchedLines.length + found.unmatchedRecords.length > 0) return null;
  return <Notice tone="done" title={say`Nothing is left over on either side.`} />;
}

function Sums({ found }: { readonly found: BankMatch }) {
  return (
    <dl class="match-sums" aria-label={say`Both balances`}>
      <dt>{say`By the book`}</dt>
      <dd>
        <Money minor={found.bookBalance} plain to="/accounts/money/bank" />
      </dd>
      <dt>{say`of that not yet at the bank`}</dt>
      <dd>
        <Money minor={found.outstanding} plain />
      </dd>
      <dt>{say`at the bank and not in the book`}</dt>
      <dd>
        <Money minor={found.notInBook} plain />{' '}
        {found.notInBook !== 0 && (
          <a href={whyOf('bank', found.bookBalance + found.notInBook)}>{say`Why?`}</a>
        )}
      </dd>
      {found.bankErrors.length > 0 && (
        <>
          <dt>{say`what the bank itself got wrong`}</dt>
          <dd>
            <Money minor={found.wrongAtBank} plain />
          </dd>
        </>
      )}
      <dt class="match-sum-total">{say`By the bank`}</dt>
      <dd class="match-sum-total">
        <Money minor={found.bankBalance} plain />
      </dd>
    </dl>
  );
}

function Matches(props: {
  readonly title: string;
  readonly matches: readonly Match[];
  readonly lines: ReadonlyMap<number, BankLine>;
  readonly saving?: Saving;
  readonly accept?: (matches: readonly Match[]) => void;
}) {
  // A record in several lines is taken with all of them.
  const together = (match: Match) =>
    props.matches.filter(({ records }) => records.join() === match.records.join());
  return (
    <MatchPart title={props.title} count={props.matches.length}>
      {props.matches.map((match) => {
        const line = props.lines.get(match.line);
        return (
          <MatchPair
            key={match.line}
            theirs={say`At the bank`}
            left={line && <StatementLine {...line} />}
            right={<RecordLines ids={match.records} />}
          >
            <span class="soft">{matchWords(match.why, say)}</span>
            {props.accept && (
              <Button
                quiet
                disabled={props.saving?.busy ?? false}
                label={say`Accept line ${match.line}`}
                onClick={() => props.accept?.(together(match))}
              >
                {say`Accept`}
              </Button>
            )}
          </MatchPair>
        );
      })}
    </MatchPart>
  );
}
