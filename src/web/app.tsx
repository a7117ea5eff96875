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
  /** Opens what this device keeps at once; the server is asked beside it. */
  const start = async () => {
    const signingIn = signIn(connection);
    const here = await openFromHere(connection, machine);
    if (here !== undefined) {
      state.value = { at: 'book', book: here, shelf: { books: [], damage: [] } };
      if (await signingIn) void here.refresh();
      const books = await connection.books();
      const now = state.value;
      if (books.ok && now.at === 'book') state.value = { ...now, shelf: books.value };
      return;
    }
    await signingIn;
    const books = await connection.books();
    if (!books.ok) {
      state.value = { at: 'stopped', message: books.refusal.message };
      return;
    }
    const meant = chosenBook(books.value.books);
    if (meant === undefined) state.value = { at: 'shelf', shelf: books.value };
    else await open(meant, books.value);
  };
  useEffect(() => {
    void start();
    // The printed address put into a window of the app that is open already loads nothing anew.
    const again = () => void start();
    addEventListener('hashchange', again);
    return () => removeEventListener('hashchange', again);
  }, []);
  const now = state.value;
  const book = now.at === 'book' ? now.book : undefined;
  useEffect(() => followOthers(book, machine), [book]);
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
              const [books, kept] = await Promise.all([connection.books(), machine.copies.books()]);
              const shelf = books.ok ? books.value : { books: kept, damage: [] };
              state.value = { at: 'shelf', shelf };
            }}
          />
        </BookContext.Provider>
      );
  }
}

/** Changes the key of the printed address for a session; true where there was one. */
async function signIn(connection: Connection): Promise<boolean> {
  const key = new URLSearchParams(location.hash.slice(1)).get('key');
  if (key === null) return false;
  // Out of the address first: it must not stay there, whatever becomes of it.
  go(`${location.pathname}${location.search}`, true);
  await connection.openSession(key);
  return true;
}

/** The book chosen earlier, where this device has records of it. */
async function openFromHere(connection: Connection, machine: Machine): Promise<Book | undefined> {
  const kept = await machine.copies.books();
  const meant = chosenBook(kept);
  if (meant === undefined) return undefined;
  const copy = await machine.copies.openCopy(meant);
  if ((await copy.journal.lastArrival()) === 0) return undefined;
  const opened = await Book.open(meant, connection, machine);
  return opened.ok ? opened.value : undefined;
}

const TRY_AGAIN_MS = 20_000;

/**
 * Sends and reads whenever there may be something to: the window is looked at again, a connection
 * is back, another window wrote, or something waits. (The platform's background sending is only in
 * some browsers, so none of this rests on it.)
 */
function followOthers(book: Book | undefined, machine: Machine): () => void {
  if (book === undefined) return () => undefined;
  const look = () => {
    if (document.visibilityState === 'visible') void book.refresh();
  };
  const stopListening = machine.windows.listen(() => void book.follow());
  const timer = setInterval(() => {
    if (book.onPhone.value.waiting.length > 0 || book.trouble.value !== undefined) look();
  }, TRY_AGAIN_MS);
  addEventListener('focus', look);
  addEventListener('online', look);
  document.addEventListener('visibilitychange', look);
  return () => {
    stopListening();
    clearInterval(timer);
    removeEventListener('focus', look);
    removeEventListener('online', look);
    document.removeEventListener('visibilitychange', look);
  };
}
