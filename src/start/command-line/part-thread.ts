import { parentPort, workerData } from 'node:worker_threads';
import type { PartPlan } from '../../rules/quick-part.ts';
import { startQuickly } from '../quick-start.ts';
import { setEngineForQuickReading } from './engine.ts';
import type { PartJob } from './part-threads.ts';

/**
 * The thread of part-threads.ts. It speaks twice: first it says what the other parts have to know
 * of its part, then, once it was told what they say, what its records come to. Undefined where it
 * is not sure.
 */
// Not before: what Node itself is made of begins quicker in an engine as it is by itself.
setEngineForQuickReading(true);
startQuickly();
const { BookPieces } = await import('./book-pieces.ts');
const { memoryOf } = await import('../../intake/quick/part-facts.ts');
const { QuickReader } = await import('../../intake/quick/quick-reader.ts');
const { readPieces } = await import('./read-pieces.ts');

const { shared, expected, withNames }: PartJob = workerData;
const pieces = new BookPieces(shared);
const reader = new QuickReader(withNames, expected, false);
const records = await readPieces(reader, pieces, pieces.next());
const planned = new Promise<PartPlan>((resolve) => parentPort?.once('message', resolve));
const facts = records?.facts();
parentPort?.postMessage(facts, facts === undefined ? [] : memoryOf(facts));
// Loaded while the first thread sees the parts as one book.
const { sumPart } = await import('../../rules/quick-part.ts');
const plan = await planned;
const sums = records && sumPart(records, plan);
parentPort?.postMessage(sums && { ...sums, all: sums.all.packed(), onDay: sums.onDay?.packed() });
