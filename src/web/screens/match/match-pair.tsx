import type { ComponentChildren } from 'preact';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { say } from '../../say.ts';

/** Theirs left, ours right, what to do below. */
export function MatchPair(props: {
  readonly theirs: string;
  readonly left?: ComponentChildren;
  readonly right?: ComponentChildren;
  readonly children?: ComponentChildren;
}) {
  return (
    <li class="match-pair">
      <div class="match-side">
        <p class="match-side-head">{props.theirs}</p>
        {props.left ?? <p class="soft">{say`nothing`}</p>}
      </div>
      <div class="match-side">
        <p class="match-side-head">{say`In the book`}</p>
        {props.right ?? <p class="soft">{say`nothing`}</p>}
      </div>
      {props.children && <div class="match-verbs no-print">{props.children}</div>}
    </li>
  );
}

/** A line of a statement: day, words, amount. */
export function StatementLine(props: {
  readonly line: number;
  readonly date: string;
  readonly text: string;
  /** Minor units with sign; none where the line says no amount. */
  readonly cents?: number | undefined;
}) {
  return (
    <p class="match-line">
      <span>
        {say.day(props.date)} {props.text} <span class="soft">{say`line ${props.line}`}</span>
      </span>
      {props.cents !== undefined && <Money minor={props.cents} plain />}
    </p>
  );
}

/** Records by their sentences, each a link to it. */
export function RecordLines({ ids }: { readonly ids: readonly string[] }) {
  const { ledger } = useBook();
  return (
    <>
      {ids.map((id) => {
        const record = ledger.standing.currentOf(id) ?? ledger.standing.get(id);
        if (record === undefined) return null;
        return (
          <p key={id}>
            {'date' in record && `${say.day(record.date)} `}
            <a href={`/records/${record.id}`}>{recordSentence(record, ledger, say)}</a>
          </p>
        );
      })}
    </>
  );
}

/** A part of the list with its head; nothing where it has no items. */
export function MatchPart(props: {
  readonly title: string;
  readonly count: number;
  readonly children: ComponentChildren;
}) {
  if (props.count === 0) return null;
  return (
    <section>
      <h2 class="column-head">
        {props.title} ({props.count})
      </h2>
      <ul class="match-list">{props.children}</ul>
    </section>
  );
}
