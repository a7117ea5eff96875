import { say } from '../../say.ts';
import './phone.css';
import { useSignal } from '@preact/signals';
import type { OutboxEntry } from '../../../journal/book-copy.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { madeUpOpen } from '../../help/made-up-open.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { HeldEntry } from './held-entry.tsx';
import { StallLines, useLinesHere } from './stall-lines.tsx';
import { TakeOff } from './take-off.tsx';

/** What is only on this phone: what waits, what the server did not take and why, stall lines. */
export function PhoneScreen() {
  const book = useBook();
  const { waiting, held, takenBack, aside } = book.onPhone.value;
  const lines = useLinesHere();
  return (
    <Page title={say`On this phone`} lead={lead(waiting.length, held.length, lines.length)}>
      {!book.keeps && <KeepsNothing />}
      <Sending waiting={waiting} />
      {held.length > 0 && <NotTaken held={held} />}
      {lines.length > 0 && <StallLines lines={lines} />}
      {aside.length > 0 && (
        <Notice tone="stop" title={say`The server has other records under the same numbers.`}>
          <p>{say`Both are kept. What is on this phone counts here. Tell the manager before
            closing.`}</p>
          <ul>
            {aside.map((record) => (
              <li key={record.id}>{recordSentence(record, book.ledger, say)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {takenBack.length > 0 && (
        <details>
          <summary>{say`Taken back on this phone: ${takenBack.length}`}</summary>
          <Entries entries={takenBack} />
        </details>
      )}
      <p class="phone-about">
        {say`This browser keeps a copy of the whole book, so that it opens without a connection.
          Whoever can use this browser can read it. On a shared computer, use a private window.`}
      </p>
      {book.keeps && madeUpOpen.value === undefined && <TakeOff />}
    </Page>
  );
}

function NotTaken({ held }: { readonly held: readonly OutboxEntry[] }) {
  return (
    <section aria-labelledby="held">
      <h2 id="held">{say`Not taken by the server`}</h2>
      <p>{say`These do not count yet. Look at each: it stays here until you decide.`}</p>
      {held.map((entry) => (
        <HeldEntry key={entry.number} entry={entry} />
      ))}
    </section>
  );
}

function KeepsNothing() {
  return (
    <Notice tone="stop" title={say`This browser lets nothing be kept, or the disk is full.`}>
      <p>
        {say`Records are saved only with a connection. What was saved on this phone before is still
          there: free some space, then load the app again.`}
      </p>
    </Notice>
  );
}

function lead(waiting: number, held: number, lines: number): string {
  if (waiting + held + lines === 0) return say`Everything written here is saved on the server too.`;
  if (waiting === 0) return say`Nothing waits to be sent.`;
  return say`These are safe on this phone and count here. They are sent as soon as that is
    possible.`;
}

function Sending({ waiting }: { readonly waiting: readonly OutboxEntry[] }) {
  const book = useBook();
  const busy = useSignal(false);
  const trouble = book.trouble.value;
  const send = async () => {
    busy.value = true;
    await book.refresh();
    busy.value = false;
  };
  return (
    <section aria-label={say`Waiting to be sent`}>
      {trouble !== undefined && (
        <Notice
          title={
            trouble.name === 'no_answer' ? say`There is no connection.` : say.told(trouble.message)
          }
        >
          {trouble.name === 'not_signed_in' && (
            <p>{say`Nothing is lost. What waits here is sent once the address has been opened.`}</p>
          )}
        </Notice>
      )}
      <Entries entries={waiting} />
      {(waiting.length > 0 || trouble !== undefined) && (
        <Button kind="main" disabled={busy.value} onClick={send}>
          {say`Send now`}
        </Button>
      )}
    </section>
  );
}

function Entries({ entries }: { readonly entries: readonly OutboxEntry[] }) {
  const book = useBook();
  return (
    <ul class="phone-entries">
      {entries.flatMap(({ ids }) =>
        ids.map((id) => (
          <li key={id}>
            <Sentence record={book.recordHere(id)} />
          </li>
        )),
      )}
    </ul>
  );
}
