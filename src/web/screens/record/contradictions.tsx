import { useSignal } from '@preact/signals';
import type { Contradiction } from '../../../questions/record-history.ts';
import type { BookRecord } from '../../../records/record.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { settleDrafts } from '../../settle-conflict.ts';
import { WrittenBy } from './written-by.tsx';

/** Two people changed the same record apart from each other: both are shown, a person chooses. */
export function Contradictions(props: { readonly contradictions: readonly Contradiction[] }) {
  const book = useBook();
  const trouble = useSignal('');
  const choose = async ({ counts, kept }: Contradiction, chosen: BookRecord) => {
    const settled = await book.append(settleDrafts(counts, kept, chosen));
    trouble.value = settled.ok ? '' : say.told(settled.refusal.message);
  };
  return (
    <>
      {props.contradictions.map((contradiction) => (
        <Notice
          key={contradiction.counts.id}
          tone="stop"
          title={say`This record was changed twice, apart from each other. Choose which one
            stands.`}
        >
          {trouble.value !== '' && <p class="error-text">{trouble.value}</p>}
          <ol class="versions">
            {[contradiction.counts, ...contradiction.kept].map((version) => (
              <li key={version.id}>
                <p>{recordSentence(version, book.ledger, say)}</p>
                <p class="small">
                  <WrittenBy record={version} />
                  {version === contradiction.counts &&
                    `. ${say`It counts for now, as the later one.`}`}
                </p>
                <Button
                  label={say`Keep: ${recordSentence(version, book.ledger, say)}`}
                  onClick={() => choose(contradiction, version)}
                >
                  {say`Keep this one`}
                </Button>
              </li>
            ))}
          </ol>
        </Notice>
      ))}
    </>
  );
}
