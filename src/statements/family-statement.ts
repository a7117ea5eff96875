import type { Ledger } from '../ledger/ledger.ts';
import type { AccountEvent, PartName } from '../questions/account-entries.ts';
import { partNames } from '../questions/account-entries.ts';
import type { AccountLine, AccountTotals, FamilyAccount } from '../questions/family-account.ts';
import { joined } from './joined.ts';
import type { Block, Column, Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { capitalised, sentence } from './sentence.ts';
import { userText } from './user-text.ts';

/**
 * A family's statement: one sentence of arithmetic, the same in money, every dated line, and whom
 * to ask. It is the group's main safeguard against mistakes (trade practice: the family itself can
 * say "that is wrong"), so it leaves no line out and names someone who does not keep the money.
 */
export function familyStatement(
  account: FamilyAccount,
  ledger: Ledger,
  context: PaperContext,
): Paper {
  const texts = new PaperTexts(ledger, context, account.family);
  const { words } = texts;
  const name = userText(account.name);
  return {
    ...texts.frame(words.statement.title(name), `statement-${account.family}`),
    facts: [
      { label: words.asAt, value: texts.asAt },
      {
        label: account.sellers.length === 1 ? words.seller : words.sellers,
        value:
          joined(
            account.sellers.map((one) => userText(one.name)),
            texts.say,
          ) || words.none,
      },
      { label: words.lastRecord, value: account.lastRecord ?? words.none },
    ],
    blocks: [
      { block: 'lead', text: statementSentence(account.totals, account.stillToPay, texts) },
      { block: 'words', text: sumInMoney(account, texts) },
      ...sellerBlocks(account, texts),
      { block: 'heading', text: words.statement.everyLine },
      linesBlock(account, texts),
      {
        block: 'words',
        text:
          context.ask === undefined
            ? words.statement.askAnyone
            : words.statement.ask(userText(context.ask)),
      },
    ],
  };
}

/**
 * What all statements in one file are called, and in which language:
 * `Statements · Wrenfield Young Rowers · Spring 2027`.
 */
export function statementsCover(
  ledger: Ledger,
  context: PaperContext,
): { readonly title: string; readonly language: string } {
  const texts = new PaperTexts(ledger, context);
  const title = [texts.words.statement.titleOfAll, texts.over].join(' · ');
  return { title, language: texts.say.language.tag };
}

/** The parts that a statement always names, also when they are nothing. */
const ALWAYS: readonly PartName[] = ['taken', 'broughtBack', 'paid'];

/**
 * `Taken 60, brought back 0, paid $200.00, still to pay $160.00.` Other parts are named where they
 * occur, so that the sentence always adds up to its end.
 */
export function statementSentence(
  totals: AccountTotals,
  stillToPay: number,
  texts: PaperTexts,
): string {
  const parts = shownParts(totals).map((part) => {
    const { units, minor } = totals[part];
    return texts.words.parts[part](texts.units(units), texts.money(minor));
  });
  return sentence(capitalised(joined([...parts, texts.balance(stillToPay)], texts.say)), texts.say);
}

function shownParts(totals: AccountTotals): PartName[] {
  return partNames.filter(
    (part) => ALWAYS.includes(part) || totals[part].minor !== 0 || totals[part].units !== 0,
  );
}

/** `Taken $360.00, less brought back $0.00, less paid $200.00: still to pay $160.00.` */
function sumInMoney(account: FamilyAccount, texts: PaperTexts): string {
  const { say } = texts;
  const { partsInMoney } = texts.words;
  const parts = shownParts(account.totals).map(
    (part) => say.as('sum')`${partsInMoney[part]} ${texts.money(account.totals[part].minor)}`,
  );
  return sentence(say`${joined(parts, say)}: ${texts.balance(account.stillToPay)}`, say);
}

/** Credit; for several sellers with what each of them has still to pay. */
function sellerBlocks(account: FamilyAccount, texts: PaperTexts): Block[] {
  const { words } = texts;
  if (account.sellers.length < 2) {
    const credit = creditUnits(account.sellers[0]?.credit ?? {});
    return [{ block: 'words', text: words.statement.credit(credit) }];
  }
  const columns: Column[] = [
    { head: words.seller, shows: 'text' },
    { head: words.statement.creditUnits, shows: 'number' },
    { head: words.statement.stillToPay, shows: 'number' },
  ];
  const rows = account.sellers.map((one) => [
    userText(one.name),
    texts.units(creditUnits(one.credit)),
    runningText(one.stillToPay, texts),
  ]);
  return [
    { block: 'words', text: words.statement.creditNote },
    { block: 'table', narrow: true, columns, rows },
  ];
}

function creditUnits(credit: Readonly<Record<string, number>>): number {
  return Object.values(credit).reduce((sum, units) => sum + units, 0);
}

function linesBlock(account: FamilyAccount, texts: PaperTexts): Block {
  const { words } = texts;
  if (account.lines.length === 0) return { block: 'words', text: words.statement.noLines };
  const several = account.sellers.length > 1;
  const sellerColumn: Column[] = several ? [{ head: words.seller, shows: 'text' }] : [];
  return {
    block: 'table',
    columns: [
      { head: words.day, shows: 'text' },
      ...sellerColumn,
      { head: words.statement.what, shows: 'text' },
      { head: words.statement.addsOrTakesOff, shows: 'number' },
      { head: words.statement.stillToPay, shows: 'number' },
    ],
    rows: account.lines.map((line) => [
      texts.day(line.date),
      ...(several ? [texts.seller(line.seller)] : []),
      lineText(line, texts),
      changeText(line.minor, texts),
      runningText(line.stillToPay, texts),
    ]),
  };
}

/** `Goods out: 5 Wildflower honey (slip 12)`. */
function lineText(line: AccountLine, texts: PaperTexts): string {
  const { words } = texts;
  const event: AccountEvent = line.event;
  const text = words.events[event]({
    goods: goodsText(line, texts),
    other: line.other === undefined ? '' : texts.seller(line.other),
    tender: line.tender === undefined ? '' : words.tenders[line.tender],
  });
  const label = words.reference[event];
  if (line.reference === undefined || label === undefined) return text;
  return texts.say`${text} (${label} ${userText(line.reference)})`;
}

function goodsText(line: AccountLine, texts: PaperTexts): string {
  if (line.gifts === undefined) return texts.goods(line.lines);
  const gifts = texts.words.toGiveAway(texts.goods(line.gifts));
  return Object.keys(line.lines).length === 0
    ? gifts
    : joined([texts.goods(line.lines), gifts], texts.say);
}

/** `+$40.00` or `−$25.00`; nothing for a line that is about credit alone. */
function changeText(minor: number, texts: PaperTexts): string {
  return minor > 0 ? `+${texts.money(minor)}` : minor < 0 ? texts.money(minor) : '';
}

function runningText(minor: number, texts: PaperTexts): string {
  return minor < 0 ? texts.words.statement.inCredit(texts.money(-minor)) : texts.money(minor);
}
