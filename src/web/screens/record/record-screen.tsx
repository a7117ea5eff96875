import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import './record.css';
import { recordHistory } from '../../../questions/record-history.ts';
import { type BookRecord, isMovement, type Kind } from '../../../records/record.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { useClosed } from '../../parts/closed-season.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import type { ScreenProps } from '../../routes.ts';
import { Contradictions } from './contradictions.tsx';
import { isSheet, RecordFacts } from './record-facts.tsx';
import { RecordHistoryList } from './record-history-list.tsx';
import { RecordMoves } from './record-moves.tsx';
import { RemoveRecord } from './remove-record.tsx';

/** One record: what it says, what it moved, how it came to be, and every way to put it right. */
export function RecordScreen({ params }: ScreenProps) {
  const book = useBook();
  const { ledger } = book;
  const closed = useClosed() !== undefined;
  const record = ledger.standing.get(params.id ?? '');
  if (record === undefined) {
    return (
      <Page title={say`This record is not in this book`}>
        <p>
          {say.pieces`It may not have arrived yet, or it belongs to another book.
            ${link('/find', say`Find a record`)}.`}
        </p>
      </Page>
    );
  }
  const history = recordHistory(ledger, record.id);
  const stands = ledger.standing.counts(record);
  const day = isMovement(record) ? `${say.day(record.date)}: ` : '';
  return (
    <Page
      title={kindName(record.kind, say)}
      above={<a href="/">{say`Places`}</a>}
      lead={`${day}${recordSentence(record, ledger, say)}.`}
      layout="record"
      actions={
        stands &&
        !closed &&
        record.kind !== 'void' && (
          <>
            {!isSheet(record) && (
              <a class="button button-plain" href={`/records/${record.id}/edit`}>
                {say`Edit`}
              </a>
            )}
            <RemoveRecord record={record} />
          </>
        )
      }
    >
      {!stands && <NotCounting record={record} current={history.current} />}
      <Contradictions contradictions={history.contradictions} />
      <div class="record-columns">
        <div>
          <RecordFacts record={record} />
          {stands && <Paper record={record} />}
        </div>
        <div>
          {isMovement(record) && <RecordMoves record={record} stands={stands} />}
          <RecordHistoryList steps={history.steps} shown={record.id} />
        </div>
      </div>
    </Page>
  );
}

function NotCounting(props: {
  readonly record: BookRecord;
  readonly current: BookRecord | undefined;
}) {
  const { ledger } = useBook();
  const after = ledger.standing.supersededBy(props.record.id);
  return (
    <Notice title={say`This record no longer counts.`}>
      {props.current === undefined ? (
        <p>
          {after?.kind === 'void'
            ? say`It was removed:
            ${after.reason}.`
            : say`It was removed.`}{' '}
          {say`Undo the removal from its own page, below in the history.`}
        </p>
      ) : (
        <p>
          {say.pieces`It was edited. What counts now is
            ${link(`/records/${props.current.id}`, recordSentence(props.current, ledger, say))}.`}
        </p>
      )}
    </Notice>
  );
}

const GOODS_SLIP = { paper: 'goods-slip', words: say`Goods slip` };
const PAPERS: Partial<Record<Kind, { readonly paper: string; readonly words: string }>> = {
  handover: GOODS_SLIP,
  return: GOODS_SLIP,
  payment: { paper: 'payment-receipt', words: say`Payment receipt` },
  refund: { paper: 'refund-receipt', words: say`Refund receipt` },
};

/** The paper that goes with a record, where there is one. */
function Paper({ record }: { readonly record: BookRecord }) {
  const paper = PAPERS[record.kind];
  if (paper === undefined) return null;
  return (
    <p class="record-paper no-print">
      <PaperLinks {...paper} about={record.id} />
    </p>
  );
}
