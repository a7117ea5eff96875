/**
 * Audits many made seasons: `node tools/audit-seasons.ts FIRST_SEED HOW_MANY`. Says which seeds the
 * ledger and the auditor disagree on; exit code 1 where there is one.
 */

import { audit } from '../simulation/auditor.ts';
import { makeSeason } from '../simulation/season-maker.ts';
import { canonicalText } from '../src/base/canonical-text.ts';
import { Ledger } from '../src/ledger/ledger.ts';

const [first = 0, howMany = 1000] = process.argv.slice(2).map(Number);
let recordCount = 0;
for (let seed = first; seed < first + howMany; seed += 1) {
  const records = makeSeason(seed);
  recordCount += records.length;
  const day = `2027-03-${String((seed % 28) + 1).padStart(2, '0')}`;
  const ledger = Ledger.of(records);
  const isSame =
    canonicalText(ledger.balances.toAccounts()) === canonicalText(audit(records)) &&
    canonicalText(ledger.asOf(day).toAccounts()) === canonicalText(audit(records, day));
  if (isSame) continue;
  console.error(`seed ${seed}: the ledger and the auditor disagree`);
  process.exitCode = 1;
}
console.log(`${howMany} seasons, ${recordCount} records audited`);
