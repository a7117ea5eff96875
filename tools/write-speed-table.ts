import { writeFileSync } from 'node:fs';
import { speedPage } from '../checks/speed/speed-table.ts';

/** Writes docs/speed-of-hand.md from the flows that the browser test does. */
writeFileSync(new URL('../docs/speed-of-hand.md', import.meta.url), speedPage());
