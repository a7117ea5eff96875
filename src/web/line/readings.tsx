import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import type { LineRead } from '../../intake/one-line/read-line.ts';
import { useBook } from '../book.ts';
import { LinesWords } from '../parts/lines-words.tsx';
import { say } from '../say.ts';
import { draftSentence, troubleWords } from './line-words.ts';

/** How a line is read: the sentences its record would have, or what is still wanted. */
export function Readings(props: {
  readonly id: string;
  readonly read: LineRead;
  /** Place of the reading that Enter saves, or -1. */
  readonly chosen: number;
  readonly onSave: (draft: LineDraft) => void;
}) {
  const { id, read } = props;
  const drafts = read.ok ? read.value : [];
  return (
    <div class="line-told">
      {drafts.length > 1 && (
        <p>{say`It may mean one of ${drafts.length}. Choose with the arrow keys, or tap the right
          one.`}</p>
      )}
      <div role="listbox" id={`${id}-readings`} aria-label={say`How the line is read`}>
        {drafts.map((draft, place) => (
          <Reading
            key={`${draft.kind} ${JSON.stringify(draft)}`}
            id={`${id}-reading-${place}`}
            draft={draft}
            isChosen={place === props.chosen}
            onSave={() => props.onSave(draft)}
          />
        ))}
      </div>
      {!read.ok && (
        <ul>
          {read.refusal.map((trouble) => (
            <li key={`${trouble.name} ${trouble.said} ${trouble.wanted}`}>
              {troubleWords(trouble)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Reading(props: {
  readonly id: string;
  readonly draft: LineDraft;
  readonly isChosen: boolean;
  readonly onSave: () => void;
}) {
  const { ledger } = useBook();
  const { draft } = props;
  return (
    <button
      type="button"
      role="option"
      tabIndex={-1}
      id={props.id}
      class="line-reading"
      aria-selected={props.isChosen}
      onClick={props.onSave}
    >
      {draftSentence(draft, ledger)}
      {draft.kind === 'count' && (
        <span class="soft">
          <LinesWords lines={draft.lines} none="" />
        </span>
      )}
      <span class="soft">{say.day(draft.date)}</span>
    </button>
  );
}
