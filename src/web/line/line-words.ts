import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import type { LineTrouble } from '../../intake/one-line/line-trouble.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { dayText } from '../../statements/day-text.ts';
import { recordSentence } from '../../statements/record-sentence.ts';

/** The sentence that the record of a draft will have. */
export function draftSentence(draft: LineDraft, ledger: Ledger): string {
  return recordSentence({ id: '', at: '', by: '', ...draft }, ledger);
}

/** What a line still wants, or the word in it that is not known, in one sentence. */
export function troubleWords({ name, said, wanted, nearest }: LineTrouble): string {
  switch (name) {
    case 'word_not_known':
      return nearest === undefined
        ? `“${said}” is not known: write ${wanted}.`
        : `“${said}” is not known. The nearest known word is “${nearest}”.`;
    case 'word_does_not_belong':
      return `“${said}” has no place in this line. Wanted: ${wanted}.`;
    case 'number_does_not_fit':
      return `“${said}” does not fit. Wanted: ${wanted}.`;
    default:
      return `Still wanted: ${wanted}.`;
  }
}

/** What a screen reader says of the readings once the writing pauses. */
export function spokenWords(
  drafts: readonly LineDraft[],
  troubles: readonly LineTrouble[],
  ledger: Ledger,
): string {
  const sentences = drafts.map(
    (draft) => `${draftSentence(draft, ledger)}, ${dayText(draft.date)}`,
  );
  if (sentences.length > 1) return `${sentences.length} readings. ${sentences.join('. Or: ')}`;
  return sentences[0] ?? troubles.map(troubleWords).join(' ');
}
