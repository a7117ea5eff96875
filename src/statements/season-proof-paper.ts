import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { MoneyProof, ProofRow, SeasonProof } from '../questions/season-proof.ts';
import { joined } from './joined.ts';
import type { Paper, TableBlock } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import type { PaperWords } from './paper-words.ts';

/** The page that the group's leader signs at the end: every unit and all money accounted for. */
export function seasonProofPaper(proof: SeasonProof, ledger: Ledger, context: PaperContext): Paper {
  const texts = new PaperTexts(ledger, context);
  const { words } = texts;
  return {
    ...texts.frame(words.proof.title, `season-proof-${context.asAt}`),
    facts: [{ label: words.asAt, value: texts.asAt }],
    blocks: [
      { block: 'lead', text: leadText(proof, texts) },
      { block: 'words', text: words.proof.formula },
      { block: 'heading', text: words.proof.cameIn },
      cameInTable(proof, texts),
      { block: 'heading', text: words.proof.places },
      placesTable(proof, texts),
      { block: 'heading', text: words.proof.money },
      moneyTable(proof.money, texts),
      { block: 'words', text: words.proof.signed },
      {
        block: 'signatures',
        places: words.proof.signers.map((label) => ({
          label,
          lines: [words.signName, words.signature, words.signDay],
        })),
      },
    ],
  };
}

function leadText(proof: SeasonProof, texts: PaperTexts): string {
  const units = proof.total.toAccountFor;
  const open = proof.products.filter((row) => row.difference !== 0);
  if (open.length === 0) return texts.words.proof.agrees(units);
  return texts.words.proof.differs(
    units,
    joined(
      open.map((row) => texts.product(row.product)),
      texts.say,
    ),
  );
}

function cameInTable(proof: SeasonProof, texts: PaperTexts): TableBlock {
  const { words } = texts;
  const cells = ({ cameIn, toAccountFor }: ProofRow) =>
    [cameIn.delivered, cameIn.swappedIn, cameIn.swappedOut, cameIn.broughtBack, toAccountFor].map(
      (units) => texts.units(units),
    );
  return {
    block: 'table',
    columns: [
      { head: words.product, shows: 'text' },
      { head: words.proof.delivered, shows: 'number' },
      { head: words.proof.swappedIn, shows: 'number' },
      { head: words.proof.swappedOut, shows: 'number' },
      { head: words.proof.broughtBack, shows: 'number' },
      { head: words.proof.toAccountFor, shows: 'number' },
    ],
    rows: byName(proof, texts).map((row) => [texts.product(row.product), ...cells(row)]),
    totals: [[words.total, ...cells(proof.total)]],
  };
}

function placesTable(proof: SeasonProof, texts: PaperTexts): TableBlock {
  const { words } = texts;
  const cells = ({ places, accountedFor }: ProofRow) =>
    [places.families, places.stalls, places.given, places.lost, places.shelf, accountedFor].map(
      (units) => texts.units(units),
    );
  const netted = proof.products.some((row) => row.difference !== 0) && !proof.total.difference;
  return {
    block: 'table',
    columns: [
      { head: words.product, shows: 'text' },
      { head: words.proof.families, shows: 'number' },
      { head: words.proof.stalls, shows: 'number' },
      { head: words.proof.given, shows: 'number' },
      { head: words.proof.lost, shows: 'number' },
      { head: words.proof.shelf, shows: 'number' },
      { head: words.proof.accountedFor, shows: 'number' },
      { head: words.proof.difference, shows: 'number' },
    ],
    rows: byName(proof, texts).map((row) => [
      texts.product(row.product),
      ...cells(row),
      differenceText(row.difference, texts),
    ]),
    totals: [
      [
        words.total,
        ...cells(proof.total),
        netted ? '' : differenceText(proof.total.difference, texts),
      ],
    ],
  };
}

/** People look a product up by its name, not by its id. */
function byName(proof: SeasonProof, texts: PaperTexts): ProofRow[] {
  return [...proof.products].sort((a, b) =>
    byText(texts.product(a.product), texts.product(b.product)),
  );
}

function differenceText(difference: number, texts: PaperTexts): string {
  const { proof } = texts.words;
  if (difference === 0) return proof.agree;
  const units = texts.units(Math.abs(difference));
  return difference < 0 ? proof.short(units) : proof.over(units);
}

type MoneyRow = keyof PaperWords['proof']['moneyRows'];

function moneyTable(money: MoneyProof, texts: PaperTexts): TableBlock {
  const { words } = texts;
  const row = (name: MoneyRow, minor: number) => [
    words.proof.moneyRows[name],
    texts.money(Math.abs(minor)),
  ];
  const unlessNone = (name: MoneyRow, minor: number) => (minor === 0 ? [] : [row(name, minor)]);
  return {
    block: 'table',
    narrow: true,
    columns: [
      { head: words.proof.money, shows: 'text' },
      { head: words.amount, shows: 'number' },
    ],
    rows: [
      [words.proof.moneyRows.families, texts.money(money.families)],
      ...unlessNone('stalls', money.stalls),
      ...unlessNone('online', money.online),
      row('gross', money.gross),
      row('proceeds', money.proceeds),
      ...unlessNone('fees', money.fees),
      ...unlessNone(money.losses < 0 ? 'gains' : 'losses', money.losses),
      ...unlessNone(money.short < 0 ? 'over' : 'short', money.short),
    ],
    totals: [
      row(money.net < 0 ? 'netLoss' : 'net', money.net),
      row(money.bank < 0 ? 'overdrawn' : 'bank', money.bank),
      row(money.elsewhere < 0 ? 'owing' : 'elsewhere', money.elsewhere),
    ],
  };
}
