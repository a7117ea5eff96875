import { existsSync } from 'node:fs';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import type { Command } from './command.ts';
import { writeAll } from './outlet.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

export const demo: Command = {
  options: { out: { type: 'string' } },
  takes: [],
  help: `The made-up demo season as a book file: five things are still wrong at its end.

  --out FILE   write it to this file, which must not be there yet

Examples
  cratebook demo --out demo.jsonl
  cratebook demo | cratebook closing - --today 2027-04-04`,
  run: async (given, outlet) => {
    const out = given.get('out');
    const pieces = writeBook(demoHeader, demoSeason());
    if (out === undefined) {
      await writeAll(outlet, pieces);
      return 0;
    }
    if (existsSync(out)) throw new Stop(`${out}: is there already; choose a new name`);
    writeFile(out, pieces);
    outlet.note(`Written to ${out}. See what is open: cratebook closing ${out}`);
    return 0;
  },
};
