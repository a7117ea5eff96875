import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { BooksAnswer } from '../../../contract/api.ts';
import { Book, type Draft, type Machine } from '../../book.ts';
import type { BookAddress, Connection } from '../../connection.ts';
import { Button } from '../../parts/button.tsx';
import { Languages } from '../../parts/languages.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { NewSeason, type SeasonAnswers } from './new-season.tsx';
import { freeAddress } from './season-address.ts';

/** All books kept here, the first run, and the two ways to begin: made-up season or empty one. */
export function Shelf(props: {
  readonly connection: Connection;
  readonly machine: Machine;
  readonly shelf: BooksAnswer;
  readonly onOpen: (book: BookAddress, shelf: BooksAnswer) => Promise<void>;
}) {
  const { connection, machine, shelf, onOpen } = props;
  const trouble = useSignal('');
  const busy = useSignal(false);
  const make = async (address: BookAddress, first?: readonly Draft[]) => {
    busy.value = true;
    const problem = await makeBook({ connection, machine, address, first });
    busy.value = false;
    trouble.value = problem ?? '';
    if (problem === undefined) {
      history.replaceState(null, '', '/');
      await onOpen(address, shelf);
    }
  };
  return (
    <ShelfPage title={shelf.books.length === 0 ? say`Start a book` : say`Books`}>
      {trouble.value !== '' && <Notice tone="stop" title={trouble.value} />}
      {shelf.books.length > 0 && (
        <ul class="shelf-books">
          {shelf.books.map((book) => (
            <li key={`${book.group}/${book.season}`}>
              <button type="button" class="shelf-book" onClick={() => onOpen(book, shelf)}>
                <b>{book.season}</b> <span>{book.group}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="shelf-ways">
        <section class="shelf-way shelf-demo">
          <h2>{say`Look round first`}</h2>
          <p>
            {say`A whole made-up season of the Wrenfield Young Rowers: 14 sellers, 8 products, 8
              stalls, and five things still wrong at the end. Nothing in it is real.`}
          </p>
          <Button
            disabled={busy.value}
            onClick={() => make(freeAddress('wrenfield', 'spring-2027', shelf.books))}
          >
            {say`Try with the made-up season`}
          </Button>
        </section>
        <section class="shelf-way">
          <h2>{say`Start an empty season`}</h2>
          <NewSeason
            today={machine.today()}
            busy={busy.value}
            onStart={(answers, products) =>
              make(freeAddress(answers.group, answers.season, shelf.books), [
                seasonOf(answers),
                ...products,
              ])
            }
          />
        </section>
      </div>
    </ShelfPage>
  );
}

/** Makes the book, and writes the first records of an empty one. Gives what went wrong in words. */
async function makeBook(ask: {
  readonly connection: Connection;
  readonly machine: Machine;
  readonly address: BookAddress;
  /** Without these the book is the made-up season. */
  readonly first: readonly Draft[] | undefined;
}): Promise<string | undefined> {
  const { connection, machine, address, first } = ask;
  const start = first === undefined ? 'demo' : 'empty';
  const made = await connection.makeBook({ ...address, start });
  if (!made.ok) return say.told(made.refusal.message);
  if (first === undefined) return undefined;
  const opened = await Book.open(address, connection, machine);
  if (!opened.ok) return say.told(opened.refusal.message);
  const written = await opened.value.append(first);
  return written.ok ? undefined : say.told(written.refusal.message);
}

function seasonOf(answers: SeasonAnswers): Draft<'season'> {
  const { season: name, currency, starts, ends } = answers;
  const { tag } = say.language;
  return {
    kind: 'season',
    name,
    currency,
    starts,
    ends,
    group: answers.group.trim(),
    ...(tag === 'en' ? {} : { language: tag }),
  };
}

/** A page of its own before any book is open, with one message and perhaps a second try. */
export function ShelfMessage(props: {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly retry?: () => unknown;
}) {
  return (
    <ShelfPage title={props.title}>
      <p>{props.children}</p>
      {props.retry && (
        <Button kind="main" onClick={props.retry}>
          {say`Try again`}
        </Button>
      )}
    </ShelfPage>
  );
}

function ShelfPage(props: { readonly title: string; readonly children: ComponentChildren }) {
  useEffect(() => {
    document.title = `${props.title} · Cratebook`;
  }, [props.title]);
  return (
    <main class="shelf">
      <p class="mark">Cratebook</p>
      <h1 tabIndex={-1}>{props.title}</h1>
      {props.children}
      <Languages />
    </main>
  );
}
