import { cashOf, phoneOf, type StallCount } from '../../../questions/stall/stall-sheet.ts';
import { clockText } from '../../../statements/stall-time-text.ts';
import { Button } from '../../parts/button.tsx';
import { Money } from '../../parts/figures.tsx';
import { LinesWords } from '../../parts/lines-words.tsx';
import { Notice } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import type { OpenSheet } from './use-sheet.ts';

/** Two phones counted the same end of a day: a person says which stands, or that both do. */
export function ChooseCount(props: {
  readonly open: OpenSheet;
  readonly counts: StallCount;
  readonly words: string;
}) {
  const { open, counts } = props;
  const { entries } = counts;
  if (!counts.toChoose) return null;
  const ids = entries.map(({ id }) => id);
  const choose = async (what: 'undo' | 'both', of: string[]) => {
    const { entry } = await open.write(what, { of });
    await open.handIn([entry]);
  };
  return (
    <Notice tone="stop" title={say`There are ${entries.length} ${props.words}.`}>
      <p>{say`Say whether they are of the same goods, or of two tables. Nothing is lost.`}</p>
      <ul>
        {entries.map((entry) => (
          <li key={entry.id}>
            {say`${clockText(entry.at).slice(0, 5)}, phone ${phoneOf(entry)}`}:{' '}
            <LinesWords lines={entry.lines ?? {}} />, <Money minor={cashOf(entry)} plain />{' '}
            <Button
              quiet
              onClick={() =>
                choose(
                  'undo',
                  ids.filter((id) => id !== entry.id),
                )
              }
            >
              {say`Only this one`}
            </Button>
          </li>
        ))}
      </ul>
      <Button onClick={() => choose('both', ids)}>{say`Two tables: add them`}</Button>
    </Notice>
  );
}
