/**
 * Does the whole demo season in the running app from its first question to its closing, by keyboard
 * alone at 1280 px and by taps at 390 px, the middle half of it without a server:
 * `node tools/play-whole-season.ts [keyboard|taps|both] [demo|short]`. Exit code 1 where the book
 * that comes out is not the season's own.
 */

import { isDeepStrictEqual } from 'node:util';
import { type By, playSeason } from '../checks/browser/season/whole-season.ts';
import { demoSeasonMended } from '../scenarios/demo/demo-season.ts';
import { shortSeason } from '../scenarios/short/short-season.ts';

const [only = 'both', season = 'demo'] = process.argv.slice(2);
const ways: readonly By[] = ['keyboard', 'taps'];
for (const by of ways.filter((way) => only === 'both' || way === only)) {
  const records = season === 'short' ? shortSeason() : demoSeasonMended();
  const played = await playSeason(records, by);
  const same = isDeepStrictEqual(played.have, played.should);
  const { seconds, steps, onlyHere, complaints } = played;
  console.log(
    `by ${by}: ${records.length} records in ${steps} steps and ${seconds.toFixed(0)} s, ` +
      `${onlyHere} of them without a server; ${same ? 'the same book' : 'another book'}`,
  );
  if (!same) console.error(JSON.stringify(played, undefined, 1));
  for (const words of complaints) console.error(words);
  if (!same || complaints.length > 0) process.exitCode = 1;
}
process.exit();
