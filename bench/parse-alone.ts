/**
 * The floor that reading a book is measured against: reads the file and runs JSON.parse on each of
 * its lines, keeps the values, does nothing else. `node bench/parse-alone.ts BOOK`
 */
import { readFileSync } from 'node:fs';

const [path = ''] = process.argv.slice(2);
const parsed: unknown[] = [];
const bytes = readFileSync(path);
for (let start = 0; start < bytes.length; ) {
  const end = bytes.indexOf(10, start);
  const line = bytes.toString('utf8', start, end < 0 ? bytes.length : end);
  if (line !== '') parsed.push(JSON.parse(line));
  start = end < 0 ? bytes.length : end + 1;
}
process.stdout.write(`${parsed.length}\n`);
