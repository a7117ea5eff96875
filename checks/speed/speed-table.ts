import { type Flow, flows } from './hand-flows.ts';
import { FAST, modelSeconds, operatorSum, SLOW, USUAL } from './keystroke-level.ts';

/** The page docs/speed-of-hand.md: what the flows take in the app and in a spreadsheet. */
export function speedPage(): string {
  return `# Speed of hand

What the hand does for the things done most, and the seconds that a practised person needs for it by
the keystroke-level model (S. Card, T. Moran, A. Newell, Communications of the ACM 23(7), 1980, pp.
396–410). M is a decision (1.35 s), P pointing at something and tapping it (1.10 s), K a key. K is
0.28 s, an average person who is no typist; beside it stand the seconds with 0.20 s (a skilled
typist) and with 0.50 s (someone who looks for each letter). The paper states an error of about a
fifth for a single task. The model knows no mistakes, no scrolling and no waiting, and it was made
for desks: read the figures against each other rather than against a clock.

A browser test does each flow tap by tap and key by key; it fails where one has grown. The
spreadsheet is a good one, open on the same phone, with a sheet each for families, payments, goods,
orders and counts, sums by formula, and names filled in after three letters.

| | in Cratebook | seconds (K 0.20–0.50) | in a spreadsheet | seconds (K 0.20–0.50) |
| --- | --- | --- | --- | --- |
${flows.map(row).join('\n')}

## The spreadsheet's steps

${flows.map(steps).join('\n')}

Undo is as quick in both. A count takes as long in both where Enter goes on; a phone keyboard
without an Enter key takes taps. The app shows one product at a time, so that no figure is copied
from the line above, and of nine products four have full cases and singles in both columns.

\`node tools/write-speed-table.ts\` writes this page; a test compares it.
`;
}

function row({ what, app, sheet }: Flow): string {
  const sheetOperators = sheet.map(([, operators]) => operators).join('');
  const inApp = `${operatorSum(app)} | ${range(app)}`;
  return `| ${what} | ${inApp} | ${operatorSum(sheetOperators)} | ${range(sheetOperators)} |`;
}

function range(operators: string): string {
  const text = (seconds: number) => seconds.toFixed(2);
  const usual = text(modelSeconds(operators, USUAL));
  const fast = text(modelSeconds(operators, FAST));
  const slow = text(modelSeconds(operators, SLOW));
  return fast === slow ? `**${usual}**` : `**${usual}** (${fast}–${slow})`;
}

function steps({ what, sheet }: Flow): string {
  const told = sheet.map(([step, operators]) => `${step} (${operatorSum(operators)})`);
  return `- ${what}: ${told.join('; ')}.`;
}
