import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { BooksAnswer } from '../contract/api.ts';
import { Book, BookContext, type Machine } from './book.ts';
import { chooseBook, chosenBook } from './chosen-book.ts';
import type { BookAddress, Connection } from './connection.ts';
import { Frame } from './frame.tsx';
import { go } from './navigation.ts';
import { Shelf, ShelfMessage } from './screens/shelf/shelf.tsx';

/**
 * The whole app: opens the session with the key of the printed address, finds which book is meant,
 * opens it and hands it to the frame. Until there is one, the shelf (all books, first run) is
 * shown.
 */
type State =
  | { readonly at: 'starting' }
  | { readonly at: 'stopped'; readonly message: string }
  | { readonly at: 'shelf'; readonly shelf: BooksAnswer }
  | { readonly at: 'book'; readonly book: Book; readonly shelf: BooksAnswer };

export function App(props: { readonly connection: Connection; readonly machine: Machine }) {
  const state = useSignal<State>({ at: 'starting' });
  const { connection, machine } = props;
  const open = async (address: BookAddress, shelf: BooksAnswer) => {
    const opened = await Book.open(address, connection, machine);
    if (!opened.ok) {
      state.value = { at: 'stopped', message: opened.refusal.message };
      return;
    }
    chooseBook(address);
    state.value = { at: 'book', book: opened.value, shelf };
  };
  const start = async () => {
    const key = new URLSearchParams(location.hash.slice(1)).get('key');
    if (key !== null) {
      await connection.openSession(key);
      go(`${location.pathname}${location.search}`, true);
    }
    const books = await connection.books();
    if (!books.ok) {
      state.value = { at: 'stopped', message: books.refusal.message };
      return;
    }
    const meant = chosenBook(books.value.books);
    if (meant === undefined) state.value = { at: 'shelf', shelf: books.value };
    else await open(meant, books.value);
  };
  useEffect(() => void start(), []);
  const now = state.value;
  const book = now.at === 'book' ? now.book : undefined;
  useEffect(() => followOthers(book), [book]);
  switch (now.at) {
    case 'starting':
      return <ShelfMessage title="Cratebook">Opening the book…</ShelfMessage>;
    case 'stopped':
      return (
        <ShelfMessage title="The book cannot be opened" retry={start}>
          {now.message}
        </ShelfMessage>
      );
    case 'shelf':
      return <Shelf connection={connection} machine={machine} shelf={now.shelf} onOpen={open} />;
    case 'book':
      return (
        <BookContext.Provider value={now.book}>
          <Frame
            damage={now.shelf.damage}
            onShelf={async () => {
              const books = await connection.books();
              state.value = { at: 'shelf', shelf: books.ok ? books.value : now.shelf };
            }}
          />
        </BookContext.Provider>
      );
  }
}

/** Takes over what others wrote whenever this window is looked at again. */
function followOthers(book: Book | undefined): () => void {
  const look = () => {
    if (document.visibilityState === 'visible') void book?.refresh();
  };
  addEventListener('focus', look);
  document.addEventListener('visibilitychange', look);
  return () => {
    removeEventListener('focus', look);
    document.removeEventListener('visibilitychange', look);
  };
}
