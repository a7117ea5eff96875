import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import type { LineTrouble } from '../../intake/one-line/line-trouble.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { say } from '../say.ts';

/** The sentence that the record of a draft will have. */
export function draftSentence(draft: LineDraft, ledger: Ledger): string {
  return recordSentence({ id: '', at: '', by: '', ...draft }, ledger, say);
}

/** What a line still wants, or the word in it that is not known, in one sentence. */
export function troubleWords({ name, said, nearest, ...trouble }: LineTrouble): string {
  const wanted = say.told(trouble.wanted);
  switch (name) {
    case 'word_not_known':
      return nearest === undefined
        ? say`“${said}” is not known: write ${wanted}.`
        : say`“${said}” is not known. The nearest known word is “${nearest}”.`;
    case 'word_does_not_belong':
      return say`“${said}” has no place in this line. Wanted: ${wanted}.`;
    case 'number_does_not_fit':
      return say`“${said}” does not fit. Wanted: ${wanted}.`;
    default:
      return say`Still wanted: ${wanted}.`;
  }
}

/** What a screen reader says of the readings once the writing pauses. */
export function spokenWords(
  drafts: readonly LineDraft[],
  troubles: readonly LineTrouble[],
  ledger: Ledger,
): string {
  const sentences = drafts.map(
    (draft) => `${draftSentence(draft, ledger)}, ${say.day(draft.date)}`,
  );
  if (sentences.length > 1)
    return say`${sentences.length} readings. ${sentences.join(say`. Or: `)}`;
  return sentences[0] ?? troubles.map(troubleWords).join(' ');
}
