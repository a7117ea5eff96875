import { useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect } from 'preact/hooks';
import type { BooksAnswer } from '../contract/api.ts';
import { Book, BookContext, isWhole, type Machine } from './book.ts';
import { chooseBook, chosenBook, wasBookChosen } from './chosen-book.ts';
import type { BookAddress, Connection } from './connection.ts';
import { Frame } from './frame.tsx';
import { madeUpOpen, putAway } from './help/made-up-open.ts';
import { go } from './navigation.ts';
import { useSettled } from './parts/use-settled.ts';
import { say } from './say.ts';
import { Shelf, ShelfMessage } from './screens/shelf/shelf.tsx';
import { takenOff } from './taken-off.ts';

/**
 * The whole app: opens the session with the key of the printed address, finds which book is meant,
 * opens it and hands it to the frame. Until there is one, the shelf (all books, first run) is
 * shown.
 */
type State =
  | { readonly at: 'starting' }
  | { readonly at: 'stopped'; readonly message: string }
  | { readonly at: 'taken-off' }
  | { readonly at: 'shelf'; readonly shelf: BooksAnswer }
  | { readonly at: 'book'; readonly book: Book; readonly shelf: BooksAnswer };

/** A wait that is told any earlier only flickers, and drawing it makes the wait longer. */
const ASKED_AFTER_MS = 400;

const TAKEN_OFF: State = { at: 'taken-off' };

export function App(props: {
  readonly connection: Connection;
  readonly machine: Machine;
  /** Called once, when there is something to look at. */
  readonly onOpened: () => void;
}) {
  const state = useSignal<State>({ at: 'starting' });
  const { connection, machine } = props;
  const show = (next: State): void => {
    state.value = next;
  };
  const open = async (address: BookAddress, shelf: BooksAnswer) =>
    show(await opened(address, shelf, connection, machine));
  const start = () => begin(connection, machine, show);
  // Before anything is painted: on a slow phone the first paint alone takes a moment.
  useLayoutEffect(() => {
    void start();
    // The printed address put into a window of the app that is open already loads nothing anew.
    const again = (): void => {
      const now = state.value;
      if (keyInAddress() === null) return;
      if (now.at === 'book') void signIn(connection).then(() => now.book.refresh());
      else void start();
    };
    addEventListener('hashchange', again);
    return () => removeEventListener('hashchange', again);
  }, []);
  const now = takenOff.value ? TAKEN_OFF : state.value;
  const book = now.at === 'book' ? now.book : undefined;
  useEffect(() => followOthers(book, machine), [book]);
  const isOpen = now.at !== 'starting';
  useEffect(() => {
    if (isOpen) props.onOpened();
  }, [isOpen]);
  const shown = madeUpOpen.value?.book;
  switch (now.at) {
    case 'starting':
      return <Opening />;
    case 'stopped':
      return (
        <ShelfMessage title={say`The book cannot be opened`} retry={start}>
          {say.told(now.message)}
        </ShelfMessage>
      );
    case 'taken-off':
      return (
        <ShelfMessage title={say`The book is off this phone`}>
          {takenOff.value === 'signed-out'
            ? say`This browser keeps nothing of it any more, and is signed out. The server has its
              book as it was; only a new address from there opens it here again.`
            : say`This browser keeps nothing of it any more, but the server was not reached to sign
              it out. Close the browser too: until then the server’s address opens the book again.`}
        </ShelfMessage>
      );
    case 'shelf':
      return <Shelf connection={connection} machine={machine} shelf={now.shelf} onOpen={open} />;
    case 'book':
      return (
        <BookContext.Provider value={shown ?? now.book}>
          <Frame
            key={shown === undefined ? 'book' : 'made up'}
            damage={now.shelf.damage}
            onShelf={async () => {
              putAway();
              const [books, kept] = await Promise.all([connection.books(), machine.copies.books()]);
              const shelf = books.ok ? books.value : { books: kept, damage: [] };
              state.value = { at: 'shelf', shelf };
            }}
          />
        </BookContext.Provider>
      );
  }
}

/** Says what is waited for, once it takes so long that somebody would ask. */
function Opening() {
  const isLong = useSettled(true, '', ASKED_AFTER_MS);
  if (!isLong) return null;
  return <ShelfMessage title="Cratebook">{say`Opening the book…`}</ShelfMessage>;
}

/** Opens what this device keeps at once, and asks the server beside it. */
async function begin(
  connection: Connection,
  machine: Machine,
  show: (state: State) => void,
): Promise<void> {
  const signingIn = signIn(connection);
  const book = wasBookChosen() ? await openFromHere(connection, machine) : undefined;
  if (book !== undefined) {
    show({ at: 'book', book, shelf: { books: [], damage: [] } });
    if (await signingIn) void book.refresh();
  } else await signingIn;
  const books = await connection.books();
  if (book !== undefined) {
    if (books.ok) show({ at: 'book', book, shelf: books.value });
    return;
  }
  if (!books.ok) {
    const kept = await openFromHere(connection, machine);
    if (kept === undefined) show({ at: 'stopped', message: books.refusal.message });
    else show({ at: 'book', book: kept, shelf: { books: [], damage: [] } });
    return;
  }
  const meant = chosenBook(books.value.books);
  if (meant === undefined) show({ at: 'shelf', shelf: books.value });
  else show(await opened(meant, books.value, connection, machine));
}

async function opened(
  address: BookAddress,
  shelf: BooksAnswer,
  connection: Connection,
  machine: Machine,
): Promise<State> {
  const book = await Book.open(address, connection, machine);
  if (!book.ok) return { at: 'stopped', message: book.refusal.message };
  chooseBook(address);
  return { at: 'book', book: book.value, shelf };
}

function keyInAddress(): string | null {
  return new URLSearchParams(location.hash.slice(1)).get('key');
}

/** Changes the key of the printed address for a session; true where there was one. */
async function signIn(connection: Connection): Promise<boolean> {
  const key = keyInAddress();
  if (key === null) return false;
  // Out of the address first: it must not stay there, whatever becomes of it.
  go(`${location.pathname}${location.search}`, true);
  await connection.openSession(key);
  return true;
}

/** The book chosen earlier, where this device has all of it. */
async function openFromHere(connection: Connection, machine: Machine): Promise<Book | undefined> {
  const kept = await machine.copies.books();
  const meant = chosenBook(kept);
  if (meant === undefined) return undefined;
  const copy = await machine.copies.openCopy(meant);
  if (!isWhole(await copy.state())) return undefined;
  const book = await Book.open(meant, connection, machine);
  return book.ok ? book.value : undefined;
}

const LOOK_EVERY_MS = 20_000;

/**
 * Sends and reads whenever there may be something to: the window is looked at again, a connection
 * is back, another window wrote, and every so often. (The platform's background sending is only in
 * some browsers, so none of this rests on it.)
 */
function followOthers(book: Book | undefined, machine: Machine): () => void {
  if (book === undefined) return () => undefined;
  const look = () => {
    if (document.visibilityState === 'visible') void book.refresh();
  };
  const stopListening = machine.windows.listen(() => void book.follow());
  const timer = setInterval(look, LOOK_EVERY_MS);
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
