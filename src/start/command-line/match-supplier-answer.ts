import type { SupplierFile } from '../../intake/supplier/supplier-file.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { SupplierMatch } from '../../questions/match/match-supplier.ts';
import { missingSupplierRecords } from '../../questions/match/missing-supplier-records.ts';
import { productName } from '../../statements/account-name.ts';
import {
  paperDifferenceWords,
  supplierReasonWords,
} from '../../statements/supplier-match-words.ts';
import { english } from '../../words/english.ts';
import { matchPart, recordLine } from './match-lines.ts';

/** The parts that the spec names, and the pile of what differs. */
export function supplierMatchJson(found: SupplierMatch, ledger: Ledger) {
  const matched = found.matched.map(({ line, records, why, sure }) => ({
    line,
    records,
    reason: supplierReasonWords(why, english),
    sure,
  }));
  const differ = found.differ.map(({ line, records, by }) => ({
    line,
    records,
    by,
    words: paperDifferenceWords(by, ledger, english),
  }));
  const onlyTheirs = found.onlyTheirs.map(({ lines }) => lines.map(({ line }) => line));
  const missing = missingSupplierRecords(ledger, found.onlyTheirs);
  return { ...found, matched, differ, onlyTheirs, missing };
}

export function supplierMatchText(
  found: SupplierMatch,
  file: SupplierFile,
  ledger: Ledger,
): string {
  const money = (minor: number) => english.money(minor, ledger.setup.season?.currency ?? 'USD');
  const byNumber = new Map(file.lines.map((line) => [line.line, line]));
  const lineText = (number: number | undefined) => {
    const line = byNumber.get(number ?? 0);
    if (line === undefined) return 'no line';
    const goods = Object.entries(line.goods).map(
      ([product, units]) => `${english.units(units)} ${productName(ledger.setup, product)}`,
    );
    const amount = line.cents === undefined ? [] : [money(line.cents)];
    const said = [line.date, line.text, line.reference ?? '', ...goods, ...amount];
    return `line ${line.line}  ${said.filter((text) => text !== '').join('  ')}`;
  };
  const differ = found.differ.flatMap(({ line, records, by }) => [
    `${lineText(line)}: ${paperDifferenceWords(by, ledger, english)}`,
    ...records.map((id) => `    ${recordLine(id, ledger)}`),
  ]);
  const theirs = found.onlyTheirs.flatMap(({ lines }) => lines.map(({ line }) => lineText(line)));
  return `${[
    `${found.matched.length} of ${file.lines.length} lines agree`,
    ...matchPart('Differ', differ),
    ...matchPart('Only on the statement', theirs),
    ...matchPart(
      'Only in the book',
      found.onlyOurs.map((id) => recordLine(id, ledger)),
    ),
    '',
    `On the supplier's account by the book ${money(found.bookBalance)}`,
    `By the statement ${money(found.bankBalance)}`,
  ].join('\n')}\n`;
}
