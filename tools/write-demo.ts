/** Writes the demo season as a book file beside its plan: `node tools/write-demo.ts`. */
import { writeFileSync } from 'node:fs';
import { demoHeader, demoSeason } from '../scenarios/demo/demo-season.ts';
import { writeBook } from '../src/intake/write-book.ts';

const file = new URL('../scenarios/demo/wrenfield-spring-2027.jsonl', import.meta.url);
writeFileSync(file, [...writeBook(demoHeader, demoSeason())].join(''));
