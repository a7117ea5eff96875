import { journalSuite } from './journal.suite.ts';
import { memoryStore } from './memory-store.ts';

journalSuite('memory', async () => memoryStore());
