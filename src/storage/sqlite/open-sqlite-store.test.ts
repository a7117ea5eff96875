import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { journalSuite } from '../../journal/journal.suite.ts';
import { taken } from '../../journal/test-payments.ts';
import { openSqliteStore } from './open-sqlite-store.ts';

journalSuite('SQLite', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-'));
  return taken(await openSqliteStore(join(folder, 'store.sqlite')));
});
