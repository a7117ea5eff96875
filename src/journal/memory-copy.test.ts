import { copySuite } from './copy.suite.ts';
import { journalSuite } from './journal.suite.ts';
import { memoryCopies } from './memory-copy.ts';

journalSuite('memory copies', async () => memoryCopies());
copySuite('memory', async () => memoryCopies());
