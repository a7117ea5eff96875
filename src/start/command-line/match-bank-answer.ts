import type { BankFile } from '../../intake/bank/bank-file.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { BankMatch } from '../../questions/match/match-bank.ts';
import { missingBankRecords } from '../../questions/match/missing-bank-records.ts';
import { kindName } from '../../statements/kind-name.ts';
import { matchWords } from '../../statements/match-words.ts';
import { english } from '../../words/english.ts';
import { matchPart, recordLine } from './match-lines.ts';

/** The parts that the spec names, with the reasons in words. */
export function bankMatchJson(found: BankMatch, file: BankFile, ledger: Ledger) {
  const matched = found.matched.map(({ line, records, why, sure }) => ({
    line,
    records,
    reason: matchWords(why, english),
    sure,
  }));
  return { ...found, matched, missing: missingFor(found, file, ledger) };
}

/** Records that would stand for the lines that only the bank has. */
function missingFor(found: BankMatch, file: BankFile, ledger: Ledger) {
  const told = new Set([
    ...found.differ.map(({ line }) => line),
    ...found.choices.map(({ line }) => line),
    ...found.repeated,
    ...found.mirrored.flat(),
  ]);
  const open = new Set(found.unmatchedLines.filter((line) => !told.has(line)));
  return missingBankRecords(
    ledger,
    file.lines.filter(({ line }) => open.has(line)),
  );
}

export function bankMatchText(found: BankMatch, file: BankFile, ledger: Ledger): string {
  const money = (minor: number) => english.money(minor, ledger.setup.season?.currency ?? 'USD');
  const byNumber = new Map(file.lines.map((line) => [line.line, line]));
  const lineText = (line: number) => {
    const { date = '', cents = 0, text = '' } = byNumber.get(line) ?? {};
    return `line ${line}  ${date}  ${money(cents)}  ${text}`.trimEnd();
  };
  const rows = found.matched.flatMap(({ line, records, why, sure }) => [
    `${sure ? '✓' : '?'} ${lineText(line)}`,
    ...records.map((id) => `      ${recordLine(id, ledger)}`),
    ...(sure ? [] : [`      ${matchWords(why, english)}`]),
  ]);
  const differ = found.differ.map(
    ({ line, record, ours }) =>
      `${lineText(line)}: ${money(ours)} in the book, ${recordLine(record, ledger)}`,
  );
  const choose = found.choices.flatMap(({ line, sets }) => [
    `${lineText(line)}: ${sets.length} sets of records come to this`,
    ...sets.map((set) => `    ${set.map((id) => recordLine(id, ledger)).join(' + ')}`),
  ]);
  const missing = missingFor(found, file, ledger).map(
    ({ line, record }) => `line ${line}: ${kindName(record.kind, english)}, ${record.date}`,
  );
  const ours = found.unmatchedRecords.map((id) => recordLine(id, ledger));
  return `${[
    ...rows,
    ...matchPart('Only at the bank', found.unmatchedLines.map(lineText)),
    ...matchPart('The bank’s own errors', found.bankErrors.map(lineText)),
    ...matchPart('Only in the book', ours),
    ...matchPart('Nearly the same', differ),
    ...matchPart('To be chosen', choose),
    ...matchPart('Most likely missing in the book', missing),
    '',
    `By the book ${money(found.bookBalance)}`,
    `less what is not yet at the bank ${money(found.outstanding)}`,
    `and what is not yet in the book ${money(found.notInBook)}`,
    ...(found.bankErrors.length === 0
      ? []
      : [`and what the bank itself got wrong ${money(found.wrongAtBank)}`]),
    `By the bank ${money(found.bankBalance)}`,
  ].join('\n')}\n`;
}
