import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import './form.css';
import { kindName } from '../../../statements/kind-name.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';
import { typeRecord } from './form-values.ts';
import { RecordForm } from './record-form.tsx';

/** Edits a record: the same form, filled in; saving writes a new record that stands for it. */
export function EditScreen({ params }: ScreenProps) {
  const book = useBook();
  const asked = book.ledger.standing.get(params.id ?? '');
  // An edit is always of what counts now, so that two edits in a row do not contradict each other.
  const record = asked && (book.ledger.standing.currentOf(asked.id) ?? asked);
  if (record === undefined || record.kind === 'void') {
    return (
      <Page title={say`This cannot be edited`}>
        <p>
          {say.pieces`It is not in this book, or it is a removal.
            ${link('/find', say`Find the record`)}.`}
        </p>
      </Page>
    );
  }
  const context = { ledger: book.ledger, currency: book.currency };
  return (
    <Page
      title={say`Edit: ${kindName(record.kind, say)}`}
      above={<a href={`/records/${record.id}`}>{say`The record as it is`}</a>}
      lead={say`The record as it was stays in its history.`}
    >
      <RecordForm
        key={record.id}
        kind={record.kind}
        start={typeRecord(record, context)}
        earlier={record}
        onSaved={(saved, typed) => {
          go(`/records/${saved.id}`);
          return typed;
        }}
      />
    </Page>
  );
}
