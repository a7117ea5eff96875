import { findingLine } from '../../intake/finding.ts';
import type { BookRead } from '../../intake/read-book.ts';
import type { Appended, AppendRefusal } from '../../journal/journal.ts';
import type { Store } from '../../journal/store.ts';
import { acceptBook } from '../../rules/accept-book.ts';
import { defaultDataFolder, makeDataFolder, storeFile } from '../data-folder.ts';
import { sourceName } from './book-bytes.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { readBookAt } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { Stop } from './stop.ts';

/** Adds a book file to the store: all of it, or nothing and one line that says why. */
export const importBook: Command = {
  options: { ...bookOptions, data: { type: 'string' } },
  takes: ['BOOK'],
  help: `Adds a book file to the store. Records that are there already change nothing; a file with
any error is refused whole.

  --data DIR   the folder that keeps the books; without it, CRATEBOOK_DATA or the user's own
  --json       {"group":"…","season":"…","added":n,"already":n}

${BOOK_HELP}

Examples
  cratebook import spring.jsonl --data ~/books`,
  run: async (given, outlet) => {
    const [path = ''] = given.positionals;
    const read = await readBookAt(path, given, outlet);
    expectReadable(read, sourceName(path));
    const folder = given.get('data') ?? defaultDataFolder(outlet.environment);
    makeDataFolder(folder);
    const { openSqliteStore } = await import('../../storage/sqlite/open-sqlite-store.ts');
    const opened = await openSqliteStore(storeFile(folder));
    if (!opened.ok) throw new Stop(opened.refusal.message);
    try {
      const appended = await importInto(opened.value, read, sourceName(path));
      const [added, already] = [appended.added.length, appended.already.length];
      const { group = '', season = '' } = read.header ?? {};
      if (given.has('json')) await writeJson(outlet, { group, season, added, already });
      else outlet.note(`${added} records added to ${group} ${season}, ${already} were there`);
      return 0;
    } finally {
      await opened.value.close();
    }
  },
};

/** A file that cannot be read is refused before any store is made or opened. */
function expectReadable(read: BookRead, source: string): void {
  const error = read.findings.find((finding) => finding.severity === 'error');
  if (error !== undefined) throw new Stop(`${findingLine(error, source)}; nothing was added`);
}

/** Adds what was read to its book in the store, or throws a Stop and leaves it as it was. */
export async function importInto(store: Store, read: BookRead, source: string): Promise<Appended> {
  expectReadable(read, source);
  if (read.header === undefined) throw new Stop(`${source}: not a book; nothing was added`);
  const { group, season } = read.header;
  const known = (await store.books()).some(
    (book) => book.group === group && book.season === season,
  );
  const already = known ? await (await store.open({ group, season })).readSince(0) : [];
  const accepted = acceptBook(
    read,
    already.map((each) => each.record),
  );
  if (!accepted.ok) {
    const [first] = accepted.refusal;
    const line = first === undefined ? `${source}: not a book` : findingLine(first, source);
    throw new Stop(`${line}; nothing was added`);
  }
  const journal = await store.open({ group, season });
  const appended = await journal.append(accepted.value.records);
  if (!appended.ok)
    throw new Stop(`${source}: ${refusalText(appended.refusal)}; nothing was added`);
  return appended.value;
}

function refusalText(refusal: AppendRefusal): string {
  switch (refusal.name) {
    case 'same_id_with_other_content':
      return `the store has other content under the id ${refusal.ids.join(', ')}`;
    default:
      return refusal.detail;
  }
}
