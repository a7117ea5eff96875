import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { hostReport } from '../questions/host-report.ts';
import { hoursText } from './hours-text.ts';
import type { Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { stallTimeText } from './stall-time-text.ts';
import { userText } from './user-text.ts';
import { prizeWordsEn } from './words-prizes-en.ts';

/** One page for a host shop on its stalls over the season. It names no seller and no family. */
export function hostReportPaper(
  ledger: Ledger,
  host: string,
  context: PaperContext,
): Outcome<Paper, { readonly name: 'unknown_host' }> {
  const report = hostReport(ledger, host);
  if (report === undefined) return refused({ name: 'unknown_host' });
  const texts = new PaperTexts(ledger, context);
  const said = prizeWordsEn.host;
  const { words } = texts;
  const name = userText(ledger.setup.hosts.get(host)?.name ?? host);
  const settled = report.stalls.filter((stall) => stall.settled).length;
  const sums = [texts.units(report.units), texts.money(report.value)] as const;
  return done({
    ...texts.frame(said.title(name), `host-${host}`),
    facts: [{ label: words.asAt, value: texts.asAt }],
    blocks: [
      {
        block: 'lead',
        text: said.lead(texts.units(settled), hoursText(report.minutes), ...sums),
      },
      { block: 'words', text: said.thanks },
      { block: 'heading', text: said.stalls },
      {
        block: 'table',
        columns: [
          { head: said.stall, shows: 'text' },
          { head: said.open, shows: 'number' },
          { head: said.units, shows: 'number' },
          { head: said.value, shows: 'number' },
        ],
        rows: report.stalls.map((stall) => [
          stallTimeText(stall.starts, stall.ends),
          hoursText(stall.minutes),
          stall.settled ? texts.units(stall.units) : said.notCounted,
          stall.settled ? texts.money(stall.value) : '',
        ]),
        totals: [[words.total, hoursText(report.minutes), ...sums]],
      },
      { block: 'heading', text: said.products },
      {
        block: 'table',
        columns: [
          { head: words.product, shows: 'text' },
          { head: said.units, shows: 'number' },
          { head: said.value, shows: 'number' },
        ],
        rows: report.products.map((product) => [
          texts.product(product.product),
          texts.units(product.units),
          texts.money(product.value),
        ]),
        totals: [[words.total, ...sums]],
      },
    ],
  });
}
