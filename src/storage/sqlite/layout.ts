import { DatabaseSync } from 'node:sqlite';

/**
 * The tables of a store file. Every key begins with the group. A record row carries its seal
 * (see seal.ts) and the digest of its group up to and with it: kept in the row, a durable append
 * touches two pages (table and index) and no third. Triggers refuse any change of what is stored.
 */
export const LAYOUT_VERSION = 1;

/** Marks the file as ours in SQLite's own header: "Crbk" as four bytes. */
export const APPLICATION_ID = 0x4372626b;

const TABLES = `
create table book (
  book_group text not null,
  season text not null,
  header text not null,
  seal blob not null,
  primary key (book_group, season)
) strict, without rowid;

create table record (
  book_group text not null,
  arrival integer not null,
  season text not null,
  id text not null,
  text text not null,
  seal blob not null,
  group_digest blob not null,
  primary key (book_group, arrival),
  foreign key (book_group, season) references book (book_group, season)
) strict, without rowid;

create unique index record_by_id on record (book_group, season, id);
`;

const NEVER_CHANGED = ['book', 'record']
  .flatMap((table) =>
    ['update', 'delete'].map(
      (change) => `create trigger ${table}_no_${change} before ${change} on ${table}
begin select raise(abort, 'nothing stored is changed or deleted'); end;`,
    ),
  )
  .join('\n');

/** Makes the tables of an empty file, all of them or none. */
export function makeLayout(db: DatabaseSync): void {
  db.exec(`begin exclusive;
${TABLES}
${NEVER_CHANGED}
pragma application_id = ${APPLICATION_ID};
pragma user_version = ${LAYOUT_VERSION};
commit;`);
}

/** The layout as the file itself tells it, to compare with the one that this program makes. */
export function layoutOf(db: DatabaseSync): string {
  const parts = db
    .prepare('select sql from sqlite_schema where sql is not null order by name')
    .all();
  return parts.map(({ sql }) => String(sql)).join('\n');
}

/** The layout that a fresh file gets. */
export function expectedLayout(): string {
  const fresh = new DatabaseSync(':memory:');
  makeLayout(fresh);
  const layout = layoutOf(fresh);
  fresh.close();
  return layout;
}
