import { useMemo } from 'preact/hooks';
import { dayOf, type FoundRecord } from '../../../questions/find-records.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

/** Found records as sentences, with a way to edit each where it is found. */
export function FoundList({ found }: { readonly found: readonly FoundRecord[] }) {
  return (
    <ol class="roll-lines">
      {found.map((each, place) => {
        const above = found[place - 1];
        const sameDay = above !== undefined && dayOf(above.record) === dayOf(each.record);
        return <FoundLine key={each.record.id} {...each} sameDay={sameDay} />;
      })}
    </ol>
  );
}

/** Drawn once, however often the list around it grows. */
function FoundLine({ record, state, sameDay }: FoundRecord & { readonly sameDay: boolean }) {
  const { ledger, version } = useBook();
  return useMemo(() => {
    const words = recordSentence(record, ledger, say);
    return (
      <li class={state === 'counts' ? 'roll-line' : 'roll-line roll-gone'}>
        <span class={sameDay ? 'roll-day roll-day-same' : 'roll-day'}>
          {say.day(dayOf(record))}
        </span>
        <span class="roll-words">
          <a href={`/records/${record.id}`}>{words}</a>
          {state !== 'counts' && (
            <span> {state === 'edited' ? say`(edited)` : say`(removed)`}</span>
          )}
        </span>
        {state === 'counts' && record.kind !== 'void' && (
          <a class="roll-verb" href={`/records/${record.id}/edit`} aria-label={say`Edit: ${words}`}>
            {say`Edit`}
          </a>
        )}
      </li>
    );
  }, [record, state, sameDay, ledger, version.value]);
}
