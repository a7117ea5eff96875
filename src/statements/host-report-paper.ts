import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { type HostReport, hostReport } from '../questions/host-report.ts';
import { hoursText } from './hours-text.ts';
import type { Paper, TableBlock } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { stallTimeText } from './stall-time-text.ts';
import { userText } from './user-text.ts';

/** One page for a host shop on its stalls over the season. It names no seller and no family. */
export function hostReportPaper(
  ledger: Ledger,
  host: string,
  context: PaperContext,
): Outcome<Paper, { readonly name: 'unknown_host' }> {
  const report = hostReport(ledger, host);
  if (report === undefined) return refused({ name: 'unknown_host' });
  const texts = new PaperTexts(ledger, context);
  const { say, words } = texts;
  const said = words.host;
  const name = userText(ledger.setup.hosts.get(host)?.name ?? host);
  const settled = report.stalls.filter((stall) => stall.settled).length;
  const hours = hoursText(report.minutes, say);
  const lead = said.lead(settled, hours, report.units, texts.money(report.value));
  return done({
    ...texts.frame(said.title(name), `host-${host}`),
    facts: [{ label: words.asAt, value: texts.asAt }],
    blocks: [
      { block: 'lead', text: lead },
      { block: 'words', text: said.thanks },
      { block: 'heading', text: said.stalls },
      stallsTable(report, texts),
      { block: 'heading', text: said.products },
      productsTable(report, texts),
    ],
  });
}

function stallsTable(report: HostReport, texts: PaperTexts): TableBlock {
  const { say, words } = texts;
  const said = words.host;
  return {
    block: 'table',
    columns: [
      { head: said.stall, shows: 'text' },
      { head: said.open, shows: 'number' },
      { head: said.units, shows: 'number' },
      { head: said.value, shows: 'number' },
    ],
    rows: report.stalls.map((stall) => [
      stallTimeText(stall.starts, stall.ends, say),
      hoursText(stall.minutes, say),
      stall.settled ? texts.units(stall.units) : said.notCounted,
      stall.settled ? texts.money(stall.value) : '',
    ]),
    totals: [
      [
        texts.words.total,
        hoursText(report.minutes, say),
        texts.units(report.units),
        texts.money(report.value),
      ],
    ],
  };
}

function productsTable(report: HostReport, texts: PaperTexts): TableBlock {
  const said = texts.words.host;
  return {
    block: 'table',
    columns: [
      { head: texts.words.product, shows: 'text' },
      { head: said.units, shows: 'number' },
      { head: said.value, shows: 'number' },
    ],
    rows: report.products.map((product) => [
      texts.product(product.product),
      texts.units(product.units),
      texts.money(product.value),
    ]),
    totals: [[texts.words.total, texts.units(report.units), texts.money(report.value)]],
  };
}
