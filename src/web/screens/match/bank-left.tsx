import { done } from '../../../base/outcome.ts';
import type { BankLine } from '../../../intake/bank/bank-file.ts';
import type { Match } from '../../../questions/match/bank-matching.ts';
import type { BankDiffers } from '../../../questions/match/bank-near-misses.ts';
import type { BankMatch } from '../../../questions/match/match-bank.ts';
import type { MissingRecord } from '../../../questions/match/missing-bank-records.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import type { Saving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { addLink, whyOf } from './add-link.ts';
import { MarkError } from './bank-errors.tsx';
import { MatchPair, MatchPart, RecordLines, StatementLine } from './match-pair.tsx';

interface LeftProps {
  readonly found: BankMatch;
  readonly lines: ReadonlyMap<number, BankLine>;
  readonly missing: readonly MissingRecord[];
  readonly saving: Saving;
  readonly accept: (matches: readonly Match[]) => void;
}

/** What is left on either side, with what can be done about it. */
export function BankLeft(props: LeftProps) {
  const { found, lines } = props;
  const paired = new Set(found.differ.map(({ record }) => record));
  const differing = new Map(found.differ.map((each) => [each.line, each]));
  const onlyOurs = found.unmatchedRecords.filter((record) => !paired.has(record));
  return (
    <>
      <MatchPart title={say`Left at the bank`} count={found.unmatchedLines.length}>
        {found.unmatchedLines.map((number) => {
          const line = lines.get(number);
          const near = differing.get(number);
          return (
            <MatchPair
              key={number}
              theirs={say`At the bank`}
              left={line && <StatementLine {...line} />}
              right={near && <RecordLines ids={[near.record]} />}
            >
              <Verbs {...props} number={number} near={near} />
            </MatchPair>
          );
        })}
      </MatchPart>
      <MatchPart title={say`Not yet at the bank`} count={onlyOurs.length}>
        {onlyOurs.map((record) => (
          <MatchPair
            key={record}
            theirs={say`At the bank`}
            right={<RecordLines ids={[record]} />}
          />
        ))}
      </MatchPart>
    </>
  );
}

function Verbs(
  props: LeftProps & { readonly number: number; readonly near: BankDiffers | undefined },
) {
  const { currency } = useBook();
  const { found, number, near } = props;
  const choice = found.choices.find(({ line }) => line === number);
  const missing = props.missing.find(({ line }) => line === number);
  const mirrored = found.mirrored.find((pair) => pair.includes(number));
  if (near !== undefined) {
    return (
      <>
        <span>
          {say`▲ Differs: ${say.money(near.theirs, currency)} there,
            ${say.money(near.ours, currency)} in the book.`}
        </span>
        <a href={`/records/${near.record}/edit`}>{say`Edit the record`}</a>
        <a href={whyOf('bank', found.bookBalance + near.theirs - near.ours)}>
          {say`Why, for line ${number}?`}
        </a>
      </>
    );
  }
  if (choice !== undefined) return <Choice {...props} sets={choice.sets} />;
  if (found.repeated.includes(number)) return <span>{say`The bank sent this line twice.`}</span>;
  if (mirrored !== undefined) {
    const other = mirrored.find((line) => line !== number) ?? number;
    const line = props.lines.get(number);
    return (
      <>
        <span>{say`Taken back by line ${other}: the two cancel each other.`}</span>
        {line && <MarkError line={line} saving={props.saving} />}
      </>
    );
  }
  return missing === undefined ? <Unknown {...props} /> : <Missing {...props} offer={missing} />;
}

/** Several sets of records come to the line: one of them is chosen by a tap. */
function Choice(props: LeftProps & { number: number; sets: readonly (readonly string[])[] }) {
  return (
    <ul class="match-list">
      {props.sets.map((records, at) => (
        <li class="match-pair" key={records.join()}>
          <div class="match-side">
            <RecordLines ids={records} />
          </div>
          <Button
            quiet
            disabled={props.saving.busy}
            label={say`Accept this set, ${at + 1}, for line ${props.number}`}
            onClick={() => {
              const why = { kind: 'records_together', count: records.length } as const;
              props.accept([{ line: props.number, records, why, sure: false }]);
            }}
          >
            {say`Accept this set`}
          </Button>
        </li>
      ))}
    </ul>
  );
}

function Missing(props: LeftProps & { readonly number: number; readonly offer: MissingRecord }) {
  const { record, line } = props.offer;
  const name = kindName(record.kind, say);
  return (
    <>
      <span>{say`Most likely missing in the book: ${name}.`}</span>
      <Button
        quiet
        disabled={props.saving.busy}
        label={say`Record it: ${name} for line ${line}`}
        onClick={() => void props.saving.save(done([record]))}
      >
        {say`Record it`}
      </Button>
      <a href={addLink(record)}>{say`Look it over first`}</a>
      <WhyLine {...props} />
    </>
  );
}

/** Why the book's balance is not what it would be with this line, or that the bank is wrong. */
function WhyLine({ found, lines, number, saving }: LeftProps & { readonly number: number }) {
  const line = lines.get(number);
  if (line === undefined) return null;
  return (
    <>
      <a href={whyOf('bank', found.bookBalance + line.cents)}>{say`Why, for line ${number}?`}</a>
      <MarkError line={line} saving={saving} />
    </>
  );
}

function Unknown(props: LeftProps & { readonly number: number }) {
  const line = props.lines.get(props.number);
  if (line === undefined) return null;
  const { date, cents } = line;
  const kinds =
    cents > 0 ? (['deposit', 'card-settle'] as const) : (['bank-fee', 'debit'] as const);
  return (
    <>
      <WhyLine {...props} />
      {kinds.map((kind) => (
        <a key={kind} href={addLink({ kind, date, cents: Math.abs(cents) })}>
          {say`Record as ${kindName(kind, say).toLowerCase()}`}
        </a>
      ))}
    </>
  );
}
