/** Writes the demo season as a book file beside its plan: `node tools/write-demo.ts`. */
import { writeFileSync } from 'node:fs';
import { bookText } from '../scenarios/book-text.ts';
import { demoHeader, demoSeason } from '../scenarios/demo/demo-season.ts';

const file = new URL('../scenarios/demo/wrenfield-spring-2027.jsonl', import.meta.url);
writeFileSync(file, bookText(demoHeader, demoSeason()));
