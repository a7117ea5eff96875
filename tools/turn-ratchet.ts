import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { countsOf } from '../checks/house/ratchet.ts';
import { HOME, sourceFiles } from '../checks/house/source-file.ts';

/**
 * Writes today's counts to checks/house/ratchet.json where they are lower than those there. A count
 * that has to grow is written by hand, with a line in DECISIONS.md that says why.
 */
const file = join(HOME, 'checks', 'house', 'ratchet.json');
const before: Record<string, number> = JSON.parse(readFileSync(file, 'utf8'));
const now = Object.entries(countsOf(sourceFiles()));
const lower = now.map(([name, count]) => [name, Math.min(count, before[name] ?? count)]);
writeFileSync(file, `${JSON.stringify(Object.fromEntries(lower), null, 2)}\n`);
