import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { explain } from '../questions/explain/explain.ts';
import { type ByAccount, readObservation } from '../questions/explain/observation.ts';
import type { BookRecord } from '../records/record.ts';
import { english } from '../words/english.ts';
import { explanationWords, lookWords } from './explanation-words.ts';

const made = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const delivery = made.movement('delivery', { lines: { honey: 96, jam: 60 } });
const out = made.movement('handover', { seller: 'ada', lines: { honey: 21 }, slip: 'D014' });

function told(records: readonly BookRecord[], seen: ByAccount): string[] {
  const ledger = made.ledger(records);
  const observed = readObservation(ledger, seen);
  if (!observed.ok) throw new Error(observed.refusal);
  const { explanations } = explain(ledger, observed.value);
  return explanations.map((each) => explanationWords(each, ledger, english));
}

describe('an explanation in words', () => {
  it('says what is keyed, what would agree, and what would settle it', () => {
    const [first] = told([delivery, out], { 'stock:stockroom': { honey: 84, jam: 60 } });
    expect(first).toBe(
      'Goods out to ada on 1 Feb 2027 says 21 honey; 12 would make it agree. ' +
        'The slip D014 would settle it.',
    );
  });

  it('says which record is there twice', () => {
    const again = made.movement('handover', { seller: 'ada', lines: { honey: 21 } });
    const [first] = told([delivery, out, again], { 'stock:stockroom': { honey: 75, jam: 60 } });
    expect(first).toBe(
      'Goods out to ada: 21 honey, $168.00 (1 Feb 2027) is there twice; once would make it ' +
        'agree. Ask the family of ada.',
    );
  });

  it('says what is not in the book', () => {
    const seen = { 'money:owed:ada': 0, 'money:cashbox': 16_800 };
    const [first] = told([delivery, out], seen);
    expect(first).toBe(
      'Not in the book: Payment from ada: $168.00 in cash. With it, it would agree. ' +
        'Ask the family of ada.',
    );
  });

  it('counts mistakes that were made at once', () => {
    const ben = made.movement('handover', { seller: 'ben', lines: { jam: 17 } });
    const seen = { 'stock:stockroom': { honey: 84, jam: 32 } };
    for (const words of told([delivery, out, ben], seen)) {
      expect(words).toMatch(/^(?:Two mistakes at once\. 1\. .* 2\. |Not in the book: |Stall )/);
    }
  });

  it('asserts nothing', () => {
    for (const words of told([delivery, out], { 'stock:stockroom': { honey: 63, jam: 60 } })) {
      expect(words).not.toMatch(/\b(?:must|error|wrong|fault|sure)\b/i);
    }
  });
});

it('a further look is named with the place and the products', () => {
  const ledger = made.ledger([delivery]);
  const look = { account: 'stock:seller:ada', why: 'tells-apart', products: ['honey'] } as const;
  expect(lookWords(look, ledger, english)).toBe('To decide, look at ada: honey.');
  const again = { account: 'money:bank', why: 'count-again', products: [] } as const;
  expect(lookWords(again, ledger, english)).toBe('Count again before anything is changed: Bank.');
});
